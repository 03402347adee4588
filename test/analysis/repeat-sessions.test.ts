import { describe, expect, it } from 'vitest';
import { estimateRandomEffects } from '../../src/analysis/random-effects.ts';
import { betweenAtMost, precisionOf } from '../../src/analysis/between-sessions.ts';
import { weighDayChanges } from '../../src/analysis/between-days.ts';
import { intervalAt } from '../../src/analysis/error-tail.ts';
import { poolSessions, type RepeatSession } from '../../src/analysis/repeat-sessions.ts';
import { meanOf } from '../../src/analysis/summary.ts';
import { normalError } from '../support/budgeted.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { MORLEY } from '../support/nist-strd.ts';
import { readReference } from '../support/r-reference.ts';

const r = readReference('random-effects');

const at = (value: number, standardUncertainty: number): RepeatSession => ({
  value,
  standardUncertainty,
  error: normalError(standardUncertainty),
});
const ONE_SIZE = (sdMs: number) => ({ sizes: [{ sdMs, step: 0, probability: 1 }], frameMs: 40 });
const Z = 1.959963984540054;
const half = ({ low, high }: { low: number; high: number }): number => (high - low) / 2;

describe('normal errors and a known variation between days: the arithmetic of one-way random effects', () => {
  const got = poolSessions([at(300, 3), at(306, 3), at(303, 3)], ONE_SIZE(4));
  if (got.kind !== 'repeat-sessions') throw new Error(got.reason);

  it('mean ± 1.96·√((u² + τ²)/k)', () => {
    expect(got.mean.value).toBe(303);
    expectDigits(half(intervalAt(got.mean, 0.95)), Z * Math.sqrt((9 + 16) / 3), 2.5);
  });

  it('next ± 1.96·√((u² + τ²)(1 + 1/k))', () =>
    expectDigits(half(intervalAt(got.next, 0.95)), Z * Math.sqrt((9 + 16) * (4 / 3)), 2.5));
});

it('two sessions that agree, where days do not vary, are better known together than apart', () => {
  const got = poolSessions([at(300, 2), at(301, 2)], ONE_SIZE(0));
  if (got.kind !== 'repeat-sessions') throw new Error(got.reason);
  expectDigits(half(intervalAt(got.mean, 0.95)), (Z * 2) / Math.SQRT2, 2.5);
});

describe('sizes of change are weighed by the scatter', () => {
  const days = [10, 14, 11].map((value, i) => ({ value, standardUncertainty: [1, 2, 0.5][i] ?? 1 }));
  // ∫ dμ Π φ(y − μ; v) = √(2π/Σw) Π √(w/2π) exp(−Q/2), w = 1/v, Q = Σ w(y − ȳ)²
  const evidence = (tau: number): number => {
    const w = days.map(({ standardUncertainty: u }) => 1 / (u * u + tau * tau));
    const total = w.reduce((a, b) => a + b, 0);
    const mean = days.reduce((sum, { value }, i) => sum + w[i]! * value, 0) / total;
    const q = days.reduce((sum, { value }, i) => sum + w[i]! * (value - mean) ** 2, 0);
    return Math.sqrt(w.reduce((a, b) => a * b, 1) / total) * Math.exp(-q / 2);
  };

  it('as their evidence in closed form', () => {
    const got = weighDayChanges(
      days,
      [0, 2, 8].map((sdMs) => ({ sdMs, step: 0, probability: 1 / 3 })),
      40,
    );
    const all = evidence(0) + evidence(2) + evidence(8);
    expect(got.map(({ sdMs }) => sdMs)).toEqual([0, 2, 8]);
    got.forEach(({ sdMs, probability }) => expectDigits(probability, evidence(sdMs) / all, 5));
  });

  it('a whole frame apart speaks for whole-frame steps', () => {
    const sizes = [0, 0.5].map((step) => ({ sdMs: 0, step, probability: 0.5 }));
    const apart = [
      { value: 100, standardUncertainty: 2 },
      { value: 140, standardUncertainty: 2 },
    ];
    expect(weighDayChanges(apart, sizes, 40)).toMatchObject([{ step: 0.5, probability: 1 }]);
  });
});

it('scatter that no stated size explains widens the mean by a factor that it tells: t on k − 1 degrees of freedom', () => {
  const got = poolSessions([at(300, 1), at(320, 1), at(280, 1)], ONE_SIZE(0));
  if (got.kind !== 'repeat-sessions') throw new Error(got.reason);
  // s 20, mean of three; t of 0.975 on 2 degrees of freedom 4.302653 (R, qt)
  expectDigits(half(intervalAt(got.mean, 0.95)), 4.302653 * (20 / Math.sqrt(3)), 2.2);
});

