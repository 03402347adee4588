import { z } from 'zod';
import { date, text } from '../fields.ts';
import { present } from '../present.ts';

const NUMBER = /^\d{1,3}(?:\.\d{1,6})?$/;
/** Weights are written with few digits. */
const ROUNDING = 0.002;

/** `{ 0: 0.75, 0.25: 0.25 }`: weights by size, brought to a sum of exactly 1. */
function sizes(most: number) {
  return z.record(z.string(), z.string()).transform((written, context) => {
    const list = Object.entries(written).map(([size, weight]) => ({ size: Number(size), weight: Number(weight) }));
    const sum = list.reduce((total, { weight }) => total + weight, 0);
    const readable = Object.entries(written)
      .flat()
      .every((number) => NUMBER.test(number));
    if (readable && Math.abs(sum - 1) <= ROUNDING && list.every(({ size }) => size <= most))
      return list.map(({ size, weight }) => ({ size, weight: weight / sum }));
    context.addIssue({ code: 'custom', params: { problem: most === 1 ? 'bad-chances' : 'bad-sizes' } });
    return z.NEVER;
  });
}

const [change, chance] = [sizes(100), sizes(1)];
const levels = z.strictObject({
  clip: z.strictObject({ change, step: chance }),
  day: z.strictObject({ change, step: chance }),
});

/** `data/variation.yaml`, as `npm run variation` writes it or an author states it. */
export const variationSchema = z
  .strictObject({
    date,
    analysis: text,
    knows: z.enum(['clips', 'day', 'condition']),
    stated: text.optional(),
    reading: z.strictObject({ jitter: change, repeat: chance, misread: chance }),
    bodies: z.record(z.string(), levels).optional(),
    others: levels,
    sessions: z.record(z.string(), text).optional(),
  })
  .transform(({ bodies = {}, sessions = {}, ...rest }) => present({ ...rest, bodies, sessions }));
