/**
 * The difference of two sessions' totals: what they share on one rig cancels, the rest is convolved.
 *
 * Components whose key both have in common (the same rig, the same instrument) have the same error in both
 * totals (JCGM 100, 5.2.2 with r = 1 and equal sizes) and drop out.
 */
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { combineBudget, type BudgetComponent } from './budget.ts';
import { addIndependent, fromCdf, halfWidthAbout, negated, rectangular, resampled, type Distribution } from './distribution.ts';
import type { Estimate, } from './estimate.ts';

export interface Shared {
  /** Both sessions were taken on one rig. */
  readonly rig: boolean;
  /** Both were taken with one instrument. */
  readonly instrument: boolean;
}

export interface Difference {
  /** a − b, in ms. */
  readonly value: number;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  readonly interval: { readonly low: number; readonly high: number; readonly level: number };
  readonly coverageFactor: number;
  readonly expandedUncertainty: number;
  /** What is left of both budgets. */
  readonly components: readonly BudgetComponent[];
  /** Error of the difference, about 0: for probabilities of exceeding a limit. */
  readonly error: Distribution;
}

/** a − b at the level of `a`'s interval. */
export function estimateSessionDifference(a: Estimate, b: Estimate, shared: Shared): Difference {
  const remaining = [...a.components, ...b.components].filter(({ sharedKey }) => sharedKey === null || !shared[sharedKey]);
  const budget = combineBudget(remaining);
  const step = Math.max(a.ownError.step, b.ownError.step);
  const own = addIndependent(resampled(a.ownError, step), negated(resampled(b.ownError, step)));
  const error = remaining
    .filter(({ sharedKey, standardUncertainty: u }) => sharedKey !== null && u >= step / 4)
    .reduce((sum, { distribution, standardUncertainty: u }) => addIndependent(sum, distribution === 'normal' ? fromCdf((x) => normalCdf(x, 0, u), 5 * u, step) : rectangular(u, step)), own);
  const value = a.value - b.value;
  const { level } = a.interval;
  const expandedUncertainty = halfWidthAbout(error, 0, level);
  return {
    value,
    standardUncertainty: budget.standardUncertainty,
    degreesOfFreedom: budget.degreesOfFreedom,
    interval: { low: value - expandedUncertainty, high: value + expandedUncertainty, level },
    coverageFactor: expandedUncertainty / budget.standardUncertainty,
    expandedUncertainty,
    components: budget.components,
    error,
  };
}
