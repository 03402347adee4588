import { weighDayChanges, type DayValue } from './between-days.ts';
import { judgeConsistency, type Consistency } from './birge.ts';
import type { Change } from './clip-mean.ts';
import type { Distribution } from './distribution.ts';
import { betweenAtMost, consistencyOf, weightedSquares } from './between-sessions.ts';
import type { UncertainValue } from './error-tail.ts';
import { DEFAULT_LEVEL } from './interval.ts';
import { meanOfDraws } from './level-change.ts';
import { combineErrors, standardUncertaintyOf, type LinearError } from './linear-error.ts';
import { propagate } from './propagate.ts';
import { summarize } from './summary.ts';
import { withUnknownScale, type Scatter } from './unknown-scale.ts';

/** One session of the same body in the same condition. */
export interface RepeatSession extends DayValue {
  /** Of its own day's delay, without what all sessions share. */
  readonly error: LinearError;
}

export interface DayVariation {
  /** How the delay changes from day to day, as stated, in ms. */
  readonly sizes: readonly Change[];
  /** T_d. */
  readonly frameMs: number;
}

export type RepeatSessions =
  | {
      readonly kind: 'repeat-sessions';
      readonly sessions: number;
      /** Of the condition, whatever the day; each session counts once. */
      readonly mean: UncertainValue;
      /** Where the next session's value would fall, on the same rig. */
      readonly next: UncertainValue;
      /** Standard deviation of the sessions' values. */
      readonly sessionStandardDeviation: number;
      /** Scatter of the sessions beyond their own uncertainties: s² − mean(u²), as it comes out, and with 0 for below 0. */
      readonly betweenVarianceUnclipped: number;
      readonly betweenVariance: number;
      /** One-sided upper limit of the standard deviation between sessions (Q-profile). */
      readonly betweenAtMost: number;
      /** Do the sessions' own uncertainties explain their scatter? undefined where one of them is 0. */
      readonly consistency: Consistency | undefined;
    }
  | { readonly kind: 'not-estimable'; readonly reason: 'one-session' | 'no-scatter'; readonly mean: number };

/**
 * Repeat sessions pooled: what varies from day to day, the mean over days, and where the next session would fall.
 *
 * The sizes of change that the publication states are weighed by the sessions' scatter (between-days.ts). At each size the
 * mean's error is the convolution of the sessions' own errors over k, of the mean of k days about the condition, and of
 * what all share (on a rig: whole); the next session's that of the sessions' errors, of k days and of one more, and of a
 * session's own error. Errors are averaged over the sizes. Scatter that no stated size explains widens both by a factor
 * that it tells itself (unknown-scale.ts).
 *
 * Domain: uncertainties of at least 0; a RangeError for none at all. Source: ISO 5725-2:1994, 7.4 (from memory), with
 * sessions as the groups; JCGM 101:2008, 5.2.
 */
export function poolSessions(
  sessions: readonly RepeatSession[],
  { sizes, frameMs }: DayVariation,
  shared: LinearError = new Map(),
): RepeatSessions {
  const { n, mean, standardDeviation } = summarize(sessions.map((session) => session.value));
  if (standardDeviation === undefined) return { kind: 'not-estimable', reason: 'one-session', mean };
  const weighed = weighDayChanges(sessions, sizes, frameMs);
  if (weighed.length === 0) return { kind: 'not-estimable', reason: 'no-scatter', mean };
  const errors = sessions.map(({ error }) => [1 / n, error] as const);
  const ofMean = combineErrors(errors);
  const typical = widest(sessions);
  const step = standardUncertaintyOf(ofMean) / 24 || frameMs / 1000;
  const days = (size: Change, count: number): LinearError => {
    const shape = meanOfDraws([{ ...size, probability: 1 }], frameMs, count, step);
    return shape === undefined ? new Map() : partOf('days', shape);
  };
  const scatter = contradiction(sessions, weighed, frameMs);
  const average = (errorAt: (size: Change) => LinearError): UncertainValue => {
    const value = averaged(
      weighed.map((size) => [size.probability, propagate(mean, errorAt(size))]),
      mean,
    );
    return scatter === undefined ? value : withUnknownScale(value, scatter);
  };
  const unclipped =
    standardDeviation ** 2 - summarize(sessions.map((session) => session.standardUncertainty ** 2)).mean;
  return {
    kind: 'repeat-sessions',
    sessions: n,
    mean: average((size) =>
      combineErrors([
        [1, ofMean],
        [-1, days(size, n)],
        [1, shared],
      ]),
    ),
    next: average((size) =>
      combineErrors([
        [1, ofMean],
        [-1, days(size, n)],
        [1, days(size, 1)],
        [-1, typical],
      ]),
    ),
    sessionStandardDeviation: standardDeviation,
    betweenVarianceUnclipped: unclipped,
    betweenVariance: Math.max(0, unclipped),
    betweenAtMost: betweenAtMost(sessions, 1 - DEFAULT_LEVEL),
    consistency: consistencyOf(sessions),
  };
}

/** A part of its own, whatever else has that name. */
function partOf(name: string, shape: Distribution): LinearError {
  return new Map([[Symbol(name), { name, shape, coefficient: 1 }]]);
}

/** The error of the least certain session, as of one that is not among them. */
function widest(sessions: readonly RepeatSession[]): LinearError {
  const [first] = sessions.toSorted((a, b) => b.standardUncertainty - a.standardUncertainty);
  return new Map([...(first?.error.values() ?? [])].map((part) => [Symbol(part.name), part]));
}

/** A value with the average of several errors, each with its probability. */
function averaged(errors: readonly (readonly [number, UncertainValue])[], value: number): UncertainValue {
  return {
    value,
    standardUncertainty: Math.sqrt(errors.reduce((sum, [p, { standardUncertainty: u }]) => sum + p * u ** 2, 0)),
    errorTail: (x) => errors.reduce((sum, [p, { errorTail }]) => sum + p * errorTail(x), 0),
  };
}

/** The sessions' scatter, where not even the stated changes explain it; undefined where they do. */
function contradiction(
  sessions: readonly RepeatSession[],
  sizes: readonly Change[],
  frameMs: number,
): Scatter | undefined {
  const variance = sizes.reduce(
    (sum, { probability, sdMs, step }) => sum + probability * (sdMs ** 2 + step * (1 - step) * frameMs ** 2),
    0,
  );
  const found = judgeConsistency(weightedSquares(sessions, variance), sessions.length - 1);
  return found !== undefined && found.inflation > 1 ? found : undefined;
}
