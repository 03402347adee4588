import { intervalAt, probabilityOfErrorAbove, probabilityOfErrorBelow, type UncertainValue } from './error-tail.ts';
import type { Interval } from './interval.ts';

export interface Equivalence {
  readonly margin: number;
  /** p of the test that the difference lies above −margin. */
  readonly pLower: number;
  /** p of the test that the difference lies below +margin. */
  readonly pUpper: number;
  /** The larger of the two: at most alpha where equivalence is shown. */
  readonly p: number;
  readonly equivalent: boolean;
  /** At level 1 − 2·alpha: inside ±margin exactly where equivalence is shown. */
  readonly interval: Interval;
  /** The smallest margin at which these data would show equivalence. */
  readonly smallestMargin: number;
}

/**
 * Are two things the same within ± margin? Two one-sided tests (TOST) of a difference by the
 * distribution of its error.
 *
 * Equivalence is shown where both "the difference is −margin or less" and "it is +margin or more" are rejected at
 * alpha, so it is declared falsely at most with probability alpha. Not shown does not mean different.
 *
 * Domain: standard uncertainty and margin above 0. Source: D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987), 657
 * (from memory); checked against pairs of one-sided t.test in R.
 */
export function testEquivalence(difference: UncertainValue, margin: number, alpha = 0.05): Equivalence {
  const { value, standardUncertainty } = difference;
  if (!(margin > 0 && Number.isFinite(margin))) throw new RangeError(`a margin is above 0, not ${margin}`);
  if (!(standardUncertainty > 0))
    throw new RangeError(`equivalence needs an uncertainty above 0, not ${standardUncertainty}`);
  const pLower = probabilityOfErrorAbove(difference, value + margin);
  const pUpper = probabilityOfErrorBelow(difference, value - margin);
  const p = Math.max(pLower, pUpper);
  const interval = intervalAt(difference, 1 - 2 * alpha);
  return {
    margin,
    pLower,
    pUpper,
    p,
    equivalent: p <= alpha,
    interval,
    smallestMargin: Math.max(Math.abs(interval.low), Math.abs(interval.high)),
  };
}
