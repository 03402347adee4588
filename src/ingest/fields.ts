/** What one value of front matter may be. Values arrive as written (see yaml.ts); these give them their types. */
import { z } from 'zod';
import { parseRate } from '../model/rate.ts';
import type { ProblemCode } from '../model/problem.ts';
import { parseDurationMs, parseRowHeight, parseTolerancePpm } from './quantities.ts';

const isoDate = z.iso.date();

/** A value that `parse` understands; otherwise a problem of this kind. */
export function parsed<T>(code: ProblemCode, parse: (text: string) => T | undefined) {
  return z.string().transform((text, context): T => {
    if (text.trim() === '') {
      context.addIssue({ code: 'custom', params: { problem: 'empty-value' } });
      return z.NEVER;
    }
    const value = parse(text);
    if (value !== undefined) return value;
    context.addIssue({ code: 'custom', params: { problem: code } });
    return z.NEVER;
  });
}

/** Text as written; HTML in it is text like any other. */
export const text = parsed('empty-value', (value) => value);

/** `true` or `false`; false where nothing is written. */
export const flag = parsed('bad-flag', (value) =>
  value === 'true' ? true : value === 'false' ? false : undefined,
).optional();

export const rate = parsed('bad-rate', parseRate);

/** Milliseconds, zero or more. */
export const durationMs = parsed('bad-duration', parseDurationMs);

/** Milliseconds, more than zero. */
export const positiveDurationMs = z.string().transform((value, context): number => {
  const duration = parseDurationMs(value);
  if (duration !== undefined && duration > 0) return duration;
  const problem = value.trim() === '' ? 'empty-value' : duration === 0 ? 'zero-duration' : 'bad-duration';
  context.addIssue({ code: 'custom', params: { problem } });
  return z.NEVER;
});

export const tolerancePpm = parsed('bad-tolerance', parseTolerancePpm);

export const rowHeight = parsed('bad-row-height', parseRowHeight);

/** A day of the Gregorian calendar, `2026-04-11`. */
export const date = parsed('bad-date', (value) => (isoDate.safeParse(value).success ? value : undefined));

export const statedLatency = z
  .strictObject({ value: durationMs, uncertainty: durationMs, source: text })
  .transform(({ value, uncertainty, source }) => ({ valueMs: value, standardUncertaintyMs: uncertainty, source }));
