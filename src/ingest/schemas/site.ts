import { z } from 'zod';
import { flag, text } from '../fields.ts';

/** Front matter of `content/site.md`. */
export const siteSchema = z
  .strictObject({ title: text, tagline: text, publisher: text, 'write-ups-run-code': flag, documentation: flag })
  .transform(({ 'write-ups-run-code': writeUpsRunCode = false, documentation = true, ...rest }) => ({
    ...rest,
    writeUpsRunCode,
    documentation,
  }));
