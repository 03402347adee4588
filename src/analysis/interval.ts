import { coverageFactor } from './distributions.ts';

/** A two-sided interval that is claimed to hold the true value with probability `level`. */
export interface Interval {
  readonly low: number;
  readonly high: number;
  readonly level: number;
}

export const DEFAULT_LEVEL = 0.95;

/**
 * The t interval: value ± t·u, with P(|T| ≤ t) = level on the given degrees of freedom (Infinity: normal).
 * JCGM 100:2008, G.3.2. `tInterval(10, 1, 9)` is 7.738 to 12.262.
 */
export function tInterval(
  value: number,
  standardUncertainty: number,
  degreesOfFreedom: number,
  level = DEFAULT_LEVEL,
): Interval {
  if (!Number.isFinite(value) || !Number.isFinite(standardUncertainty) || standardUncertainty < 0) {
    throw new RangeError(
      `an interval needs a finite value and a finite uncertainty of at least 0, not ${value} and ${standardUncertainty}`,
    );
  }
  const half = coverageFactor(level, degreesOfFreedom) * standardUncertainty;
  return { low: value - half, high: value + half, level };
}
