import { describe, expect, it } from 'vitest';
import type { BudgetedValue } from '../../src/analysis/components.ts';
import { errorOf } from '../../src/analysis/linear-error.ts';
import { estimateRatio, ratioSet, type RatioSet } from '../../src/analysis/ratio.ts';
import { seededRandom } from '../../src/analysis/random.ts';
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

/** Normal errors with a covariance, as own parts and one part that both share. */
function normal(value: number, variance: number, shared: number): BudgetedValue {
  const part = (name: string, size: number, sharedKey: string | null) => ({
    name,
    standardUncertainty: Math.sqrt(size),
    degreesOfFreedom: Infinity,
    sharedKey,
  });
  return {
    value,
    components: [part('own', variance - Math.abs(shared), null), part('both', Math.abs(shared), 'rig:x')],
  };
}

function setOf(a: BudgetedValue, b: BudgetedValue): RatioSet {
  return ratioSet({ value: a.value, error: errorOf(a) }, { value: b.value, error: errorOf(b) });
}

/** R (polyroot on Fieller's closed form with a normal quantile, each root checked against the definition). */
it.each([
  ['pooled', pooled, pooled, 0],
  ['separate', v1, v2, 0],
  ['paired', v1, v2, covariance],
])("with normal errors the limits are Fieller's, with %s variances", (name, va, vb, cov) => {
  const got = setOf(normal(one.mean, va, cov), normal(two.mean, vb, cov));
  expect(got.kind).toBe('bounded');
  if (got.kind !== 'bounded') return;
  expectDigits(got.low, r(`fieller.${name}.roots`)[0] ?? 0, 7, 'low');
  expectDigits(got.high, r(`fieller.${name}.roots`)[1] ?? 0, 7, 'high');
});

it('a denominator not told from 0 gives the complement of an interval: sleep, group 2/group 1 (g 2.46)', () => {
  const got = setOf(normal(two.mean, pooled, 0), normal(one.mean, pooled, 0));
  expect(got.kind).toBe('complement');
  if (got.kind !== 'complement') return;
  expectDigits(got.below, r('fieller.inverse.roots')[0] ?? 0, 7);
  expectDigits(got.above, r('fieller.inverse.roots')[1] ?? 0, 7);
});

/** |a − ρb| ≤ z·√(v_a − 2ρc + ρ²v_b) defines the set of normal errors: inside it holds, outside it does not. */
describe('the set is where its definition holds', () => {
  const z2 = 1.959963984540054 ** 2;
  const cases: readonly (readonly [a: number, b: number, va: number, vb: number, cov: number])[] = [
    [3, 2, 1, 0.25, 0.1],
    [-3, 2, 1, 0.25, 0.1],
    [0, 2, 1, 0.25, 0.1],
    [3, 2, 1, 2, 0.1],
    [0.1, 2, 1, 2, 0.1],
    [3, -2, 1, 0.25, 0.1],
    [0, 0.5, 1, 4, 0],
  ];
  const kinds = new Set<string>();
  it.each(cases)('%d over %d, variances %d and %d, covariance %d', (a, b, va, vb, cov) => {
    const set = setOf(normal(a, va, cov), normal(b, vb, cov));
    kinds.add(set.kind);
    for (let rho = -30; rho <= 30; rho += 0.137) {
      const inside =
        set.kind === 'unbounded' ||
        (set.kind === 'bounded' ? rho >= set.low && rho <= set.high : rho <= set.below || rho >= set.above);
      const holds = (a - rho * b) ** 2 <= z2 * (va - 2 * rho * cov + rho * rho * vb) * (1 + 1e-7);
      expect(holds, `ρ = ${rho} in ${JSON.stringify(set)}`).toBe(inside);
    }
  });
  it('has been asked of every kind', () => expect([...kinds].sort()).toEqual(['bounded', 'complement', 'unbounded']));
});

it('with rectangular errors it holds the true ratio in 95 % of drawn pairs (± 4 standard deviations of the share)', () => {
  const random = seededRandom(5);
  const draws = 300;
  const rectangular = (value: number, u: number, name: string): BudgetedValue => ({
    value,
    components: [
      { name, standardUncertainty: u, degreesOfFreedom: Infinity, sharedKey: name, distribution: 'rectangular' },
    ],
  });
  let held = 0;
  for (let i = 0; i < draws; i += 1) {
    const half = Math.sqrt(3);
    const a = rectangular(300 + random.between(-4 * half, 4 * half), 4, 'a');
    const b = rectangular(200 + random.between(-6 * half, 6 * half), 6, 'b');
    const set = setOf(a, b);
    if (set.kind === 'bounded' && set.low <= 1.5 && set.high >= 1.5) held += 1;
  }
  expect(Math.abs(held / draws - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / draws));
});

describe('the ratio of two estimates', () => {
  it('lies in its set', () => {
    const got = estimateRatio(budgetedMean(SLEEP_1), budgetedMean(SLEEP_2));
    if (got.kind !== 'ratio' || got.set.kind !== 'bounded') throw new Error('bounded expected');
    expectDigits(got.value, 0.321888412017, 11); // R 4.2.2
    expect(got.set.low).toBeLessThan(got.value);
    expect(got.set.high).toBeGreaterThan(got.value);
  });

  it('an error that both share in proportion to their values leaves the ratio alone', () => {
    const skew = (standardUncertainty: number) => ({
      name: 'clock',
      standardUncertainty,
      degreesOfFreedom: Infinity,
      sharedKey: 'rig:x',
    });
    const a = { value: 200, components: [...budgeted(0, 2).components, skew(20)] };
    const b = { value: 100, components: [skew(10)] };
    const got = estimateRatio(a, b);
    if (got.kind !== 'ratio' || got.set.kind !== 'bounded') throw new Error('bounded expected');
    // 2 ± 1.96·2/100, a little wider away from 2, where the clock counts
    expect(got.set.high - 2).toBeGreaterThan(0.039);
    expect(got.set.high - 2).toBeLessThan(0.05);
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
  expect(() => setOf(budgeted(Number.NaN, 1), budgeted(1, 1))).toThrow('a ratio needs finite values');
});
