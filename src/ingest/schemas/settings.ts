import { z } from 'zod';
import { identifier, parsed, text } from '../fields.ts';

const SETTING_NAME = /^[a-z0-9][a-z0-9-]*$/;

/** A level written as a bare scalar is its own label. */
const level = z.preprocess(
  (value) => (typeof value === 'string' ? { name: value, label: value } : value),
  z.strictObject({ name: identifier, label: text }),
);

/** The list in `data/settings.yaml`. */
export const settingsSchema = z.array(
  z.strictObject({
    name: parsed('bad-setting-name', (name) => (SETTING_NAME.test(name) ? name : undefined)),
    label: text,
    kind: z.enum(['unordered', 'ordered', 'numeric', 'rate']),
    levels: z.array(level).min(1),
  }),
);
