import { intervalAt, probabilityOfZero, type UncertainValue } from './error-tail.ts';
import type { Interval } from './interval.ts';

/** A difference a − b of two latencies in ms, whatever it was computed from: above 0 where a is the slower. */
export interface DifferenceResult extends UncertainValue {
  readonly kind: 'difference';
  readonly interval: Interval;
  /** Two-sided p of a true difference of 0; at most 1 − level exactly where the interval excludes 0. */
  readonly p: number;
}

export interface NoDifference {
  readonly kind: 'not-estimable';
  readonly value: number;
  /** `no-budget`: one of the two has no stated uncertainty. `no-scatter`: nothing is left to judge the difference by. */
  readonly reason: 'no-budget' | 'no-scatter';
}

/** Completes a difference that is known with its uncertainty: interval and p from its error's distribution. */
export function differenceOf(difference: UncertainValue, level: number): DifferenceResult {
  return {
    ...difference,
    kind: 'difference',
    interval: intervalAt(difference, level),
    p: probabilityOfZero(difference),
  };
}
