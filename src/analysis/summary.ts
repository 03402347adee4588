import { fsum } from 'd3-array';

/** What a list of numbers looks like. Every field is in the unit of the numbers, except n and the autocorrelation. */
export interface Summary {
  readonly n: number;
  readonly mean: number;
  /** √(Σ(x − mean)²/(n − 1)); undefined for one number. */
  readonly standardDeviation: number | undefined;
  /** standardDeviation/√n, which is the mean's uncertainty only where the numbers are independent. */
  readonly standardError: number | undefined;
  readonly median: number;
  readonly minimum: number;
  readonly maximum: number;
  readonly range: number;
  /** Σ(x[i] − mean)(x[i−1] − mean)/Σ(x[i] − mean)², from −1 to 1; undefined where all numbers are equal. */
  readonly lag1Autocorrelation: number | undefined;
}

/**
 * Mean, spread and serial correlation of a list of finite numbers, in their order.
 *
 * Sums are exact (Shewchuk) and rounded once; squares come from the corrected two-pass formula. The median is the
 * midpoint of the two middle values where n is even (R type 7). The autocorrelation is NIST's: n − 1 products over
 * the full sum of squares.
 *
 * Accuracy: 13 digits on NIST StRD Michelso; on NumAcc3 and NumAcc4, what binary64 leaves of the data.
 * Source: NIST/ITL Statistical Reference Datasets, univariate summary statistics.
 * Throws a RangeError for an empty list and for a number that is not finite.
 *
 * `summarize([1, 3, 2])` has mean 2, standardDeviation 1 and lag1Autocorrelation −0.5.
 */
export function summarize(values: readonly number[]): Summary {
  const mean = meanOf(values);
  const n = values.length;
  const deviations = deviationsFrom(values, mean);
  const squares = fsum(deviations.map((d) => d * d));
  const products = fsum(deviations.map((d, i) => (i === 0 ? 0 : d * (deviations[i - 1] ?? 0))));
  const standardDeviation = n > 1 ? Math.sqrt(squares / (n - 1)) : undefined;
  const sorted = [...values].sort((a, b) => a - b);
  const minimum = sorted[0] ?? mean;
  const maximum = sorted[n - 1] ?? mean;
  return {
    n,
    mean,
    standardDeviation,
    standardError: standardDeviation === undefined ? undefined : standardDeviation / Math.sqrt(n),
    median: middleOf(sorted),
    minimum,
    maximum,
    range: maximum - minimum,
    lag1Autocorrelation: squares > 0 ? products / squares : undefined,
  };
}

/** Arithmetic mean with an exact sum, never outside the range of the values. Throws a RangeError as `summarize` does. */
export function meanOf(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('a summary needs at least one number');
  let minimum = Infinity;
  let maximum = -Infinity;
  values.forEach((value, i) => {
    if (!Number.isFinite(value)) throw new RangeError(`number ${i + 1} of ${values.length} is not finite: ${value}`);
    minimum = Math.min(minimum, value);
    maximum = Math.max(maximum, value);
  });
  return Math.min(maximum, Math.max(minimum, fsum(values) / values.length));
}

/** Σ(x − mean)², corrected for the rounding of the mean. */
export function sumOfSquaresAbout(values: readonly number[], mean: number): number {
  return fsum(deviationsFrom(values, mean).map((d) => d * d));
}

/** The median of numbers in any order: R type 7, the midpoint of the two middle values where n is even. */
export function medianOf(values: readonly number[]): number {
  meanOf(values);
  return middleOf([...values].sort((a, b) => a - b));
}

function deviationsFrom(values: readonly number[], mean: number): number[] {
  const first = values.map((x) => x - mean);
  const residue = fsum(first) / first.length;
  return first.map((d) => d - residue);
}

function middleOf(sorted: readonly number[]): number {
  const half = sorted.length / 2;
  const low = sorted[Math.ceil(half) - 1] ?? 0;
  const high = sorted[Math.floor(half)] ?? low;
  return low + (high - low) / 2;
}
