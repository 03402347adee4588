import { coverageFactor, tUpperTail } from './distributions.ts';
import { tInterval, type Interval } from './interval.ts';

/** A value with what is known of its error. */
export interface UncertainValue {
  readonly value: number;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  /**
   * P(error ≥ x), falling from 1 to 0, where the error's distribution is known better than by Student's t: from a
   * convolution or a simulation (JCGM 101). Absent: t on the degrees of freedom, scaled by the standard uncertainty.
   */
  readonly errorTail?: (x: number) => number;
}

/** P(error ≥ x): the one-sided p of a true value of `value − x` or less. */
export function probabilityOfErrorAbove(
  { standardUncertainty, degreesOfFreedom, errorTail }: UncertainValue,
  x: number,
): number {
  return errorTail ? errorTail(x) : tUpperTail(x / standardUncertainty, degreesOfFreedom);
}

/** P(error ≤ x). */
export function probabilityOfErrorBelow(
  { standardUncertainty, degreesOfFreedom, errorTail }: UncertainValue,
  x: number,
): number {
  return errorTail ? 1 - errorTail(x) : tUpperTail(-x / standardUncertainty, degreesOfFreedom);
}

/** Two-sided p of a true value of 0: twice the smaller tail, at most 1. */
export function probabilityOfZero(value: UncertainValue): number {
  return Math.min(
    1,
    2 * Math.min(probabilityOfErrorAbove(value, value.value), probabilityOfErrorBelow(value, value.value)),
  );
}

/** The interval with equal tails at a level: values whose one-sided p is above (1 − level)/2 on both sides. */
export function intervalAt(value: UncertainValue, level: number): Interval {
  const { errorTail, standardUncertainty, degreesOfFreedom } = value;
  if (!errorTail) return tInterval(value.value, standardUncertainty, degreesOfFreedom, level);
  const tail = (1 - level) / 2;
  // a scale that is surely wide enough: the t interval's own half-width, doubled until both tails lie inside
  let reach = coverageFactor(level, degreesOfFreedom) * standardUncertainty;
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
  return { low: value.value - crossing(tail), high: value.value - crossing(1 - tail), level };
}
