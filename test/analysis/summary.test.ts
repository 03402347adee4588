import { describe, expect, it } from 'vitest';
import { medianOf, summarize } from '../../src/analysis/summary.ts';
import { LEW, MAVRO, MICHELSO, NUM_ACC_1, NUM_ACC_2, NUM_ACC_3, NUM_ACC_4 } from '../support/nist-strd.ts';
import { expectDigits } from '../support/log-relative-error.ts';

/** Certified by NIST/ITL StRD, univariate summary statistics, to 15 digits; `digits` are those binary64 data allow. */
const CERTIFIED = [
  {
    set: 'Michelso',
    data: MICHELSO,
    n: 100,
    mean: 299.8524,
    sd: 0.0790105478190518,
    lag1: 0.535199668621283,
    digits: [15, 13, 13],
  },
  {
    set: 'Mavro',
    data: MAVRO,
    n: 50,
    mean: 2.001856,
    sd: 0.000429123454003053,
    lag1: 0.937989183438248,
    digits: [15, 12, 12],
  },
  {
    set: 'Lew',
    data: LEW,
    n: 200,
    mean: -177.435,
    sd: 277.332168044316,
    lag1: -0.307304800605679,
    digits: [15, 14, 14],
  },
  { set: 'NumAcc1', data: NUM_ACC_1, n: 3, mean: 10000002, sd: 1, lag1: -0.5, digits: [15, 15, 15] },
  { set: 'NumAcc2', data: NUM_ACC_2, n: 1001, mean: 1.2, sd: 0.1, lag1: -0.999, digits: [15, 13, 13] },
  { set: 'NumAcc3', data: NUM_ACC_3, n: 1001, mean: 1000000.2, sd: 0.1, lag1: -0.999, digits: [15, 9, 9] },
  { set: 'NumAcc4', data: NUM_ACC_4, n: 1001, mean: 10000000.2, sd: 0.1, lag1: -0.999, digits: [15, 8, 8] },
];

it.each(CERTIFIED)(
  'NIST StRD $set: mean, standard deviation and lag-1 autocorrelation',
  ({ data, n, mean, sd, lag1, digits }) => {
    const got = summarize(data);
    expect(got.n).toBe(n);
    expectDigits(got.mean, mean, digits[0] ?? 15, 'mean');
    expectDigits(got.standardDeviation, sd, digits[1] ?? 15, 'standard deviation');
    expectDigits(got.lag1Autocorrelation, lag1, digits[2] ?? 15, 'lag-1 autocorrelation');
    expectDigits(got.standardError, sd / Math.sqrt(n), digits[1] ?? 15, 'standard error');
  },
);

/** Exact rational arithmetic on the binary64 values of the data, rounded once: what a perfect algorithm gives. */
const EXACT_ON_BINARY64 = [
  { set: 'NumAcc2', data: NUM_ACC_2, mean: 1.2, sd: 0.0999999999999999778, lag1: -0.998999999999999999 },
  { set: 'NumAcc3', data: NUM_ACC_3, mean: 1000000.2, sd: 0.1000000000349246, lag1: -0.99899999999942 },
  { set: 'NumAcc4', data: NUM_ACC_4, mean: 10000000.2, sd: 0.10000000055879354, lag1: -0.9989999999907 },
];

it.each(EXACT_ON_BINARY64)(
  '$set agrees with exact arithmetic on the same binary64 values',
  ({ data, mean, sd, lag1 }) => {
    const got = summarize(data);
    expectDigits(got.mean, mean, 15, 'mean');
    expectDigits(got.standardDeviation, sd, 14, 'standard deviation');
    expectDigits(got.lag1Autocorrelation, lag1, 13, 'lag-1 autocorrelation');
  },
);

describe('median (R type 7: the midpoint of the two middle values)', () => {
  it.each([
    [[5], 5],
    [[3, 1], 2],
    [[3, 1, 2], 2],
    [[4, 1, 3, 2], 2.5],
    // NIST/SEMATECH e-Handbook 1.3.5.17, eight mass-spectrometer readings: 201.37
    [[199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57], 201.37],
  ])('of %j is %d', (values, expected) => {
    expectDigits(medianOf(values), expected, 15);
    expectDigits(summarize(values).median, expected, 15);
  });
});

it('minimum, maximum and range follow by arithmetic', () => {
  expect(summarize([4, -1, 2.5])).toMatchObject({ minimum: -1, maximum: 4, range: 5 });
});

it('one number has a mean and no standard deviation', () => {
  expect(summarize([7.25])).toEqual({
    n: 1,
    mean: 7.25,
    standardDeviation: undefined,
    standardError: undefined,
    median: 7.25,
    minimum: 7.25,
    maximum: 7.25,
    range: 0,
    lag1Autocorrelation: undefined,
  });
});

it('equal numbers have no scatter at all, whatever their binary64 rounding', () => {
  expect(summarize([0.1, 0.1, 0.1])).toMatchObject({ mean: 0.1, standardDeviation: 0, lag1Autocorrelation: undefined });
});

it('leaves its input as it was', () => {
  const values = [3, 1, 2];
  summarize(values);
  expect(values).toEqual([3, 1, 2]);
});

it.each([[[]], [[1, Number.NaN]], [[Infinity]], [[1, 2, -Infinity]]])('refuses %j', (values: number[]) => {
  expect(() => summarize(values)).toThrow(RangeError);
  expect(() => medianOf(values)).toThrow(RangeError);
});

it('names the number that is not finite', () => {
  expect(() => summarize([1, Number.NaN, 3])).toThrow('number 2 of 3 is not finite: NaN');
});
