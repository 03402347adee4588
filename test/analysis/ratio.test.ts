import { describe, expect, it } from 'vitest';
import type { NamedComponent } from '../../src/analysis/components.ts';
import { estimateRatio, fiellerSet, type FiellerInput } from '../../src/analysis/ratio.ts';
import { summarize } from '../../src/analysis/summary.ts';
import { budgeted, budgetedMean } from '../support/budgeted.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { SLEEP_1, SLEEP_2 } from '../support/r-datasets.ts';
import { readReference } from '../support/r-reference.ts';

const r = readReference('difference');
const [one, two] = [summarize(SLEEP_1), summarize(SLEEP_2)];
const [v1, v2] = [(one.standardError ?? 0) ** 2, (two.standardError ?? 0) ** 2];
const pooled = (v1 + v2) / 2;
const covariance = SLEEP_1.reduce((sum, x, i) => sum + (x - one.mean) * ((SLEEP_2[i] ?? 0) - two.mean), 0) / 9 / 10;

/** R (polyroot on the closed form, each root checked against the definition), group 1/group 2 of sleep. */
const BOUNDED: readonly (readonly [
  name: string,
  numeratorVariance: number,
  denominatorVariance: number,
  covariance: number,
  df: number,
])[] = [
  ['pooled', pooled, pooled, 0, 18],
  ['separate', v1, v2, 0, 18],
  ['welch', v1, v2, 0, r('welch.df')[0] ?? 0],
  ['paired', v1, v2, covariance, 9],
];

it.each(BOUNDED)(
  "Fieller's limits with %s variances",
  (name, numeratorVariance, denominatorVariance, cov, degreesOfFreedom) => {
    const got = fiellerSet({
      numerator: one.mean,
      denominator: two.mean,
      numeratorVariance,
      denominatorVariance,
      covariance: cov,
      degreesOfFreedom,
    });
    expect(got.kind).toBe('bounded');
    if (got.kind !== 'bounded') return;
    expectDigits(got.low, r(`fieller.${name}.roots`)[0] ?? 0, 12, 'low');
    expectDigits(got.high, r(`fieller.${name}.roots`)[1] ?? 0, 12, 'high');
  },
);

it('a denominator not told from 0 gives the complement of an interval: sleep, group 2/group 1 (g 2.83)', () => {
  const got = fiellerSet({
    numerator: two.mean,
    denominator: one.mean,
    numeratorVariance: pooled,
    denominatorVariance: pooled,
    covariance: 0,
    degreesOfFreedom: 18,
  });
  expect(got.kind).toBe('complement');
  if (got.kind !== 'complement') return;
  expectDigits(got.below, -4.271328, 7);
  expectDigits(got.above, 0.873516553, 9);
  expectDigits(got.below, r('fieller.inverse.roots')[0] ?? 0, 12);
  expectDigits(got.above, r('fieller.inverse.roots')[1] ?? 0, 12);
});

/** |a − ρb| ≤ t·√(v_a − 2ρc + ρ²v_b) is the definition of the set: limits lie on it, inside holds, outside does not. */
describe('the set is where its definition holds', () => {
  const base: FiellerInput = {
    numerator: 3,
    denominator: 2,
    numeratorVariance: 1,
    denominatorVariance: 0.25,
    covariance: 0.1,
    degreesOfFreedom: Infinity,
  };
  const z2 = 1.959963984540054 ** 2;
  const holds = (input: FiellerInput, rho: number): boolean =>
    (input.numerator - rho * input.denominator) ** 2 <=
    z2 * (input.numeratorVariance - 2 * rho * input.covariance + rho * rho * input.denominatorVariance) * (1 + 1e-9);
  const cases: readonly FiellerInput[] = [
    base,
    { ...base, numerator: -3 },
    { ...base, numerator: 0 },
    { ...base, denominatorVariance: 2 },
    { ...base, numerator: 0.1, denominatorVariance: 2 },
    { ...base, denominator: -2, covariance: -0.3 },
    { ...base, numerator: 0, denominator: 0.5, denominatorVariance: 4, covariance: 0 },
  ];
  const kinds = new Set<string>();
  it.each(cases)('%j', (input) => {
    const set = fiellerSet(input);
    kinds.add(set.kind);
    for (let rho = -30; rho <= 30; rho += 0.137) {
      const inside =
        set.kind === 'unbounded' ||
        (set.kind === 'bounded' ? rho >= set.low && rho <= set.high : rho <= set.below || rho >= set.above);
      expect(holds(input, rho), `ρ = ${rho} in ${JSON.stringify(set)}`).toBe(inside);
    }
  });
  it('has been asked of every kind', () => expect([...kinds].sort()).toEqual(['bounded', 'complement', 'unbounded']));
});

