import { tUpperTail } from './distributions.ts';
import { tInterval, type Interval } from './interval.ts';

export interface Equivalence {
  readonly margin: number;
  readonly tLower: number;
  readonly tUpper: number;
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
 * Are two things the same within ± margin? Two one-sided t tests (TOST) of a difference with its uncertainty.
 *
 * Equivalence is shown where both "the difference is −margin or less" and "it is +margin or more" are rejected at
 * alpha, so it is declared falsely at most with probability alpha. Not shown does not mean different.
 *
 * Domain: standard uncertainty and margin above 0. Source: D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987), 657
 * (from memory); checked against pairs of one-sided t.test in R.
 */
export function testEquivalence(
  difference: { readonly value: number; readonly standardUncertainty: number; readonly degreesOfFreedom: number },
  margin: number,
  alpha = 0.05,
): Equivalence {
  const { value, standardUncertainty, degreesOfFreedom } = difference;
  if (!(margin > 0 && Number.isFinite(margin))) throw new RangeError(`a margin is above 0, not ${margin}`);
  if (!(standardUncertainty > 0)) throw new RangeError(`equivalence needs an uncertainty above 0, not ${standardUncertainty}`);
  const tLower = (value + margin) / standardUncertainty;
  const tUpper = (value - margin) / standardUncertainty;
  const pLower = tUpperTail(tLower, degreesOfFreedom);
  const pUpper = tUpperTail(-tUpper, degreesOfFreedom);
  const p = Math.max(pLower, pUpper);
  const interval = tInterval(value, standardUncertainty, degreesOfFreedom, 1 - 2 * alpha);
  return {
    margin,
    tLower,
    tUpper,
    pLower,
    pUpper,
    p,
    equivalent: p <= alpha,
    interval,
    smallestMargin: Math.max(Math.abs(interval.low), Math.abs(interval.high)),
  };
}
