import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/analysis/random.ts';
import { estimateRateLaw, predictRateLaw, type RateLaw, type RatePoint } from '../../src/analysis/rate-law.ts';
import { intervalAt } from '../../src/analysis/error-tail.ts';
import { combineErrors, errorOf } from '../../src/analysis/linear-error.ts';
import { normalError } from '../support/budgeted.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { NORRIS } from '../support/nist-strd.ts';
import { normalNoise, shareTolerance } from '../support/normal-noise.ts';
import { readReference } from '../support/r-reference.ts';

const r = readReference('known-variance');

function point(intervalMs: number, totalMs: number, standardUncertainty: number): RatePoint {
  return { intervalMs, totalMs, standardUncertainty, error: normalError(standardUncertainty) };
}

function law(...args: Parameters<typeof estimateRateLaw>): RateLaw {
  const got = estimateRateLaw(...args);
  if (got.kind !== 'rate-law') throw new Error(got.reason);
  return got;
}

describe('R, lm with weights 1/u² and variances known (test/reference/known-variance.R)', () => {
  const points = r('law.interval').map((interval, i) => point(interval, r('law.total')[i] ?? 0, r('law.u')[i] ?? 0));
  const got = law(points);

  it('fixed part, frames and their uncertainties', () => {
    expectDigits(got.fixedMs.value, r('law.estimate')[0] ?? 0, 12, 'fixed');
    expectDigits(got.frames.value, r('law.estimate')[1] ?? 0, 12, 'frames');
    expectDigits(got.fixedMs.standardUncertainty, r('law.u.estimate')[0] ?? 0, 12, 'u(fixed)');
    expectDigits(got.frames.standardUncertainty, r('law.u.estimate')[1] ?? 0, 12, 'u(frames)');
    expectDigits(got.frames.interval.high - got.frames.value, 1.95996398454005 * (r('law.u.estimate')[1] ?? 0), 12);
  });

  it('scatter about the line, and lack of fit between the rates', () => {
    expectDigits(got.consistency?.chiSquare, r('law.chisq')[0] ?? 0, 12);
    expectDigits(got.consistency?.p, r('law.chisq.p')[0] ?? 0, 11);
    expect(got.consistency?.inflation).toBe(1); // p 0.094 is no contradiction
    expectDigits(got.lackOfFit?.chiSquare, r('law.lack')[0] ?? 0, 11);
    expect(got.lackOfFit?.degreesOfFreedom).toBe(r('law.lack')[1]);
    expect(got.rates).toBe(4);
  });

  it('prediction at 47.952 frames/s', () => {
    const at = predictRateLaw(got, 1001 / 48);
    const [value = 0, u = 0] = r('law.48');
    expectDigits(at.value, value, 12);
    expectDigits(at.standardUncertainty, u, 12);
    expectDigits(intervalAt(at, 0.95).high, value + 1.95996398454005 * u, 12);
  });

  it('a shared error moves the fixed part and the line, not the frames', () => {
    const rig = errorOf({
      value: 0,
      components: [{ name: 'row skew', standardUncertainty: 4, degreesOfFreedom: Infinity, sharedKey: 'rig:x' }],
    });
    const onRig = points.map((one) => ({
      ...one,
      error: combineErrors([
        [1, one.error],
        [1, rig],
      ]),
    }));
    const shared = law(onRig);
    expectDigits(shared.fixedMs.standardUncertainty, Math.hypot(r('law.u.estimate')[0] ?? 0, 4), 12);
    expectDigits(shared.frames.standardUncertainty, got.frames.standardUncertainty, 12);
    expectDigits(
      predictRateLaw(shared, 20).standardUncertainty,
      Math.hypot(predictRateLaw(got, 20).standardUncertainty, 4),
      12,
    );
  });

  it('a shared error in proportion to the total moves the frames by as much', () => {
    const clock = (size: number) =>
      errorOf({
        value: 0,
        components: [{ name: 'clock', standardUncertainty: size, degreesOfFreedom: Infinity, sharedKey: 'rig:x' }],
      });
    // two exact totals of 4 frames: 1 % of them is 1 % of 4
    const two = [10, 20].map((x) => ({ ...point(x, 4 * x, 1), error: clock(0.04 * x) }));
    expectDigits(law(two).frames.standardUncertainty, 0.04, 12);
  });
});

