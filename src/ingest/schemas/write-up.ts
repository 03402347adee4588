import { z } from 'zod';
import { date, flag, text } from '../fields.ts';
import { present } from '../present.ts';

/** Front matter of `content/methods/<id>.mdx` and `content/reports/<id>.mdx`. */
export type WriteUpFrontMatter = z.infer<typeof writeUpSchema>;

export const writeUpSchema = z
  .strictObject({ title: text, summary: text, date, author: text.optional(), draft: flag })
  .transform(present);
