import { judgeConsistency, type Consistency } from './birge.ts';
import { intervalAt, probabilityOfErrorAbove, type UncertainValue } from './error-tail.ts';
import { adjustHolm } from './holm.ts';
import { DEFAULT_LEVEL, type Interval } from './interval.ts';
import { fitLeastSquares, type LeastSquaresFit } from './least-squares.ts';
import { sharesOf } from './linear-contrast.ts';
import { combineErrors, type LinearError } from './linear-error.ts';
import { propagate } from './propagate.ts';
import { groupByRate, type RatePoint } from './rate-law.ts';
import { ratioSet, type RatioSet } from './ratio.ts';

export type RateFloor =
  | {
      readonly kind: 'floor';
      /** Latency that no faster rate goes below. */
      readonly floorMs: number;
      readonly floorInterval: Interval;
      readonly floorStandardUncertainty: number;
      /** Frame interval at which the line of the slower rates reaches the floor, with its set. */
      readonly breakIntervalMs: number;
      readonly breakSet: RatioSet;
      /** Frame interval of the slowest rate at the floor: going faster than this no longer helps. */
      readonly enoughIntervalMs: number;
      /** How many of the fastest rates lie at the floor. */
      readonly ratesAtFloor: number;
      /** Do all sessions agree with the line and the floor? undefined where nothing is left over to tell. */
      readonly consistency: Consistency | undefined;
      /** p of "the fast rates lie on the line of the slower ones", adjusted for the number of places tried. */
      readonly p: number;
    }
  | { readonly kind: 'no-floor-seen'; readonly p: number }
  /** The fast rates do lie above the line of the slower ones, but no line with a floor fits all sessions. */
  | { readonly kind: 'other-shape'; readonly p: number }
  | { readonly kind: 'not-estimable'; readonly reason: 'too-few-rates' | 'no-uncertainty' };

interface Candidate {
  readonly fast: readonly RatePoint[];
  readonly rates: number;
  readonly level: UncertainValue;
  readonly levelError: LinearError;
  readonly line: LeastSquaresFit;
  readonly fixed: number;
  readonly frames: number;
  readonly slow: readonly RatePoint[];
  readonly chiSquare: number;
  readonly consistency: Consistency | undefined;
  readonly p: number;
}

/**
 * Is there a rate beyond which going faster no longer helps? Tested, not eyeballed.
 *
 * For each k, the k fastest rates are held against the line through all slower ones (two rates at least): a floor shows
 * as latency above that line, a sum of the totals at fixed weights, tested on one side by the distribution of its error. The p-values of all k are adjusted together
 * (Holm), so a floor is claimed falsely with probability alpha at most. Among the k that pass, whose line and floor χ²
 * does not contradict, and whose line reaches the floor within the measured rates, the best fitting one gives the floor
 * and the break, where the line reaches it: (floor − fixed)/frames.
 *
 * Units: milliseconds. Domain: three rates or more, uncertainties above 0 and taken as stated.
 * Source: the test is a linear contrast, the break a ratio with its set; no published procedure is followed.
 */
export function findRateFloor(points: readonly RatePoint[], level = DEFAULT_LEVEL): RateFloor {
  if (points.some((point) => point.standardUncertainty === 0))
    return { kind: 'not-estimable', reason: 'no-uncertainty' };
  const groups = groupByRate(points);
  if (groups.length < 3) return { kind: 'not-estimable', reason: 'too-few-rates' };

  const candidates = groups.slice(0, -2).map((_, k) => judge(groups.slice(0, k + 1), groups.slice(k + 1)));
  const adjusted = adjustHolm(candidates.map((candidate) => candidate.p));
  const departing = candidates
    .map((candidate, i) => ({ ...candidate, p: adjusted[i] ?? 1 }))
    .filter((candidate) => candidate.p <= 1 - level);
  if (departing.length === 0) return { kind: 'no-floor-seen', p: Math.min(...adjusted) };
  const slowest = Math.max(...points.map((point) => point.intervalMs));
  const [best] = departing
    .filter(({ consistency }) => consistency === undefined || consistency.inflation === 1)
    // a floor that the line meets beyond the slowest rate, or never, is a body that gets slower at fast rates
    .filter((candidate) => candidate.frames > 0 && breakOf(candidate) <= slowest)
    .sort((a, b) => a.chiSquare - b.chiSquare);
  if (!best) return { kind: 'other-shape', p: Math.min(...adjusted) };

  return {
    kind: 'floor',
    floorMs: best.level.value,
    floorInterval: intervalAt(best.level, level),
    floorStandardUncertainty: best.level.standardUncertainty,
    breakIntervalMs: breakOf(best),
    breakSet: ratioSet(
      {
        value: best.level.value - best.fixed,
        error: combineErrors([
          [1, best.levelError],
          [-1, errorOfSum(best.line, [1, 0], best.slow)],
        ]),
      },
      { value: best.frames, error: errorOfSum(best.line, [0, 1], best.slow) },
      level,
    ),
    enoughIntervalMs: Math.max(...best.fast.map((point) => point.intervalMs)),
    ratesAtFloor: best.rates,
    consistency: best.consistency,
    p: best.p,
  };
}

/** Where the line reaches the level. */
function breakOf({ level, fixed, frames }: Candidate): number {
  return (level.value - fixed) / frames;
}

/** The error of a combination of a fit's coefficients: the same sum of the errors of its points. */
function errorOfSum(fit: LeastSquaresFit, contrast: readonly number[], points: readonly RatePoint[]): LinearError {
  return combineErrors(sharesOf(fit, contrast).map((share, row) => [share, points[row]!.error]));
}

function judge(
  fastGroups: readonly (readonly RatePoint[])[],
  slowGroups: readonly (readonly RatePoint[])[],
): Candidate {
  const fast = fastGroups.flat();
  const slow = slowGroups.flat();
  const line = fitLine(slow, [slow.map(() => 1), slow.map((point) => point.intervalMs)]);
  const flat = fitLine(fast, [fast.map(() => 1)]);
  const levelError = errorOfSum(flat, [1], fast);
  const level = propagate(flat.coefficients[0] ?? 0, levelError);
  const total = fast.reduce((sum, point) => sum + point.standardUncertainty ** -2, 0);
  const meanInterval = fast.reduce((sum, point) => sum + point.intervalMs * point.standardUncertainty ** -2, 0) / total;
  const [fixed = 0, frames = 0] = line.coefficients;
  const above = propagate(
    level.value - fixed - frames * meanInterval,
    combineErrors([
      [1, levelError],
      [-1, errorOfSum(line, [1, meanInterval], slow)],
    ]),
  );
  const chiSquare = line.residualSumOfSquares + flat.residualSumOfSquares;
  return {
    fast,
    rates: fastGroups.length,
    level,
    levelError,
    line,
    fixed,
    frames,
    slow,
    chiSquare,
    consistency: judgeConsistency(chiSquare, line.residualDegreesOfFreedom + flat.residualDegreesOfFreedom),
    p: probabilityOfErrorAbove(above, above.value),
  };
}

function fitLine(points: readonly RatePoint[], columns: readonly (readonly number[])[]): LeastSquaresFit {
  return fitLeastSquares(
    columns,
    points.map((point) => point.totalMs),
    points.map((point) => point.standardUncertainty ** -2),
  );
}