it('NIST StRD Norris, its residual deviation given as the uncertainty: certified coefficients and standard deviations', () => {
  const got = law(NORRIS.map(([x, y]) => point(x, y, 0.884796396144373)));
  expectDigits(got.fixedMs.value, -0.262323073774029, 11);
  expectDigits(got.frames.value, 1.00211681802045, 12);
  expectDigits(got.fixedMs.standardUncertainty, 0.232818234301152, 12);
  expectDigits(got.frames.standardUncertainty, 0.000429796848199937, 12);
  expectDigits(got.consistency?.chiSquare, 34, 12);
});

it('seven to eight frames at 24, 30 and 60 frames/s, about 300, 250 and 120 ms (common practice, no source)', () => {
  const got = law([point(1000 / 24, 300, 5), point(1000 / 30, 250, 5), point(1000 / 60, 120, 5)]);
  expect(got.frames.value).toBeGreaterThan(7);
  expect(got.frames.value).toBeLessThan(8);
  expect(got.fixedMs.interval.low).toBeLessThan(0);
  expect(got.fixedMs.interval.high).toBeGreaterThan(0);
});

it('scatter that the uncertainties do not explain widens everything, on the residual degrees of freedom', () => {
  // exact line 10 + 2x, with ±6 about it: χ² 4·36 on 3 degrees of freedom where u is 1 and one point lies on the line
  const points = [point(10, 36, 1), point(10, 24, 1), point(30, 76, 1), point(30, 64, 1), point(20, 50, 1)];
  const got = law(points);
  expectDigits(got.consistency?.chiSquare, 144, 12);
  expectDigits(got.frames.standardUncertainty, Math.sqrt(48) / 20, 12); // u = 1/√Σ(x − 20)² = 1/20, ratio √48
  // t of 0.975 on 3 degrees of freedom, 3.18244630528371
  expectDigits((got.frames.interval.high - 2) / got.frames.standardUncertainty, 3.18244630528371, 11);
  expectDigits(got.lackOfFit?.chiSquare, 0, 12);
});

it.each([
  ['no-sessions', []],
  ['one-rate', [point(20, 100, 1)]],
  ['one-rate', [point(20, 100, 1), point(20, 104, 1)]],
  ['no-uncertainty', [point(20, 100, 0), point(40, 104, 1)]],
])('says why there is no law: %s', (reason, points) => {
  expect(estimateRateLaw(points)).toEqual({ kind: 'not-estimable', reason });
});

it('two rates give a law, and nothing to test its straightness by', () => {
  const got = law([point(20, 100, 1), point(40, 180, 1)]);
  expectDigits(got.frames.value, 4, 13);
  expectDigits(got.fixedMs.value, 20, 13);
  expect(got.consistency).toBeUndefined();
  expect(got.lackOfFit).toBeUndefined();
});

it('24 and 23.976 frames/s are two rates', () =>
  expect(law([point(1000 / 24, 100, 1), point(1001 / 24, 101, 1)]).rates).toBe(2));

it.each([
  [0, 1],
  [-3, 1],
  [20, Number.NaN],
])('refuses an interval of %d ms with a total of %d', (interval, total) => {
  expect(() => estimateRateLaw([point(interval, total, 1), point(40, 1, 1)])).toThrow(
    'a rate law needs finite totals at intervals above 0',
  );
});

it('95 % intervals hold the truth in 93 to 97 % of 2,000 simulated laws (four standard deviations of the share: 2 %)', () => {
  const laws = 2000;
  const noise = normalNoise(seededRandom(20260411));
  const intervals = [1001 / 24, 1001 / 24, 1001 / 30, 1001 / 60, 1001 / 120];
  const us = [4, 5, 3, 2, 1.5];
  let fixed = 0;
  let frames = 0;
  let band = 0;
  for (let i = 0; i < laws; i += 1) {
    const got = law(
      intervals.map((interval, k) => point(interval, 20 + 6.5 * interval + (us[k] ?? 0) * noise(), us[k] ?? 0)),
    );
    if (got.fixedMs.interval.low <= 20 && got.fixedMs.interval.high >= 20) fixed += 1;
    if (got.frames.interval.low <= 6.5 && got.frames.interval.high >= 6.5) frames += 1;
    const at = intervalAt(predictRateLaw(got, 20), 0.95);
    if (at.low <= 150 && at.high >= 150) band += 1;
  }
  expect(shareTolerance(0.95, laws)).toBeLessThan(0.02);
  for (const hits of [fixed, frames, band]) {
    expect(hits / laws).toBeGreaterThan(0.93);
    expect(hits / laws).toBeLessThan(0.97);
  }
});
