import { normalQuantile } from './distributions.ts';
import type { Interval } from './interval.ts';

/** A value with what is known of its error. */
export interface UncertainValue {
  readonly value: number;
  readonly standardUncertainty: number;
  /** P(value − truth ≥ x), falling from 1 to 0: from a convolution or another propagation of distributions (JCGM 101). */
  readonly errorTail: (x: number) => number;
  /** Known to be a normal distribution. */
  readonly normal?: boolean;
}

/** P(error ≥ x): the one-sided p of a true value of `value − x` or less. */
export function probabilityOfErrorAbove({ errorTail }: UncertainValue, x: number): number {
  return errorTail(x);
}

/** P(error ≤ x). */
export function probabilityOfErrorBelow({ errorTail }: UncertainValue, x: number): number {
  return 1 - errorTail(x);
}

/** Two-sided p of a true value of 0: twice the smaller tail, at most 1. */
export function probabilityOfZero(value: UncertainValue): number {
  return Math.min(
    1,
    2 * Math.min(probabilityOfErrorAbove(value, value.value), probabilityOfErrorBelow(value, value.value)),
  );
}

/**
 * The interval with equal tails at a level: values whose one-sided p is above (1 − level)/2 on both sides. One of no width
 * where the uncertainty is 0.
 */
export function intervalAt({ value, errorTail, standardUncertainty, normal }: UncertainValue, level: number): Interval {
  if (!Number.isFinite(value) || !(standardUncertainty >= 0 && Number.isFinite(standardUncertainty)))
    throw new RangeError(
      `an interval needs a finite value and a finite uncertainty of at least 0, not ${value} and ${standardUncertainty}`,
    );
  if (standardUncertainty === 0) return { low: value, high: value, level };
  const tail = (1 - level) / 2;
  if (normal) {
    const half = -normalQuantile(tail) * standardUncertainty;
    return { low: value - half, high: value + half, level };
  }
  let reach = 2 * standardUncertainty;
  while (errorTail(reach) > tail || 1 - errorTail(-reach) > tail) reach *= 2;
  const crossing = (p: number): number => {
    let [low, high] = [-reach, reach];
    for (let i = 0; i < 60; i += 1) {
      const middle = (low + high) / 2;
      if (errorTail(middle) > p) low = middle;
      else high = middle;
    }
    return high;
  };
  return { low: value - crossing(tail), high: value - crossing(1 - tail), level };
}
