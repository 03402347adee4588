import { describe, expect, it } from 'vitest';
import type { NamedComponent } from '../../src/analysis/components.ts';
import { estimateDifference, type Difference } from '../../src/analysis/difference.ts';
import { budgeted, budgetedMean } from '../support/budgeted.ts';
import { SLEEP_1, SLEEP_2 } from '../support/r-datasets.ts';
import { readReference } from '../support/r-reference.ts';

const r = readReference('difference');

function difference(...args: Parameters<typeof estimateDifference>): Difference {
  const got = estimateDifference(...args);
  if (got.kind !== 'difference') throw new Error(got.reason);
  return got;
}

/** Convolution on cells of 1/24 u: points of a distribution to 0.3 % of u, tails to 2 %. */
const POINT = 0.003;
const TAIL = 0.02;
function expectNear(got: number, expected: number, within: number, of = Math.abs(expected)): void {
  expect(Math.abs(got - expected), `${got} for ${expected}`).toBeLessThan(within * of);
}

describe("without shared components, from few readings each, it is Behrens and Fisher's (R, test/reference/difference.R)", () => {
  it('sleep', () => {
    const got = difference(budgetedMean(SLEEP_1), budgetedMean(SLEEP_2));
    const half = r('behrens.sleep.half')[0] ?? 0;
    expectNear(got.p, r('behrens.sleep.p')[0] ?? 0, TAIL);
    expectNear(got.interval.low, got.value - half, POINT, half);
    expectNear(got.interval.high, got.value + half, POINT, half);
    const at90 = difference(budgetedMean(SLEEP_1), budgetedMean(SLEEP_2), 0.9);
    expectNear(at90.interval.low, got.value - (r('behrens.sleep.half90')[0] ?? 0), POINT, half);
  });

  it('NIST/SEMATECH e-Handbook 1.3.5.3 (AUTO83B), from the printed summaries', () => {
    const got = difference(
      budgeted(20.14458, 6.4147 / Math.sqrt(249), 248),
      budgeted(30.48101, 6.10771 / Math.sqrt(79), 78),
    );
    const half = r('behrens.auto83b.half')[0] ?? 0;
    expectNear(got.interval.low, got.value - half, POINT, half);
    expectNear(got.interval.high, got.value + half, POINT, half);
    expect(got.p).toBeLessThan(1e-10); // 1.6e-23, of which a grid keeps what is above its cut
  });
});

describe('shared components', () => {
  const own = (standardUncertainty: number): NamedComponent => ({
    name: 'phases',
    standardUncertainty,
    degreesOfFreedom: Infinity,
    sharedKey: null,
  });
  const skew = (standardUncertainty: number, sharedKey: string): NamedComponent => ({
    name: 'row skew',
    standardUncertainty,
    degreesOfFreedom: Infinity,
    sharedKey,
  });

  it('cancel on one rig (JCGM 100:2008, 5.2.2: correlation 1)', () => {
    const got = difference(
      { value: 300, components: [own(3), skew(7, 'rig:x')] },
      { value: 250, components: [own(4), skew(7, 'rig:x')] },
    );
    expect(got).toMatchObject({ value: 50, standardUncertainty: 5, cancelled: ['row skew'] });
    expect(got.components.map((c) => c.name)).toEqual(['phases', 'phases']);
  });

  it('stay across rigs', () => {
    const got = difference(
      { value: 300, components: [own(3), skew(4, 'rig:x')] },
      { value: 250, components: [own(0), skew(12, 'rig:y')] },
    );
    expect(got).toMatchObject({ standardUncertainty: 13, cancelled: [] });
  });

  it('of different size leave the difference of their sizes', () => {
    const got = difference(
      { value: 300, components: [own(3), skew(9, 'rig:x')] },
      { value: 250, components: [own(0), skew(5, 'rig:x')] },
    );
    expect(got).toMatchObject({ standardUncertainty: 5, cancelled: [] });
  });
});

it('gives a reason where there is nothing to judge by', () => {
  const none = { value: 3, components: [] };
  expect(estimateDifference(none, budgeted(1, 1))).toEqual({ kind: 'not-estimable', value: 2, reason: 'no-budget' });
  expect(estimateDifference(budgeted(3, 0), budgeted(1, 0))).toEqual({
    kind: 'not-estimable',
    value: 2,
    reason: 'no-scatter',
  });
});

it('refuses a value that is not finite', () => {
  expect(() => estimateDifference(budgeted(Number.NaN, 1), budgeted(1, 1))).toThrow('a difference needs finite values');
});
