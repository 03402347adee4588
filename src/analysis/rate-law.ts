import { judgeConsistency, type Consistency } from './birge.ts';
import { intervalAt, probabilityOfZero, type UncertainValue } from './error-tail.ts';
import { DEFAULT_LEVEL, type Interval } from './interval.ts';
import { fitLeastSquares, type LeastSquaresFit } from './least-squares.ts';
import { estimateContrast, type FitScale, type Weighed } from './linear-contrast.ts';

/** The total latency of one session, against the frame interval it was taken at. */
export interface RatePoint extends Weighed {
  readonly intervalMs: number;
  readonly totalMs: number;
}

export interface LawTerm extends UncertainValue {
  readonly interval: Interval;
  /** Two-sided p of a true value of 0. */
  readonly p: number;
}

export interface RateLaw {
  readonly kind: 'rate-law';
  /** Milliseconds that do not depend on the rate. p small: not a constant number of frames. */
  readonly fixedMs: LawTerm;
  /** Frame intervals. p small: not a constant number of milliseconds. */
  readonly frames: LawTerm;
  /** Scatter of all sessions about the line; undefined where there are as many parameters as sessions. */
  readonly consistency: Consistency | undefined;
  /** Scatter of the rates' weighted means about the line; undefined with two rates, through which any line goes. */
  readonly lackOfFit: Consistency | undefined;
  readonly rates: number;
  /** The fit itself, for predictions. */
  readonly fit: LeastSquaresFit;
  readonly scale: FitScale;
  readonly points: readonly RatePoint[];
  readonly level: number;
}

export interface NoRateLaw {
  readonly kind: 'not-estimable';
  readonly reason: 'no-sessions' | 'one-rate' | 'no-uncertainty';
}

/** Intervals closer than this share of each other are the same rate; 1001/1000 is far above it. */
const SAME_RATE = 1e-9;

/**
 * The rate law: total = fixed + frames × interval, by least squares weighted with 1/u².
 *
 * A body with a constant number of frames of latency has fixed = 0; one with a constant number of milliseconds has
 * frames = 0; each end is tested by its own p. Stated uncertainties are used as they are, and widened by the Birge ratio
 * where χ² says that they do not explain the scatter (see birge.ts). Both terms are sums of the totals at fixed weights, and
 * their errors the same sums of the totals' errors: one that all share equally enters `fixed` whole, and `frames` not at all.
 *
 * Units: milliseconds, and frames. Domain: sessions at two rates or more, uncertainties above 0. A measured total holds
 * half a frame interval of mean waiting besides the pipeline, so frames is at least 0.5 for any real body.
 * Accuracy: NIST StRD Norris to 12 digits in the coefficients. Source: weighted least squares as in R's lm with weights.
 */
export function estimateRateLaw(points: readonly RatePoint[], level = DEFAULT_LEVEL): RateLaw | NoRateLaw {
  if (points.length === 0) return { kind: 'not-estimable', reason: 'no-sessions' };
  if (points.some((point) => point.standardUncertainty === 0))
    return { kind: 'not-estimable', reason: 'no-uncertainty' };
  const groups = groupByRate(points);
  if (groups.length < 2) return { kind: 'not-estimable', reason: 'one-rate' };

  const weights = points.map((point) => point.standardUncertainty ** -2);
  const columns = [points.map(() => 1), points.map((point) => point.intervalMs)];
  const fit = fitLeastSquares(
    columns,
    points.map((point) => point.totalMs),
    weights,
  );
  const consistency = judgeConsistency(fit.residualSumOfSquares, fit.residualDegreesOfFreedom);
  const scale: FitScale = {
    kind: 'stated',
    birgeRatio: consistency?.inflation ?? 1,
    residualDegreesOfFreedom: fit.residualDegreesOfFreedom,
  };
  const fixed = contrastOrThrow(fit, [1, 0], points, scale);
  const frames = contrastOrThrow(fit, [0, 1], points, scale);
  return {
    kind: 'rate-law',
    fixedMs: termOf(fixed, level),
    frames: termOf(frames, level),
    consistency,
    lackOfFit: lackOfFit(fit, groups),
    rates: groups.length,
    fit,
    scale,
    points,
    level,
  };
}

/** The law at one frame interval. */
export function predictRateLaw(law: RateLaw, intervalMs: number): UncertainValue {
  return contrastOrThrow(law.fit, [1, intervalMs], law.points, law.scale);
}

/** Points at the same rate together, fastest rate first. */
export function groupByRate(points: readonly RatePoint[]): (readonly RatePoint[])[] {
  const groups: RatePoint[][] = [];
  for (const point of [...points].sort((a, b) => a.intervalMs - b.intervalMs)) {
    if (!(point.intervalMs > 0) || !Number.isFinite(point.intervalMs + point.totalMs)) {
      throw new RangeError(
        `a rate law needs finite totals at intervals above 0, not ${point.totalMs} at ${point.intervalMs}`,
      );
    }
    const last = groups.at(-1);
    const first = last?.[0];
    if (last && first && point.intervalMs - first.intervalMs <= SAME_RATE * point.intervalMs) last.push(point);
    else groups.push([point]);
  }
  return groups;
}

function lackOfFit(fit: LeastSquaresFit, groups: readonly (readonly RatePoint[])[]): Consistency | undefined {
  const [fixed = 0, frames = 0] = fit.coefficients;
  const chiSquare = groups.reduce((sum, group) => {
    const weights = group.map((point) => point.standardUncertainty ** -2);
    const total = weights.reduce((a, b) => a + b, 0);
    const departure =
      group.reduce((s, point, i) => s + (weights[i] ?? 0) * (point.totalMs - fixed - frames * point.intervalMs), 0) /
      total;
    return sum + total * departure ** 2;
  }, 0);
  return judgeConsistency(chiSquare, groups.length - 2);
}

function contrastOrThrow(
  fit: LeastSquaresFit,
  contrast: readonly number[],
  points: readonly RatePoint[],
  scale: FitScale,
): UncertainValue {
  const estimate = estimateContrast(fit, contrast, points, scale);
  if (!estimate) throw new Error('a line through two rates is always estimable');
  return estimate;
}

function termOf(estimate: UncertainValue, level: number): LawTerm {
  return { ...estimate, interval: intervalAt(estimate, level), p: probabilityOfZero(estimate) };
}
