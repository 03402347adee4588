import { z } from 'zod';
import { flag, statedLatency, text } from '../fields.ts';
import { present } from '../present.ts';

/** Front matter of `data/links/<id>.md`. */
export const linkSchema = z
  .strictObject({ name: text, latency: statedLatency.optional(), invented: flag })
  .transform(({ invented = false, ...rest }) => present({ ...rest, invented }));
