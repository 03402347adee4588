/** How far sessions scatter beyond what they state. */
import type { DayValue } from './between-days.ts';
import { judgeConsistency, type Consistency } from './birge.ts';
import { chiSquareQuantile } from './distributions.ts';
import type { RandomEffects } from './random-effects.ts';
import { summarize } from './summary.ts';

/**
 * The largest standard deviation τ between sessions that their scatter does not contradict: the τ at which
 * Q(τ) = Σ (x − x̄)²/(u² + τ²), about the mean so weighted, falls to the χ² quantile of alpha on k − 1 degrees of freedom;
 * 0 where it lies below that without any τ. With equal u: τ² = S/χ² − u², S the sum of squares.
 *
 * Units: those of the values. Domain: two sessions or more; uncertainties of at least 0. Accuracy: 10⁻⁹ of the scatter.
 * Source: Q-profile, W. Viechtbauer, Statist. Med. 26 (2007), 37 (from memory).
 */
export function betweenAtMost(sessions: readonly DayValue[], alpha = 0.05): number {
  const least = chiSquareQuantile(alpha, sessions.length - 1);
  const q = (variance: number): number => weightedSquares(sessions, variance);
  const { standardDeviation = 0 } = summarize(sessions.map(({ value }) => value));
  if (standardDeviation === 0) return 0;
  // with u = 0 everywhere Q would be S/τ², which bounds it from above
  let high = ((sessions.length - 1) * standardDeviation ** 2) / least;
  let low = 1e-18 * high;
  if (q(low) <= least) return 0;
  for (let step = 0; step < 200 && high - low > 1e-12 * high; step += 1) {
    const middle = (low + high) / 2;
    if (q(middle) > least) low = middle;
    else high = middle;
  }
  return Math.sqrt((low + high) / 2);
}

/** Σ w (x − x̄)² about the mean with the weights w = 1/(u² + variance). */
export function weightedSquares(sessions: readonly DayValue[], variance: number): number {
  const weights = sessions.map(({ standardUncertainty }) => 1 / (standardUncertainty ** 2 + variance));
  const total = weights.reduce((a, b) => a + b, 0);
  const mean = sessions.reduce((sum, { value }, i) => sum + (weights[i] ?? 0) * value, 0) / total;
  return sessions.reduce((sum, { value }, i) => sum + (weights[i] ?? 0) * (value - mean) ** 2, 0);
}

/** χ² of the sessions about their weighted mean. */
export function consistencyOf(sessions: readonly DayValue[]): Consistency | undefined {
  if (sessions.some((session) => session.standardUncertainty === 0)) return undefined;
  return judgeConsistency(weightedSquares(sessions, 0), sessions.length - 1);
}

export interface Precision {
  /** s_r: scatter of readings within one session. */
  readonly repeatabilityStandardDeviation: number;
  /** s_L: scatter between sessions. */
  readonly betweenStandardDeviation: number;
  /** s_R = √(s_L² + s_r²): scatter of single readings from different sessions. */
  readonly reproducibilityStandardDeviation: number;
}

/** Repeatability and reproducibility from one-way random effects (ISO 5725-2:1994, 7.4, from memory); undefined without scatter within. */
export function precisionOf({ withinVariance, betweenVariance }: RandomEffects): Precision | undefined {
  if (withinVariance === undefined || betweenVariance === undefined) return undefined;
  return {
    repeatabilityStandardDeviation: Math.sqrt(withinVariance),
    betweenStandardDeviation: Math.sqrt(betweenVariance),
    reproducibilityStandardDeviation: Math.sqrt(withinVariance + betweenVariance),
  };
}
