import { judgeConsistency, type Consistency } from './birge.ts';
import { chiSquareQuantile, coverageFactor } from './distributions.ts';
import { DEFAULT_LEVEL, tInterval, type Interval } from './interval.ts';
import type { RandomEffects } from './random-effects.ts';
import { summarize } from './summary.ts';

/** One session of the same body in the same condition. */
export interface RepeatSession {
  readonly value: number;
  /** Without what all sessions share. */
  readonly standardUncertainty: number;
}

export type RepeatSessions =
  | {
      readonly kind: 'repeat-sessions';
      readonly sessions: number;
      /** Each session counts once. */
      readonly mean: number;
      readonly standardUncertainty: number;
      readonly degreesOfFreedom: number;
      readonly interval: Interval;
      /** Standard deviation of the sessions' values. */
      readonly sessionStandardDeviation: number;
      /** Scatter of the sessions beyond their own uncertainties: s² − mean(u²), as it comes out, and with 0 for below 0. */
      readonly betweenVarianceUnclipped: number;
      readonly betweenVariance: number;
      /** One-sided upper limit of the standard deviation between sessions (Q-profile). */
      readonly betweenAtMost: number;
      /** Do the sessions' own uncertainties explain their scatter? undefined where one of them is 0. */
      readonly consistency: Consistency | undefined;
      /** Where the next session's value would fall. */
      readonly nextSession: Interval;
    }
  | { readonly kind: 'not-estimable'; readonly reason: 'one-session' | 'no-scatter'; readonly mean: number };

/**
 * Repeat sessions pooled: what varies from day to day, the mean over days, and where the next session would fall.
 *
 * The sessions' values are the observations: mean ± t·s/√k, next session mean ± t·s·√(1 + 1/k), both on k − 1 degrees of
 * freedom. Exact where sessions have equal uncertainties; the between-session variance is the moment estimator of
 * one-way random effects with the within part stated.
 *
 * Domain: uncertainties of at least 0; a RangeError for none at all. Source: ISO 5725-2:1994, 7.4 (from memory), with
 * sessions as the groups; prediction interval as R's predict.lm.
 */
export function poolSessions(sessions: readonly RepeatSession[], level = DEFAULT_LEVEL): RepeatSessions {
  const { n, mean, standardDeviation } = summarize(sessions.map((session) => session.value));
  if (standardDeviation === undefined) return { kind: 'not-estimable', reason: 'one-session', mean };
  if (standardDeviation === 0) return { kind: 'not-estimable', reason: 'no-scatter', mean };
  const degreesOfFreedom = n - 1;
  const standardUncertainty = standardDeviation / Math.sqrt(n);
  const unclipped =
    standardDeviation ** 2 - summarize(sessions.map((session) => session.standardUncertainty ** 2)).mean;
  const half = coverageFactor(level, degreesOfFreedom) * standardDeviation * Math.sqrt(1 + 1 / n);
  return {
    kind: 'repeat-sessions',
    sessions: n,
    mean,
    standardUncertainty,
    degreesOfFreedom,
    interval: tInterval(mean, standardUncertainty, degreesOfFreedom, level),
    sessionStandardDeviation: standardDeviation,
    betweenVarianceUnclipped: unclipped,
    betweenVariance: Math.max(0, unclipped),
    betweenAtMost: betweenAtMost(sessions, 1 - level),
    consistency: consistencyOf(sessions),
    nextSession: { low: mean - half, high: mean + half, level },
  };
}

/**
 * The largest standard deviation τ between sessions that their scatter does not contradict: the τ at which
 * Q(τ) = Σ (x − x̄)²/(u² + τ²), about the mean so weighted, falls to the χ² quantile of alpha on k − 1 degrees of freedom;
 * 0 where it lies below that without any τ. With equal u: τ² = S/χ² − u², S the sum of squares.
 *
 * Units: those of the values. Domain: two sessions or more; uncertainties of at least 0. Accuracy: 10⁻⁹ of the scatter.
 * Source: Q-profile, W. Viechtbauer, Statist. Med. 26 (2007), 37 (from memory).
 */
export function betweenAtMost(sessions: readonly RepeatSession[], alpha = 0.05): number {
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
function weightedSquares(sessions: readonly RepeatSession[], variance: number): number {
  const weights = sessions.map(({ standardUncertainty }) => 1 / (standardUncertainty ** 2 + variance));
  const total = weights.reduce((a, b) => a + b, 0);
  const mean = sessions.reduce((sum, { value }, i) => sum + (weights[i] ?? 0) * value, 0) / total;
  return sessions.reduce((sum, { value }, i) => sum + (weights[i] ?? 0) * (value - mean) ** 2, 0);
}

/** χ² of the sessions about their weighted mean. */
function consistencyOf(sessions: readonly RepeatSession[]): Consistency | undefined {
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
