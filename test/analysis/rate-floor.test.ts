import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/analysis/random.ts';
import { findRateFloor } from '../../src/analysis/rate-floor.ts';
import type { RatePoint } from '../../src/analysis/rate-law.ts';
import { normalError } from '../support/budgeted.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { readReference } from '../support/r-reference.ts';
import { normalNoise, shareTolerance } from '../support/normal-noise.ts';

const INTERVALS = [1000 / 24, 1000 / 30, 1000 / 60, 1000 / 120];
const point = (intervalMs: number, totalMs: number, standardUncertainty = 1): RatePoint => ({
  intervalMs,
  totalMs,
  standardUncertainty,
  error: normalError(standardUncertainty),
});

describe('a body whose latency stays where it is from 60 frames/s up', () => {
  // 20 + 7·interval down to 60 frames/s, and that total (136.67 ms) above it: the truth is known
  const truth = INTERVALS.map((interval) => point(interval, 20 + 7 * Math.max(interval, 1000 / 60)));
  const got = findRateFloor(truth);

  it('has a floor', () => {
    if (got.kind !== 'floor') throw new Error(got.kind);
    expectDigits(got.floorMs, 20 + 7000 / 60, 10);
    expectDigits(got.breakIntervalMs, 1000 / 60, 10);
    expect(got.p).toBeLessThan(1e-6);
    expect(got.breakSet.kind).toBe('bounded');
    if (got.breakSet.kind !== 'bounded') return;
    expect(got.breakSet.low).toBeLessThan(1000 / 60);
    expect(got.breakSet.high).toBeGreaterThan(1000 / 60);
  });

  it('is enough at the slowest rate on the floor', () => {
    const three = [25, 20, 15, 10, 5].map((interval) => point(interval, 20 + 7 * Math.max(interval, 17)));
    expect(findRateFloor(three)).toMatchObject({ kind: 'floor', ratesAtFloor: 3, enoughIntervalMs: 15 });
  });
});

it('a straight law shows no floor, and neither does one that falls faster at the fast end', () => {
  expect(findRateFloor(INTERVALS.map((interval) => point(interval, 20 + 7 * interval)))).toMatchObject({
    kind: 'no-floor-seen',
    p: expect.closeTo(1, 6),
  });
  expect(findRateFloor([...INTERVALS.slice(0, 3).map((x) => point(x, 7 * x)), point(1000 / 120, 20)]).kind).toBe(
    'no-floor-seen',
  );
});

describe('R: contrasts, Holm and polyroot (test/reference/known-variance.R)', () => {
  const r = readReference('known-variance');
  const points = (totals: readonly number[]): RatePoint[] =>
    r('law.interval').map((x, i) => point(x, totals[i] ?? 0, r('law.u')[i]));

  it('floor, break and its set, of the k that fits better', () => {
    const got = findRateFloor(points(r('floor.total')));
    if (got.kind !== 'floor') throw new Error(got.kind);
    const best = (r('floor.1')[5] ?? 0) < (r('floor.2')[5] ?? 0) ? 1 : 2;
    const [level = 0, u = 0, breakMs = 0, low = 0, high = 0, chiSquare = 0] = r(`floor.${best}`);
    expect(got.ratesAtFloor).toBe(best);
    expectDigits(got.floorMs, level, 12);
    expectDigits(got.floorStandardUncertainty, u, 12);
    expectDigits(got.floorInterval.high, level + 1.95996398454005 * u, 12);
    expectDigits(got.breakIntervalMs, breakMs, 11);
    if (got.breakSet.kind !== 'bounded') throw new Error(got.breakSet.kind);
    expectDigits(got.breakSet.low, low, 7);
    expectDigits(got.breakSet.high, high, 7);
    expectDigits(got.consistency?.chiSquare, chiSquare, 11);
    expectDigits(got.p, r('floor.holm')[best - 1] ?? 0, 9);
  });

  it('a law without a floor: the smaller adjusted p', () => {
    const got = findRateFloor(points(r('law.total')));
    if (got.kind !== 'no-floor-seen') throw new Error(got.kind);
    expectDigits(got.p, Math.min(...r('straight.holm')), 10);
  });
});

it('a departure that is no floor is called by another name', () => {
  // three slow rates on a line, two fast ones far above it and 20 ms apart with uncertainties of 1
  const points = [point(40, 300), point(30, 230), point(20, 160), point(10, 200), point(5, 180)];
  expect(findRateFloor(points).kind).toBe('other-shape');
});

it.each([
  ['the slow rates do not differ', [100, 100, 180]],
  ['the slow rates rise as they get faster', [100, 110, 180]],
  ['the fast rate is slower than every slow one', [110, 100, 180]],
])('a body that is slower at its fast rate has no floor: %s', (_, [a = 0, b = 0, c = 0]) => {
  expect(findRateFloor([point(40, a), point(30, b), point(10, c)]).kind).toBe('other-shape');
});

it('two rates cannot tell, and uncertainties are needed', () => {
  expect(findRateFloor([point(40, 300), point(20, 160), point(20, 161)])).toEqual({
    kind: 'not-estimable',
    reason: 'too-few-rates',
  });
  expect(findRateFloor([point(40, 300, 0)])).toEqual({ kind: 'not-estimable', reason: 'no-uncertainty' });
});

it('claims a floor falsely in at most 5 % of 4,000 straight laws (within four standard deviations of the share)', () => {
  const laws = 4000;
  const noise = normalNoise(seededRandom(7));
  let claimed = 0;
  for (let i = 0; i < laws; i += 1) {
    if (
      findRateFloor(INTERVALS.map((interval) => point(interval, 20 + 7 * interval + 3 * noise(), 3))).kind === 'floor'
    )
      claimed += 1;
  }
  expect(claimed / laws).toBeLessThan(0.05 + shareTolerance(0.05, laws));
  expect(claimed).toBeGreaterThan(0);
});