describe('morley, each run as a session (R)', () => {
  const effects = estimateRandomEffects(MORLEY);
  const u = Math.sqrt((effects.withinVariance ?? 0) / 20);
  const got = poolSessions(
    MORLEY.map((run) => at(meanOf(run), u)),
    {
      sizes: [
        { sdMs: 0, step: 0, probability: 0.5 },
        { sdMs: 30, step: 0, probability: 0.5 },
      ],
      frameMs: 40,
    },
  );

  it('between-session variance equals the analysis of variance where sessions are of equal size', () => {
    if (got.kind !== 'repeat-sessions') throw new Error(got.reason);
    expectDigits(got.betweenVariance, r('balanced.between')[0] ?? 0, 12);
  });

  it('χ² over its degrees of freedom is F where all have the same uncertainty', () => {
    if (got.kind !== 'repeat-sessions') throw new Error(got.reason);
    expectDigits((got.consistency?.chiSquare ?? 0) / 4, r('balanced.f')[0] ?? 0, 12);
  });

  it('repeatability, between and reproducibility', () => {
    const precision = precisionOf(effects);
    expectDigits(precision?.repeatabilityStandardDeviation, 74.2336283563, 11);
    expectDigits(precision?.betweenStandardDeviation, 30.0980634, 8);
    expectDigits(precision?.reproducibilityStandardDeviation, Math.sqrt(905.893421053 + 5510.63157894737), 11);
  });
});

it('R agrees with the random effects of runs of unequal size too', () => {
  const sizes = r('unbalanced.sizes');
  const dropped = new Set([1, 2, 3, 25, 50, 51, 52, 53, 54, 55, 56, 57]);
  const runs = MORLEY.map((run, i) => run.filter((_, j) => !dropped.has(20 * i + j + 1)));
  expect(runs.map((run) => run.length)).toEqual(sizes);
  const got = estimateRandomEffects(runs);
  expectDigits(got.between.meanSquare, r('unbalanced.ms')[0] ?? 0, 13);
  expectDigits(got.within?.meanSquare, r('unbalanced.ms')[1] ?? 0, 13);
  expectDigits(got.betweenVariance, r('unbalanced.between')[0] ?? 0, 12);
  expectDigits(got.p, r('unbalanced.p')[0] ?? 0, 12);
});

it('scatter below what the sessions state gives a variance below zero, shown beside the clipped one', () => {
  // values 1 and 2: s² 0.5; u 1 each: 0.5 − 1
  const got = poolSessions([at(1, 1), at(2, 1)], ONE_SIZE(0));
  if (got.kind !== 'repeat-sessions') throw new Error(got.reason);
  expectDigits(got.betweenVarianceUnclipped, -0.5, 14);
  expect(got.betweenVariance).toBe(0);
});

it('gives a reason for one session, and where nothing can tell how far to trust them', () => {
  expect(poolSessions([at(5, 1)], ONE_SIZE(0))).toEqual({ kind: 'not-estimable', reason: 'one-session', mean: 5 });
  expect(poolSessions([at(5, 0), at(5, 0)], ONE_SIZE(0))).toEqual({
    kind: 'not-estimable',
    reason: 'no-scatter',
    mean: 5,
  });
  expect(() => poolSessions([], ONE_SIZE(0))).toThrow(RangeError);
  expect(precisionOf(estimateRandomEffects([[1], [2]]))).toBeUndefined();
});

describe('the largest standard deviation between sessions', () => {
  // χ² on 2 degrees of freedom has the distribution function 1 − exp(−x/2), so its 5 % point is −2·ln 0.95
  const CHI2 = -2 * Math.log(0.95);
  const sessions = (values: readonly number[], us: readonly number[]) =>
    values.map((value, i) => ({ value, standardUncertainty: us[i] ?? 0 }));

  it('is √(S/χ² − u²) where all have the same uncertainty', () => {
    expectDigits(betweenAtMost(sessions([1, 2, 6], [1, 1, 1])), Math.sqrt(14 / CHI2 - 1), 8);
    expectDigits(betweenAtMost(sessions([1, 2, 6], [0, 0, 0])), Math.sqrt(14 / CHI2), 8);
  });

  it('is nothing where the sessions agree better than one in twenty would', () => {
    expect(betweenAtMost(sessions([1, 1.1, 0.9], [5, 5, 5]))).toBe(0);
    expect(betweenAtMost(sessions([1, 1, 1], [1, 1, 1]))).toBe(0);
  });

  it('brings Q to the quantile where uncertainties differ', () => {
    const given = sessions([10, 14, 11], [1, 2, 0.5]);
    const tau = betweenAtMost(given);
    const weights = given.map(({ standardUncertainty: u }) => 1 / (u * u + tau * tau));
    const total = weights.reduce((a, b) => a + b, 0);
    const mean = given.reduce((sum, { value }, i) => sum + weights[i]! * value, 0) / total;
    expectDigits(
      given.reduce((sum, { value }, i) => sum + weights[i]! * (value - mean) ** 2, 0),
      CHI2,
      8,
    );
  });
});