describe('the ratio of two estimates', () => {
  it('lies in its set', () => {
    const got = estimateRatio(budgetedMean(SLEEP_1), budgetedMean(SLEEP_2));
    expect(got.kind).toBe('ratio');
    if (got.kind !== 'ratio' || got.set.kind !== 'bounded') throw new Error('bounded expected');
    expectDigits(got.value, 0.321888412017, 11); // R 4.2.2
    expect(got.set.low).toBeLessThan(got.value);
    expect(got.set.high).toBeGreaterThan(got.value);
    // Welch and Satterthwaite for a − ρb: (v1 + ρ²v2)²/(v1²/9 + ρ⁴v2²/9)
    const scaled = got.value ** 2 * v2;
    expectDigits(got.degreesOfFreedom, (v1 + scaled) ** 2 / (v1 ** 2 / 9 + scaled ** 2 / 9), 12);
  });

  it('counts a shared component as a covariance', () => {
    const shared = { name: 'skew', standardUncertainty: 5, degreesOfFreedom: Infinity, sharedKey: 'rig:x' };
    const a = { value: 100, components: [{ ...shared, name: 'own', standardUncertainty: 1, sharedKey: null }, shared] };
    const got = estimateRatio(a, { ...a, components: [...a.components] });
    if (got.kind !== 'ratio') throw new Error(got.reason);
    // at ratio 1 the shared error leaves a/b alone: 2·√2 % wide without it, 14 % if it counted twice
    expect(got.set).toEqual(
      fiellerSet({
        numerator: 100,
        denominator: 100,
        numeratorVariance: 26,
        denominatorVariance: 26,
        covariance: 25,
        degreesOfFreedom: Infinity,
      }),
    );
    expect(got.set.kind === 'bounded' && got.set.high - got.set.low).toBeLessThan(0.06);
  });

  it('a shared error in proportion to the values takes no part in the degrees of freedom', () => {
    const skew = (standardUncertainty: number): NamedComponent => ({
      name: 'clock',
      standardUncertainty,
      degreesOfFreedom: 2,
      sharedKey: 'rig:x',
    });
    const a = { value: 200, components: [...budgeted(0, 2, 12).components, skew(10)] };
    const b = { value: 100, components: [...budgeted(0, 0).components, skew(5)] };
    const got = estimateRatio(a, b);
    if (got.kind !== 'ratio') throw new Error(got.reason);
    expectDigits(got.degreesOfFreedom, 12, 13);
  });

  it.each([
    ['no-budget', { value: 1, components: [] }, budgeted(1, 1)],
    ['zero-denominator', budgeted(1, 1), budgeted(0, 1)],
    ['no-scatter', budgeted(1, 0), budgeted(2, 0)],
  ] as const)('gives the reason %s', (reason, a, b) => {
    expect(estimateRatio(a, b)).toEqual({ kind: 'not-estimable', reason });
  });
});

it('refuses what is not finite', () => {
  const bad = {
    numerator: Number.NaN,
    denominator: 1,
    numeratorVariance: 1,
    denominatorVariance: 1,
    covariance: 0,
    degreesOfFreedom: 9,
  };
  expect(() => fiellerSet(bad)).toThrow('a ratio needs finite values and variances');
});
