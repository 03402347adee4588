import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { describe, expect, it } from 'vitest';
import type { BudgetedValue, NamedComponent } from '../../src/analysis/components.ts';
import { estimateDifference, type Difference } from '../../src/analysis/difference.ts';
import { fromCdf, halfWidthAbout, meanOf, varianceOf, type Distribution } from '../../src/analysis/distribution.ts';
import { combineErrors, distributionOf, errorOf } from '../../src/analysis/linear-error.ts';
import { regrid } from '../../src/analysis/regrid.ts';

const rectangular = (name: string, standardUncertainty: number): NamedComponent => ({
  name,
  standardUncertainty,
  degreesOfFreedom: Infinity,
  sharedKey: 'rig:x',
  distribution: 'rectangular',
});
const sumOfFour = (sizes: readonly number[]): Distribution =>
  distributionOf(errorOf({ value: 0, components: sizes.map((u, i) => rectangular(`X${i + 1}`, u)) }));

describe('sums of four quantities, JCGM 101:2008, 9.2 (limits from memory)', () => {
  it('four rectangular ones of standard uncertainty 1: u = 2, 95 % within ± 3.88, where GUM has ± 3.92 (9.2.3)', () => {
    const sum = sumOfFour([1, 1, 1, 1]);
    expect(Math.sqrt(varianceOf(sum))).toBeCloseTo(2, 2);
    expect(Math.abs(halfWidthAbout(sum, 0, 0.95) - 3.88)).toBeLessThan(0.01);
  });

  it('one of them of 10: u = √103 ≈ 10.1, 95 % within ± 17.0, where GUM has ± 19.9 (9.2.4)', () => {
    const sum = sumOfFour([10, 1, 1, 1]);
    expect(Math.sqrt(varianceOf(sum))).toBeCloseTo(Math.sqrt(103), 1);
    expect(Math.abs(halfWidthAbout(sum, 0, 0.95) - 17)).toBeLessThan(0.1);
  });
});

const normal = (sd: number, step: number): Distribution => fromCdf((x) => normalCdf(x, 0, sd), 8 * sd, step);
const session = (key: string, value: number, error: Distribution, shared: readonly NamedComponent[] = []) =>
  ({ value, own: { key, error }, components: shared }) satisfies BudgetedValue;
const difference = (a: BudgetedValue, b: BudgetedValue): Difference => {
  const got = estimateDifference(a, b);
  if (got.kind !== 'difference') throw new Error(got.reason);
  return got;
};

describe('the difference of two sessions', () => {
  const a = session('a', 300, normal(3, 0.05), [rectangular('skew', 7)]);
  const b = session('b', 290, normal(4, 0.11), [rectangular('skew', 7)]);

  it('has the root sum of squares of normal own errors, and nothing of an equal shared one', () => {
    const got = difference(a, b);
    expect(got.standardUncertainty).toBeCloseTo(5, 1);
    expect((got.interval.high - got.interval.low) / 2).toBeCloseTo(1.959964 * 5, 1);
    // two-sided normal p of 10/5
    expect(got.p).toBeCloseTo(0.0455, 3);
  });

  it('keeps what is left of a shared error whose sizes differ', () => {
    const got = difference(a, session('b', 290, normal(4, 0.11), [rectangular('skew', 19)]));
    expect(got.standardUncertainty).toBeCloseTo(13, 1);
  });

  it('keeps skewed errors on their side: what a may be more, the difference may be more', () => {
    // truth = value + error: a may be up to 9 more, and no less than 1 less
    const skewed: Distribution = { low: -1, step: 1, masses: [0.9, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0.1] };
    const got = difference(session('a', 300, skewed), session('b', 300, normal(0.01, 0.01)));
    expect(got.interval.high).toBeGreaterThan(8);
    expect(got.interval.low).toBeGreaterThan(-2);
  });

  it('is nothing to judge where a session is set against itself', () => {
    expect(estimateDifference(a, a)).toEqual({ kind: 'not-estimable', value: 0, reason: 'no-scatter' });
  });

  it('cannot be judged where neither session has any scatter', () => {
    const exact = (key: string, value: number) => session(key, value, { low: 0, step: 1, masses: [1] });
    expect(estimateDifference(exact('a', 2), exact('b', 1))).toEqual({
      kind: 'not-estimable',
      value: 1,
      reason: 'no-scatter',
    });
  });

  it('cancels exactly in a difference of differences that have a session in common', () => {
    const c = session('c', 280, normal(5, 0.3));
    const error = combineErrors([
      [1, errorOf(a)],
      [-1, errorOf(b)],
      [
        -1,
        combineErrors([
          [1, errorOf(c)],
          [-1, errorOf(b)],
        ]),
      ],
    ]);
    // a − c: √(9 + 25) and the skew of 7 that c has not
    expect(varianceOf(distributionOf(error))).toBeCloseTo(9 + 25 + 49, 0);
  });
});

it('regridding keeps the mass and, but for a cell, mean and spread, coarse to fine and fine to coarse', () => {
  const from = normal(2, 0.4);
  for (const step of [0.07, 0.9]) {
    const got = regrid(from, step);
    expect(got.masses.reduce((sum, mass) => sum + mass, 0)).toBeCloseTo(1, 12);
    expect(meanOf(got)).toBeCloseTo(0, 2);
    // each cell spread evenly, JCGM 100, 4.3.7: at most (step² + old step²)/12 more
    expect(varianceOf(got) - 4).toBeGreaterThan(0);
    expect(varianceOf(got) - 4).toBeLessThan((step ** 2 + 0.4 ** 2) / 12 + 0.4 ** 2 / 12 + 1e-3);
  }
});
