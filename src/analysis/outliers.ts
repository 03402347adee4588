import { tQuantile } from './distributions.ts';
import { medianOf, summarize } from './summary.ts';

export interface GrubbsTest {
  /** Position in the list of the value farthest from the mean. */
  readonly index: number;
  /** |x − mean|/s of that value. */
  readonly g: number;
  readonly criticalValue: number;
  /** g above the critical value. */
  readonly flagged: boolean;
}

/**
 * Grubbs' test for one outlier on either side.
 *
 * G = max|x − mean|/s, held against (n−1)/√n · √(t²/(n − 2 + t²)), t at α/(2n) on n − 2 degrees of freedom.
 * Domain: three or more values that are not all equal, otherwise undefined. It assumes that the rest are normal,
 * and is for flagging: nothing is ever removed on its account.
 * Source: NIST/SEMATECH e-Handbook, 1.3.5.17.1.
 *
 * `testGrubbs([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57])` flags index 7 with G 2.4688.
 */
export function testGrubbs(values: readonly number[], alpha = 0.05): GrubbsTest | undefined {
  const { n, mean, standardDeviation } = summarize(values);
  if (n < 3 || standardDeviation === undefined || standardDeviation === 0) return undefined;
  let index = 0;
  values.forEach((value, i) => {
    if (Math.abs(value - mean) > Math.abs((values[index] ?? mean) - mean)) index = i;
  });
  const g = Math.abs((values[index] ?? mean) - mean) / standardDeviation;
  const criticalValue = grubbsCriticalValue(n, alpha / (2 * n));
  return { index, g, criticalValue, flagged: g > criticalValue };
}

/** (n−1)/√n · √(t²/(n − 2 + t²)), with t the upper `tail` point on n − 2 degrees of freedom. */
export function grubbsCriticalValue(n: number, tail: number): number {
  if (!Number.isInteger(n) || n < 3) throw new RangeError(`Grubbs' test needs three or more values, not ${n}`);
  const squared = tQuantile(1 - tail, n - 2) ** 2;
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt(squared / (n - 2 + squared));
}

/** |M| beyond which a value is a potential outlier (Iglewicz and Hoaglin, in e-Handbook 1.3.5.17). */
export const MODIFIED_Z_LIMIT = 3.5;

/**
 * Modified z-scores M = 0.6745(x − median)/MAD, MAD the median absolute deviation; |M| > 3.5 is a potential outlier.
 * undefined where MAD is 0: more than half of the values are equal, and the score says nothing.
 * Source: NIST/SEMATECH e-Handbook, 1.3.5.17 (Iglewicz and Hoaglin).
 */
export function modifiedZScores(values: readonly number[]): readonly number[] | undefined {
  const median = medianOf(values);
  const mad = medianOf(values.map((x) => Math.abs(x - median)));
  if (mad === 0) return undefined;
  return values.map((x) => (0.6745 * (x - median)) / mad);
}
