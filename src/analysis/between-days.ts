/** What several sessions of one condition say of how its delay changes from day to day. */
import { changes, type Change } from './clip-mean.ts';
import { exp, hypot, ln } from './elementary.ts';

/** A session's value with the standard uncertainty of its own day's delay. */
export interface DayValue {
  readonly value: number;
  readonly standardUncertainty: number;
}

/** Sizes that are less likely than this are left out. */
const UNLIKELY = 0.005;
const CELLS_PER_U = 4;
const MOST_CELLS = 4000;

/**
 * The sizes of change from day to day, weighed by how well each explains the sessions' scatter, whatever their common
 * mean: P(size | y) ∝ P(size) ∫ dμ Πᵢ [(1 − q)·φ(yᵢ − μ) + q·φ(yᵢ − μ − T_d)], φ normal with variance uᵢ² + τ².
 * Empty where none of the sizes can have given them.
 *
 * Source: one-way random effects with stated within-variances (W. Viechtbauer, J. Educ. Behav. Stat. 30 (2005), 261, from
 * memory), with a prior over sizes in place of an estimate.
 */
export function weighDayChanges(days: readonly DayValue[], sizes: readonly Change[], frameMs: number): Change[] {
  const logs = sizes.map((size) => ln(size.probability) + logLikelihood(days, size, frameMs));
  const highest = Math.max(...logs);
  if (!Number.isFinite(highest)) return [];
  const weights = logs.map((log) => exp(log - highest));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const kept = sizes
    .map((size, i) => ({ ...size, probability: weights[i]! / all }))
    .filter(({ probability }) => probability > UNLIKELY);
  const left = kept.reduce((sum, { probability }) => sum + probability, 0);
  return kept.map((size) => ({ ...size, probability: size.probability / left }));
}

function logLikelihood(days: readonly DayValue[], size: Change, frameMs: number): number {
  const step = changes(size) ? size.step : 0;
  const us = days.map(({ standardUncertainty }) => hypot(standardUncertainty, size.sdMs));
  const least = Math.min(...us);
  if (least === 0) return -Infinity;
  const values = days.map(({ value }) => value);
  const reach = 6 * Math.max(...us);
  const from = Math.min(...values) - reach - (step > 0 ? frameMs : 0);
  const to = Math.max(...values) + reach;
  const count = Math.min(MOST_CELLS, Math.ceil(((to - from) / least) * CELLS_PER_U));
  const width = (to - from) / count;
  const logs = Array.from({ length: count }, (_, i) => {
    const mu = from + (i + 0.5) * width;
    return values.reduce((sum, value, k) => sum + ln(density(value - mu, us[k]!, step, frameMs)), 0);
  });
  const highest = Math.max(...logs);
  if (highest === -Infinity) return -Infinity;
  return highest + ln(width * logs.reduce((sum, log) => sum + exp(log - highest), 0));
}

function density(x: number, u: number, step: number, frameMs: number): number {
  const at = (z: number): number => exp((-z * z) / 2) / u;
  return (1 - step) * at(x / u) + (step > 0 ? step * at((x - frameMs) / u) : 0);
}
