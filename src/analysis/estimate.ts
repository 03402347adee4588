/**
 * The total latency of one session, with an uncertainty that knows the rig.
 *
 *     estimateSession(input) → Estimate
 *
 *     1. the readings of each run            → value and its own uncertainty
 *     2. known systematic effects            → corrections, applied with their sign
 *     3. named components                    → budget, effective degrees of freedom, k and U
 *
 * Plain values in, plain values out; milliseconds throughout; nothing random, no clock.
 */
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { combineBudget, type BudgetComponent, type BudgetLine } from './budget.ts';
import type { Chain, Method } from './chain.ts';
import { correctionsFor, type Correction } from './corrections.ts';

/** The readings of one run that count, in the order taken. */
export interface RunInput {
  /** source − shown, frames × observer interval, or the instrument's value. */
  readonly latenciesMs: readonly number[];
  /** Source stamps, one for each latency; needed for two timers, absent otherwise. */
  readonly sourceMs?: readonly number[];
}

export interface SessionInput {
  readonly method: Method;
  readonly chain: Chain;
  /** Each with one reading at least. */
  readonly runs: readonly RunInput[];
  /** Step of the timer's last digit; needed for two timers. */
  readonly resolutionMs?: number;
  /** What the maker of a light sensor states, as a standard uncertainty. */
  readonly instrumentUncertaintyMs?: number;
  /** Coverage probability of the interval; 0.95 where absent. */
  readonly level?: number;
}

export interface Diagnostics {
  /** Standard deviation of the readings about their run's mean; undefined with fewer than two readings in every run. */
  readonly observedScatterMs?: number;
  readonly observedScatterDegreesOfFreedom: number;
  /** What the rig alone gives in that place; undefined for an instrument. */
  readonly expectedScatterMs?: number;
  /** Observed over expected: the Birge ratio of the readings. */
  readonly birgeRatio?: number;
  /** Which calculation gave the value. */
  readonly estimator: 'likelihood' | 'random effects';
}

export interface Estimate {
  readonly value: number;
  readonly standardUncertainty: number;
  /** Infinity allowed. */
  readonly degreesOfFreedom: number;
  readonly interval: { readonly low: number; readonly high: number; readonly level: number };
  readonly coverageFactor: number;
  readonly expandedUncertainty: number;
  readonly components: readonly BudgetComponent[];
  readonly corrections: readonly Correction[];
  readonly uncorrectedValue: number;
  readonly diagnostics: Diagnostics;
}

/** The total latency of one session. Throws a RangeError that names what is missing. */
export function estimateSession(input: SessionInput): Estimate {
  const { method, chain, runs, level = 0.95 } = input;
  if (runs.length === 0 || runs.some(({ latenciesMs }) => latenciesMs.length === 0)) {
    throw new RangeError('an estimate needs at least one run, and each run at least one reading');
  }
  const means = runs.map(({ latenciesMs }) => mean(latenciesMs));
  const latencies = runs.flatMap(({ latenciesMs }) => latenciesMs);
  const uncorrectedValue = means.length > 1 ? mean(means) : mean(latencies);
  const sample = means.length > 1 ? means : latencies;
  const nu = Math.max(1, sample.length - 1);
  const u = sample.length > 1 ? Math.sqrt(sample.reduce((sum, x) => sum + (x - uncorrectedValue) ** 2, 0) / nu / sample.length) : 0;
  const corrections = correctionsFor(chain, method);
  const lines: BudgetLine[] = [
    { name: means.length > 1 ? 'between runs' : 'repeatability', type: 'A', distribution: 't', standardUncertainty: u, degreesOfFreedom: nu, sharedKey: null },
    ...corrections.map(({ name, standardUncertaintyMs }): BudgetLine => ({
      name, type: 'B', distribution: 'rectangular', standardUncertainty: standardUncertaintyMs, degreesOfFreedom: Infinity, sharedKey: 'rig',
    })),
  ];
  const budget = combineBudget(lines);
  const coverageFactor = tQuantile((1 + level) / 2, Math.min(budget.degreesOfFreedom, 1e9));
  const value = uncorrectedValue + corrections.reduce((sum, { valueMs }) => sum + valueMs, 0);
  const expandedUncertainty = coverageFactor * budget.standardUncertainty;
  return {
    value,
    standardUncertainty: budget.standardUncertainty,
    degreesOfFreedom: budget.degreesOfFreedom,
    interval: { low: value - expandedUncertainty, high: value + expandedUncertainty, level },
    coverageFactor,
    expandedUncertainty,
    components: budget.components,
    corrections,
    uncorrectedValue,
    diagnostics: { observedScatterDegreesOfFreedom: latencies.length - runs.length, estimator: 'random effects' },
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
