import { describe, expect, it } from 'vitest';
import type { NamedComponent } from '../../src/analysis/components.ts';
import { estimateDifference, type Difference } from '../../src/analysis/difference.ts';
import { budgeted, budgetedMean } from '../support/budgeted.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { SLEEP_1, SLEEP_2 } from '../support/r-datasets.ts';
import { readReference } from '../support/r-reference.ts';

const r = readReference('difference');

function difference(...args: Parameters<typeof estimateDifference>): Difference {
  const got = estimateDifference(...args);
  if (got.kind !== 'difference') throw new Error(got.reason);
  return got;
}

describe("without shared components it is Welch's t", () => {
  it('R, t.test on sleep', () => {
    const got = difference(budgetedMean(SLEEP_1), budgetedMean(SLEEP_2));
    expectDigits(got.value / got.standardUncertainty, r('welch.t')[0] ?? 0, 13, 't');
    expectDigits(got.degreesOfFreedom, r('welch.df')[0] ?? 0, 13, 'df');
    expectDigits(got.p, r('welch.p')[0] ?? 0, 12, 'p');
    expectDigits(got.interval.low, r('welch.interval')[0] ?? 0, 12, 'low');
    expectDigits(got.interval.high, r('welch.interval')[1] ?? 0, 11, 'high');
    const at90 = difference(budgetedMean(SLEEP_1), budgetedMean(SLEEP_2), 0.9);
    expectDigits(at90.interval.low, r('welch.interval90')[0] ?? 0, 12, '90 % low');
  });

  it('NIST/SEMATECH e-Handbook 1.3.5.3 (AUTO83B): from the printed summaries (R 4.2.2)', () => {
    const got = difference(
      budgeted(20.14458, 6.4147 / Math.sqrt(249), 248),
      budgeted(30.48101, 6.10771 / Math.sqrt(79), 78),
    );
    expectDigits(got.value / got.standardUncertainty, -12.946268, 7, 't');
    expectDigits(got.degreesOfFreedom, 136.87499, 7, 'df');
    expectDigits(got.p, 1.5709e-25, 4, 'p');
    expectDigits(got.interval.low, -11.915244, 7, 'low');
    expectDigits(got.interval.high, -8.757616, 7, 'high');
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
    degreesOfFreedom: 50,
    sharedKey,
  });

  it('cancel on one rig (JCGM 100:2008, 5.2.2: correlation 1)', () => {
    const got = difference(
      { value: 300, components: [own(3), skew(7, 'rig:x')] },
      { value: 250, components: [own(4), skew(7, 'rig:x')] },
    );
    expect(got).toMatchObject({
      value: 50,
      standardUncertainty: 5,
      degreesOfFreedom: Infinity,
      cancelled: ['row skew'],
    });
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
    // Welch and Satterthwaite: 5⁴/(4⁴/50)
    expectDigits(got.degreesOfFreedom, 122.0703125, 14);
  });

  it('that differ in degrees of freedom keep the fewer', () => {
    const fewer = { ...skew(3, 'rig:x'), degreesOfFreedom: 4 };
    for (const [a, b] of [
      [skew(5, 'rig:x'), fewer],
      [fewer, skew(5, 'rig:x')],
    ] as const) {
      expectDigits(difference({ value: 3, components: [a] }, { value: 1, components: [b] }).degreesOfFreedom, 4, 14);
    }
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
