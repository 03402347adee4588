import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseTime, stepsToMs } from '../../src/ingest/time.ts';

interface Parts {
  readonly hours: number;
  readonly minutes: number;
  readonly seconds: number;
  readonly fraction: string;
}

const two = (value: number): string => String(value).padStart(2, '0');

const parts = fc.record({
  hours: fc.integer({ min: 0, max: 999 }),
  minutes: fc.integer({ min: 0, max: 59 }),
  seconds: fc.integer({ min: 0, max: 59 }),
  fraction: fc.stringMatching(/^\d{0,6}$/),
});

/** The three ways to print one time, all of its steps counted in BigInt. */
function print({ hours, minutes, seconds, fraction }: Parts): { texts: readonly string[]; steps: bigint } {
  const tail = fraction === '' ? '' : `.${fraction}`;
  const whole = (BigInt(hours) * 60n + BigInt(minutes)) * 60n + BigInt(seconds);
  return {
    texts: [
      `${hours}:${two(minutes)}:${two(seconds)}${tail}`,
      `${hours * 60 + minutes}:${two(seconds)}${tail}`,
      `${whole}${tail}`,
    ],
    steps: BigInt(`${whole}${fraction}`),
  };
}

describe('parseTime', () => {
  it('reads every printed time to its exact count of steps', () => {
    fc.assert(
      fc.property(parts, (time) => {
        const { texts, steps } = print(time);
        for (const text of texts) {
          expect(parseTime(text), text).toEqual({ steps: Number(steps), decimals: time.fraction.length });
        }
      }),
      { seed: 1 },
    );
  });

  it('reads a minus sign', () => {
    expect(parseTime('-00:31.482')).toEqual({ steps: -31482, decimals: 3 });
    expect(parseTime('-0')).toEqual({ steps: 0, decimals: 0 });
  });

  it('reads no text that is not a time', () => {
    const time = /^-?(?:(?:\d+:)?[0-5]\d:[0-5]\d|\d+:[0-5]\d|\d+)(?:\.\d+)?$/;
    const text = fc.string({ unit: fc.constantFrom(...'0159.:-, e'), maxLength: 12 });
    let times = 0;
    fc.assert(
      fc.property(text, (candidate) => {
        const isTime = time.test(candidate);
        if (isTime) times += 1;
        expect(parseTime(candidate) !== undefined, candidate).toBe(isTime);
      }),
      { seed: 2, numRuns: 2000 },
    );
    expect(times).toBeGreaterThan(20);
  });

  it('refuses times that binary64 cannot count exactly', () => {
    expect(parseTime('9007199254740.991')).toEqual({ steps: Number.MAX_SAFE_INTEGER, decimals: 3 });
    expect(parseTime('9007199254740.992')).toBeUndefined();
    expect(parseTime(`0.${'1'.repeat(400)}`)).toBeUndefined();
    expect(parseTime(`${'9'.repeat(400)}:00`)).toBeUndefined();
  });
});

it.each([
  [301, 3, 301],
  [3, 0, 3000],
  [1, 1, 100],
  [301001, 6, 301.001],
  [1, 9, 0.000001],
])('%d steps at %d decimals are %d ms', (steps, decimals, ms) => {
  expect(stepsToMs(steps, decimals)).toBe(ms);
});
