import { z } from 'zod';
import { durationMs, flag, text } from '../fields.ts';
import { present } from '../present.ts';

/** Front matter of `data/bodies/<id>.md`. */
export const bodySchema = z
  .strictObject({ name: text, maker: text, model: text, 'sensor-readout': durationMs.optional(), invented: flag })
  .transform(({ 'sensor-readout': readoutMs, invented = false, ...rest }) => present({ ...rest, readoutMs, invented }));
