import { z } from 'zod';
import { date, parsed, text } from '../fields.ts';

const count = parsed('bad-count', (value) => (/^[1-9]\d{0,8}$/.test(value) ? Number(value) : undefined));

/** `content/ledger/entries/<date>-<words of the reason>.yaml`, as `npm run record` writes it. */
export const ledgerEntrySchema = z
  .strictObject({
    date,
    reason: text,
    analysis: text,
    causes: z.array(text).optional(),
    moved: z.array(z.strictObject({ id: text, from: text, to: text })).optional(),
    gone: z.array(z.strictObject({ id: text, from: text })).optional(),
    added: z.record(z.string(), count).optional(),
  })
  .transform(({ causes = [], moved = [], gone = [], added = {}, ...rest }) => ({
    ...rest,
    causes,
    moved,
    gone,
    added,
  }));
