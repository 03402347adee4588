import { describe, expect, it } from 'vitest';
import { longestBeat } from '../../src/analysis/beat.ts';
import { rate } from '../../src/model/rate.ts';

describe('longestBeat', () => {
  /** Arithmetic on exact rates; 59.94 against 60 coming round every 16.7 s is common practice, no source. */
  const CASES = [
    { first: rate(60000, 1001), second: rate(60), p: 1, q: 1, periodMs: (1001 / 60) * 1000 },
    { first: rate(30000, 1001), second: rate(60), p: 2, q: 1, periodMs: (1001 / 60) * 1000 },
    { first: rate(24000, 1001), second: rate(60), p: 5, q: 2, periodMs: (1001 / 120) * 1000 },
    { first: rate(60), second: rate(60), p: 1, q: 1, periodMs: Infinity },
    { first: rate(60), second: rate(120), p: 2, q: 1, periodMs: Infinity },
    { first: rate(2998, 25), second: rate(60), p: 1, q: 2, periodMs: 12_500 },
    { first: rate(50), second: rate(60), p: 1, q: 1, periodMs: 100 },
  ];

  it.each(CASES)('of $first and $second', ({ first, second, p, q, periodMs }) => {
    const beat = longestBeat(first, second);
    expect(beat).toMatchObject({ p, q });
    if (periodMs === Infinity) expect(beat.periodMs).toBe(Infinity);
    else expect(Math.abs(beat.periodMs / periodMs - 1)).toBeLessThan(1e-12);
  });

  it('finds the ratio 5 : 6 of 50 and 60 when it may look that far', () => {
    expect(longestBeat(rate(50), rate(60), 6)).toEqual({ p: 6, q: 5, periodMs: Infinity });
  });
});
