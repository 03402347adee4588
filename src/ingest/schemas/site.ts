import { z } from 'zod';
import { text } from '../fields.ts';

/** Front matter of `content/site.md`. */
export const siteSchema = z.strictObject({ title: text, tagline: text, publisher: text });
