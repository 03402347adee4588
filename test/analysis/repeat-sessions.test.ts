import { describe, expect, it } from 'vitest';
import { estimateRandomEffects } from '../../src/analysis/random-effects.ts';
import { betweenAtMost, poolSessions, precisionOf } from '../../src/analysis/repeat-sessions.ts';
import { meanOf } from '../../src/analysis/summary.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { MORLEY } from '../support/nist-strd.ts';
import { readReference } from '../support/r-reference.ts';

const r = readReference('random-effects');

describe('morley, each run as a session (R, predict of lm(mean ~ 1))', () => {
  const effects = estimateRandomEffects(MORLEY);
  const u = Math.sqrt((effects.withinVariance ?? 0) / 20);
  const got = poolSessions(MORLEY.map((run) => ({ value: meanOf(run), standardUncertainty: u })));

  it('mean, interval and prediction interval', () => {
    if (got.kind !== 'repeat-sessions') throw new Error(got.reason);
    expectDigits(got.standardUncertainty, r('balanced.u')[0] ?? 0, 13);
    expectDigits(got.interval.low, r('balanced.confidence')[1] ?? 0, 13);
    expectDigits(got.interval.high, r('balanced.confidence')[2] ?? 0, 13);
    expectDigits(got.nextSession.low, r('balanced.prediction')[1] ?? 0, 13);
    expectDigits(got.nextSession.high, r('balanced.prediction')[2] ?? 0, 13);
  });

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
  const got = poolSessions([1, 2].map((value) => ({ value, standardUncertainty: 1 })));
  if (got.kind !== 'repeat-sessions') throw new Error(got.reason);
  expectDigits(got.betweenVarianceUnclipped, -0.5, 14);
  expect(got.betweenVariance).toBe(0);
});

it('without stated uncertainties nothing is said of consistency', () => {
  expect(poolSessions([1, 2].map((value) => ({ value, standardUncertainty: 0 })))).toMatchObject({
    consistency: undefined,
  });
});

it('gives a reason for one session, and for sessions that are all equal', () => {
  expect(poolSessions([{ value: 5, standardUncertainty: 1 }])).toEqual({
    kind: 'not-estimable',
    reason: 'one-session',
    mean: 5,
  });
  expect(poolSessions([5, 5].map((value) => ({ value, standardUncertainty: 1 })))).toEqual({
    kind: 'not-estimable',
    reason: 'no-scatter',
    mean: 5,
  });
  expect(() => poolSessions([])).toThrow(RangeError);
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
