/** What one value of front matter may be. Values arrive as written (see yaml.ts); these give them their types. */
import { z } from 'zod';
import { parseRate, rateHz } from '../model/rate.ts';
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

/** A value that `parse` understands and that lies from `low` to `high`; `expected` names that range. */
function within<T>(
  code: ProblemCode,
  parse: (text: string) => T | undefined,
  numberOf: (value: T) => number,
  [low, high]: readonly [number, number],
  expected: string,
) {
  return parsed(code, parse).transform((value, context): T => {
    if (numberOf(value) >= low && numberOf(value) <= high) return value;
    context.addIssue({ code: 'custom', params: { problem: 'out-of-range', expected } });
    return z.NEVER;
  });
}

/** Control and format characters, which nobody sees; joiners that some scripts need are none of them. */
const INVISIBLE = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\u2800\u3164]/u;
const JOINERS = /[\u200c\u200d]/gu;

/** Whether a text holds a character that nobody can see, or blanks at its ends other than ordinary ones. */
export function hasInvisible(value: string): boolean {
  return INVISIBLE.test(value.replace(JOINERS, ''));
}

/** Text that tells things apart, such as a version or the name of a level: what differs in it must be seen. */
export const identifier = z.string().transform((value, context): string => {
  const problem = value.trim() === '' ? 'empty-value' : INVISIBLE.test(value) ? 'invisible-character' : undefined;
  if (problem === undefined) return value.trim().normalize('NFC');
  context.addIssue({ code: 'custom', params: { problem } });
  return z.NEVER;
});

/** Text as written; HTML in it is text like any other. */
export const text = parsed('empty-value', (value) => value);

/** `true` or `false`; false where nothing is written. */
export const flag = parsed('bad-flag', (value) =>
  value === 'true' ? true : value === 'false' ? false : undefined,
).optional();

/** From time lapse to the fastest cameras; common practice, no source. */
export const rate = within('bad-rate', parseRate, rateHz, [1, 10_000], '1 to 10000 per second');

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

/** The worst clocks in use are ceramic resonators, about 5000 ppm; common practice, no source. */
export const tolerancePpm = within('bad-tolerance', parseTolerancePpm, (ppm) => ppm, [0, 5000], 'at most 5000 ppm');

export const rowHeight = parsed('bad-row-height', parseRowHeight);

/** A day of the Gregorian calendar, `2026-04-11`. */
export const date = within(
  'bad-date',
  (value) => (isoDate.safeParse(value).success ? value : undefined),
  (day) => Number(day.slice(0, 4)),
  [1990, 2099],
  'a day from 1990 to 2099',
);

/** A latency that one element of a chain may have. */
const elementLatencyMs = within('bad-duration', parseDurationMs, (ms) => ms, [0, 10_000], 'at most 10 s');

export const statedLatency = z
  .strictObject({ value: elementLatencyMs, uncertainty: elementLatencyMs, source: text })
  .transform(({ value, uncertainty, source }) => ({ valueMs: value, standardUncertaintyMs: uncertainty, source }));
