import { describe, expect, it } from 'vitest';
import type { Chain } from '../../src/analysis/chain.ts';
import { phaseErrors, readingRangeMs, readingVarianceMs2 } from '../../src/analysis/phase-errors.ts';
import { rate, type Rate } from '../../src/model/rate.ts';

const chainOf = (body: Rate, sync: 'input' | 'free' = 'input', source = rate(60)): Chain => ({
  source: { refresh: source },
  body: { rate: body },
  display: { refresh: rate(60), sync },
});
/** Readings about 1.7 s apart, unevenly: what counts is that they fall on no grid. */
const STAMPS_MS = Array.from({ length: 30 }, (_, i) => 1_700 * i + 611 * (i % 7) + 97 * (i % 5));

describe('readingVarianceMs2', () => {
  it('is the sum of its rectangular parts (JCGM 100, 4.3.7)', () => {
    // 40²/12 + 2·16.667²/12 + 16.667²/12 + 2·1/12
    expect(readingVarianceMs2(chainOf(rate(25), 'free'), 'two-timers', 1)).toBeCloseTo(
      133.3333 + 46.2963 + 23.1481 + 0.1667,
      3,
    );
    expect(readingVarianceMs2({ ...chainOf(rate(25)), observer: { rate: rate(100) } }, 'frame-count', 0)).toBeCloseTo(
      133.3333 + 16.6667,
      3,
    );
    expect(readingVarianceMs2(chainOf(rate(25)), 'instrument', 0)).toBeCloseTo(133.3333, 3);
  });
});

describe('readingRangeMs', () => {
  it('is the sum of the widths of its rectangular parts', () => {
    // 40 + 2·16.667 + 16.667 + 2·1; 40 + 2·10; 40
    expect(readingRangeMs(chainOf(rate(25), 'free'), 'two-timers', 1)).toBeCloseTo(92, 9);
    expect(readingRangeMs({ ...chainOf(rate(25)), observer: { rate: rate(100) } }, 'frame-count', 0)).toBeCloseTo(
      60,
      9,
    );
    expect(readingRangeMs(chainOf(rate(25)), 'instrument', 0)).toBeCloseTo(40, 9);
  });
});

describe('phaseErrors', () => {
  it.each([
    { name: '24000/1001 against 60.02', chain: chainOf(rate(24000, 1001), 'input', rate(3001, 50)) },
    {
      name: '24000/1001 against 60.02, free-running display',
      chain: chainOf(rate(24000, 1001), 'free', rate(3001, 50)),
    },
  ])('gives the closed form for rates that never come into step: $name', ({ chain }) => {
    const closed = readingVarianceMs2(chain, 'two-timers', 1);
    const { scatterMs2, meanMs2 } = phaseErrors(chain, [STAMPS_MS], 1);
    // 100 sessions of 30: a variance from 3000 readings is good to √(2/3000) = 2.6 %; a mean square of 100 to 14 %
    expect(Math.abs(scatterMs2 / closed - 1)).toBeLessThan(5 * Math.sqrt(2 / 3000));
    expect(Math.abs((meanMs2 * 30) / closed - 1)).toBeLessThan(5 * Math.sqrt(2 / 100));
  });

  it('leaves the shared phase in the mean, and out of the scatter, where rates are locked', () => {
    const locked = chainOf(rate(60));
    const closed = readingVarianceMs2(locked, 'two-timers', 1);
    const one = phaseErrors(locked, [STAMPS_MS], 1);
    const three = phaseErrors(locked, [STAMPS_MS.slice(0, 10), STAMPS_MS.slice(10, 20), STAMPS_MS.slice(20)], 1);
    expect(one.scatterMs2).toBeLessThan(0.7 * closed);
    // the capture's phase within its refresh alone: T_s²/12 that averaging does not touch
    expect(one.meanMs2).toBeGreaterThan((0.6 * (1000 / 60) ** 2) / 12);
    expect(three.meanMs2).toBeLessThan(0.6 * one.meanMs2);
  });
});
