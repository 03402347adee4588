import { expect, it } from 'vitest';
import { estimateClassicalInterval } from './classical-interval.ts';
import { tInterval } from '../../src/analysis/interval.ts';
import { expectDigits } from './log-relative-error.ts';
import { MORLEY } from './nist-strd.ts';

/** R 4.2.2, t.test of each group of datasets::sleep. */
const SLEEP = [
  { group: 1, values: [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2], low: -0.529780413526, high: 2.02978041353 },
  { group: 2, values: [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4], low: 0.897677539377, high: 3.76232246062 },
];

it.each(SLEEP)('one run: sleep, group $group', ({ values, low, high }) => {
  const got = estimateClassicalInterval([values]);
  expect(got).toMatchObject({ kind: 'estimate', unit: 'readings', degreesOfFreedom: 9 });
  if (got.kind !== 'estimate') return;
  expectDigits(got.interval.low, low, 11);
  expectDigits(got.interval.high, high, 11);
});

it('readings taken as independent: morley as one run of 100 (R 4.2.2)', () => {
  const got = estimateClassicalInterval([MORLEY.flat()]);
  expect(got).toMatchObject({ kind: 'estimate', degreesOfFreedom: 99 });
  if (got.kind !== 'estimate') return;
  expectDigits(got.standardUncertainty, 7.90105478191, 11);
  expectDigits(got.interval.low, 836.722593166, 11);
  expectDigits(got.interval.high, 868.077406834, 11);
});

it('runs as the unit: morley as five runs of twenty (R 4.2.2)', () => {
  const got = estimateClassicalInterval(MORLEY);
  expect(got).toMatchObject({ kind: 'estimate', unit: 'runs', mean: 852.4, degreesOfFreedom: 4 });
  if (got.kind !== 'estimate') return;
  expectDigits(got.standardUncertainty, 15.3715646569, 11);
  expectDigits(got.interval.low, 809.721694549, 11);
  expectDigits(got.interval.high, 895.078305451, 11);
});

it('JCGM 100:2008, H.5 from the daily means: 97.1 ± 40.839369 µV on 9 degrees of freedom (R 4.2.2)', () => {
  const got = estimateClassicalInterval([172, 116, 13, 144, 106, 31, 60, 125, 163, 41].map((mean) => [mean]));
  if (got.kind !== 'estimate') throw new Error(got.reason);
  expectDigits(got.interval.high - got.mean, 40.839369, 7);
});

it('NIST/SEMATECH e-Handbook 1.3.5.2 (ZARR13): limits 9.258242 and 9.264679 from the printed mean and deviation', () => {
  const got = tInterval(9.26146, 0.022789 / Math.sqrt(195), 194);
  // one unit of the sixth decimal: the printed deviation is rounded
  expect(Math.abs(got.low - 9.258242)).toBeLessThan(1.5e-6);
  expect(Math.abs(got.high - 9.264679)).toBeLessThan(1.5e-6);
});

it('one reading has a mean and a reason', () => {
  expect(estimateClassicalInterval([[4]])).toEqual({ kind: 'mean-only', mean: 4, reason: 'one-reading' });
});

it('readings that are all equal claim no certainty', () => {
  expect(estimateClassicalInterval([[4, 4, 4]])).toEqual({ kind: 'mean-only', mean: 4, reason: 'no-scatter' });
});

it.each([[[]], [[[]]], [[[1], []]], [[[1, Infinity]]]])('refuses %j', (runs: number[][]) => {
  expect(() => estimateClassicalInterval(runs)).toThrow(RangeError);
});

it.each([
  [Number.NaN, 1],
  [1, -1],
  [1, Infinity],
])('an interval of %d with uncertainty %d is refused', (value, u) => {
  expect(() => tInterval(value, u, 9)).toThrow('an interval needs a finite value');
});
