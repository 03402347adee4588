import { judgeConsistency, type Consistency } from './birge.ts';
import { coverageFactor } from './distributions.ts';
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
    consistency: consistencyOf(sessions),
    nextSession: { low: mean - half, high: mean + half, level },
  };
}

/** χ² of the sessions about their weighted mean. */
function consistencyOf(sessions: readonly RepeatSession[]): Consistency | undefined {
  if (sessions.some((session) => session.standardUncertainty === 0)) return undefined;
  const weights = sessions.map((session) => session.standardUncertainty ** -2);
  const total = weights.reduce((a, b) => a + b, 0);
  const mean = sessions.reduce((sum, session, i) => sum + (weights[i] ?? 0) * session.value, 0) / total;
  const chiSquare = sessions.reduce((sum, session, i) => sum + (weights[i] ?? 0) * (session.value - mean) ** 2, 0);
  return judgeConsistency(chiSquare, sessions.length - 1);
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
