import { z } from 'zod';
import { durationMs, flag, rate, statedLatency, text } from '../fields.ts';
import { present } from '../present.ts';

/** Front matter of `data/displays/<id>.md`. */
export const displaySchema = z
  .strictObject({
    name: text,
    refresh: rate,
    sync: z.enum(['input', 'free']),
    'scan-out': durationMs.optional(),
    latency: statedLatency.optional(),
    invented: flag,
  })
  .transform(({ 'scan-out': scanOutMs, invented = false, ...rest }) => present({ ...rest, scanOutMs, invented }));
