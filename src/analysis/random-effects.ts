import { fsum } from 'd3-array';
import { fUpperTail } from './distributions.ts';
import { meanOf, sumOfSquaresAbout } from './summary.ts';

/** One group (a run, a day, a session) by its summary, as published tables often give it. */
export interface GroupSummary {
  readonly n: number;
  readonly mean: number;
  /** With n − 1; undefined for a group of one. */
  readonly standardDeviation: number | undefined;
}

export interface RandomEffects {
  readonly groups: number;
  readonly n: number;
  /** Mean of the group means: each group counts once, whatever its size. */
  readonly mean: number;
  /** Standard deviation of the group means over √groups. */
  readonly standardUncertainty: number;
  /** groups − 1 */
  readonly degreesOfFreedom: number;
  readonly between: MeanSquare;
  /** undefined where every group holds one value. */
  readonly within: MeanSquare | undefined;
  /** undefined where the within mean square is absent or zero. */
  readonly f: number | undefined;
  /** P(F ≥ f) where there is no variance between groups. */
  readonly p: number | undefined;
  /** Effective group size: n where balanced, otherwise (N − Σn²/N)/(groups − 1). */
  readonly effectiveGroupSize: number;
  /** (between mean square − within mean square)/effectiveGroupSize, as it comes out: may be below 0. */
  readonly betweenVarianceUnclipped: number | undefined;
  /** The same, with 0 for a value below 0. */
  readonly betweenVariance: number | undefined;
  readonly withinVariance: number | undefined;
}

export interface MeanSquare {
  readonly sumOfSquares: number;
  readonly degreesOfFreedom: number;
  readonly meanSquare: number;
}

/**
 * One-way random effects: how much of the scatter lies between groups and how much within them.
 *
 * Model: value = mean + group effect (variance σ_B²) + residual (variance σ_W²). Expected mean squares
 * E(MSW) = σ_W², E(MSB) = σ_W² + n0·σ_B², solved for the variances (analysis-of-variance estimator).
 * The mean has groups as its unit: its uncertainty keeps the between-group effect and has groups − 1
 * degrees of freedom. For groups of equal size it equals √(MSB/N).
 *
 * Units: variances and squares in the square of the values' unit. Domain: two or more groups, none empty.
 * Accuracy: F to 12 digits on NIST StRD SiRstv and SmLs01.
 * Source: JCGM 100:2008, H.5; NIST/SEMATECH e-Handbook, 7.4.4; n0 for unequal groups: ISO 5725-2:1994, 7.4.5 (from memory).
 * Throws a RangeError for fewer than two groups, an empty group or a number that is not finite.
 *
 * `estimateRandomEffects([[1, 3], [4, 6]])` has mean 3.5, between mean square 9, within mean square 2, F 4.5.
 */
export function estimateRandomEffects(groups: readonly (readonly number[])[]): RandomEffects {
  return fromMoments(
    groups.map((values) => {
      const mean = meanOf(values);
      return { n: values.length, mean, squares: sumOfSquaresAbout(values, mean) };
    }),
  );
}

/** The same from each group's size, mean and standard deviation. */
export function estimateRandomEffectsOfSummaries(groups: readonly GroupSummary[]): RandomEffects {
  return fromMoments(
    groups.map(({ n, mean, standardDeviation }, i) => {
      if (!Number.isInteger(n) || n < 1) throw new RangeError(`group ${i + 1} has a size of ${n}`);
      if (n > 1 && standardDeviation === undefined)
        throw new RangeError(`group ${i + 1} has ${n} values and no standard deviation`);
      return { n, mean, squares: (n - 1) * (standardDeviation ?? 0) ** 2 };
    }),
  );
}

interface Moments {
  readonly n: number;
  readonly mean: number;
  readonly squares: number;
}

function fromMoments(groups: readonly Moments[]): RandomEffects {
  const k = groups.length;
  if (k < 2) throw new RangeError(`random effects need two or more groups, not ${k}`);
  const n = groups.reduce((sum, group) => sum + group.n, 0);
  const means = groups.map((group) => group.mean);
  const mean = meanOf(means);
  const betweenDf = k - 1;

  // about a rough centre first, so that squares of large common offsets never appear
  const offsets = means.map((m) => m - mean);
  const weighted = fsum(offsets.map((d, i) => (groups[i]?.n ?? 0) * d)) / n;
  const between = meanSquare(fsum(offsets.map((d, i) => (groups[i]?.n ?? 0) * (d - weighted) ** 2)), betweenDf);
  const within = n > k ? meanSquare(fsum(groups.map((group) => group.squares)), n - k) : undefined;

  const effectiveGroupSize = (n - fsum(groups.map((group) => group.n ** 2)) / n) / betweenDf;
  const f = within !== undefined && within.meanSquare > 0 ? between.meanSquare / within.meanSquare : undefined;
  const unclipped = within === undefined ? undefined : (between.meanSquare - within.meanSquare) / effectiveGroupSize;
  return {
    groups: k,
    n,
    mean,
    standardUncertainty: Math.sqrt(sumOfSquaresAbout(means, mean) / betweenDf / k),
    degreesOfFreedom: betweenDf,
    between,
    within,
    f,
    p: f === undefined ? undefined : fUpperTail(f, betweenDf, n - k),
    effectiveGroupSize,
    betweenVarianceUnclipped: unclipped,
    betweenVariance: unclipped === undefined ? undefined : Math.max(0, unclipped),
    withinVariance: within?.meanSquare,
  };
}

function meanSquare(sumOfSquares: number, degreesOfFreedom: number): MeanSquare {
  return { sumOfSquares, degreesOfFreedom, meanSquare: sumOfSquares / degreesOfFreedom };
}
