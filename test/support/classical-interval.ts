import { DEFAULT_LEVEL, tInterval, type Interval } from '../../src/analysis/interval.ts';
import { meanOf, summarize } from '../../src/analysis/summary.ts';

export interface ClassicalEstimate {
  readonly kind: 'estimate';
  readonly mean: number;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  readonly interval: Interval;
  /** What was taken as one independent observation. */
  readonly unit: 'readings' | 'runs';
}

export interface NoClassicalEstimate {
  readonly kind: 'mean-only';
  readonly mean: number;
  /** `one-reading`: there is no scatter to judge by. `no-scatter`: all observations are equal. */
  readonly reason: 'one-reading' | 'no-scatter';
}

/**
 * The textbook interval for the mean of a session: mean ± t·s/√n.
 *
 * One run: the n readings are taken as independent observations, s is their standard deviation, n − 1 degrees of
 * freedom. Two or more runs: the run means are the observations (JCGM 100:2008, H.5), so that what differs from
 * run to run is kept. Readings of one run are seldom independent, so one run gives an interval that is too short.
 *
 * Units: those of the values. Domain: no empty run. Throws a RangeError for no runs, an empty run or a number that
 * is not finite. Source: NIST/SEMATECH e-Handbook, 1.3.5.2; JCGM 100:2008, G.3.
 *
 * `estimateClassicalInterval([[1, 2, 3]])` is 2 ± 4.303·0.577, that is −0.484 to 4.484.
 */
export function estimateClassicalInterval(
  runs: readonly (readonly number[])[],
  level = DEFAULT_LEVEL,
): ClassicalEstimate | NoClassicalEstimate {
  const unit = runs.length > 1 ? 'runs' : 'readings';
  const observations = unit === 'runs' ? runs.map(meanOf) : (runs[0] ?? []);
  const { n, mean, standardError } = summarize(observations);
  if (standardError === undefined) return { kind: 'mean-only', mean, reason: 'one-reading' };
  if (standardError === 0) return { kind: 'mean-only', mean, reason: 'no-scatter' };
  const degreesOfFreedom = n - 1;
  return {
    kind: 'estimate',
    mean,
    standardUncertainty: standardError,
    degreesOfFreedom,
    interval: tInterval(mean, standardError, degreesOfFreedom, level),
    unit,
  };
}
