import { expect, it } from 'vitest';
import { grubbsCriticalValue, MODIFIED_Z_LIMIT, modifiedZScores, testGrubbs } from '../../src/analysis/outliers.ts';
import { expectDigits } from '../support/log-relative-error.ts';

/** NIST/SEMATECH e-Handbook 1.3.5.17: eight mass-spectrometer readings of a uranium isotope (Tietjen and Moore 1972). */
const URANIUM = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];

it('flags the eighth uranium reading (handbook: G 2.4687 by truncation; R 4.2.2: 2.46876461121)', () => {
  const got = testGrubbs(URANIUM);
  expect(got).toMatchObject({ index: 7, flagged: true });
  expectDigits(got?.g, 2.46876461121, 11);
  expectDigits(got?.criticalValue, 2.126645087, 9);
});

it('finds an outlier below as it finds one above', () => {
  expect(testGrubbs(URANIUM.map((x) => -x))).toMatchObject({ index: 7, flagged: true });
});

it('flags nothing among the other seven', () => {
  expect(testGrubbs(URANIUM.slice(0, 7))?.flagged).toBe(false);
});

/** R 4.2.2 from G = (N−1)/√N · √(t²/(N−2+t²)) at α 0.05; the handbook prints 2.032 for N = 8, one-sided. */
const CRITICAL = [
  [3, 1.153118, 1.154305],
  [4, 1.4625, 1.48125],
  [5, 1.671386, 1.715037],
  [8, 2.031652, 2.126645],
  [10, 2.176068, 2.289954],
  [20, 2.556581, 2.708246],
  [30, 2.745132, 2.908473],
  [100, 3.20952, 3.384083],
] as const;

it.each(CRITICAL)('critical values for %d values are %d one-sided and %d two-sided', (n, oneSided, twoSided) => {
  expect(grubbsCriticalValue(n, 0.05 / n).toFixed(6)).toBe(oneSided.toFixed(6));
  expect(grubbsCriticalValue(n, 0.05 / (2 * n)).toFixed(6)).toBe(twoSided.toFixed(6));
});

it('modified z-scores of the uranium readings (R 4.2.2) pass the limit once', () => {
  const expected = [-1.396452, -1.247317, -0.79991, -0.372839, 0.372839, 0.393176, 0.54909, 29.962714];
  const got = modifiedZScores(URANIUM) ?? [];
  expect(got.map((m) => m.toFixed(6))).toEqual(expected.map((m) => m.toFixed(6)));
  expect(got.filter((m) => Math.abs(m) > MODIFIED_Z_LIMIT)).toHaveLength(1);
});

it('says nothing where there is nothing to judge by', () => {
  expect(testGrubbs([1, 2])).toBeUndefined();
  expect(testGrubbs([4, 4, 4])).toBeUndefined();
  expect(modifiedZScores([4, 4, 4, 9])).toBeUndefined();
});

it.each([2, 2.5, Number.NaN])('a critical value for %d values is refused', (n) => {
  expect(() => grubbsCriticalValue(n, 0.01)).toThrow("Grubbs' test needs three or more values");
});
