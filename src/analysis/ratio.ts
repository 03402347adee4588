import { combineComponents, pairComponents, type BudgetedValue, type NamedComponent } from './components.ts';
import { coverageFactor } from './distributions.ts';
import { DEFAULT_LEVEL } from './interval.ts';

/** The values of the ratio that the data do not contradict. */
export type RatioSet =
  | { readonly kind: 'bounded'; readonly low: number; readonly high: number; readonly level: number }
  /** Everything but the open interval from `below` to `above`: at most `below`, or at least `above`. */
  | { readonly kind: 'complement'; readonly below: number; readonly above: number; readonly level: number }
  /** Nothing is contradicted. */
  | { readonly kind: 'unbounded'; readonly level: number };

export interface FiellerInput {
  readonly numerator: number;
  readonly denominator: number;
  readonly numeratorVariance: number;
  readonly denominatorVariance: number;
  readonly covariance: number;
  readonly degreesOfFreedom: number;
}

/**
 * Fieller's set for a ratio a/b: every ρ with |a − ρb| ≤ t·√(v_a − 2ρc + ρ²v_b).
 *
 * Its limits are the roots of (b² − t²v_b)ρ² − 2(ab − t²c)ρ + (a² − t²v_a) = 0. It is an interval only where the
 * denominator is told from 0, that is where g = t²v_b/b² is below 1; otherwise it is the complement of an interval or
 * the whole line, and is given as such, never clipped. (At g = 1 exactly it is a half-line, given as unbounded.)
 *
 * Domain: finite values, variances of at least 0. Exact where numerator and denominator are normal.
 * Source: E. C. Fieller, J. R. Stat. Soc. B 16 (1954), 175 (from memory).
 */
export function fiellerSet(input: FiellerInput, level = DEFAULT_LEVEL): RatioSet {
  const { numerator: a, denominator: b, numeratorVariance, denominatorVariance, covariance, degreesOfFreedom } = input;
  const t = coverageFactor(level, degreesOfFreedom);
  const quadratic = b * b - t * t * denominatorVariance;
  const half = a * b - t * t * covariance;
  const constant = a * a - t * t * numeratorVariance;
  const discriminant = half * half - quadratic * constant;
  if (![quadratic, half, constant].every(Number.isFinite))
    throw new RangeError('a ratio needs finite values and variances');
  if (quadratic === 0 || (quadratic < 0 && discriminant <= 0)) return { kind: 'unbounded', level };

  // the two roots without cancellation: one from the larger of half ± √disc, the other from the product of both
  const larger = half + (half < 0 ? -1 : 1) * Math.sqrt(Math.max(0, discriminant));
  const first = larger / quadratic;
  const second = larger === 0 ? 0 : constant / larger;
  const [low, high] = [Math.min(first, second), Math.max(first, second)];
  return quadratic > 0 ? { kind: 'bounded', low, high, level } : { kind: 'complement', below: low, above: high, level };
}

export interface Ratio {
  readonly kind: 'ratio';
  readonly value: number;
  readonly degreesOfFreedom: number;
  /** t²v_b/b²: from 1 up, the denominator is not told from 0. */
  readonly g: number;
  readonly set: RatioSet;
}

export interface NoRatio {
  readonly kind: 'not-estimable';
  readonly reason: 'no-budget' | 'no-scatter' | 'zero-denominator';
}

/**
 * The ratio a/b of two estimates with budgets, with Fieller's set.
 *
 * Shared components (same name, same key) enter as a covariance, the product of their two sizes. Degrees of freedom are
 * Welch and Satterthwaite's for a − ρb at the observed ρ, shared components counted with the size they keep in it.
 */
export function estimateRatio(a: BudgetedValue, b: BudgetedValue, level = DEFAULT_LEVEL): Ratio | NoRatio {
  if (a.components.length === 0 || b.components.length === 0) return { kind: 'not-estimable', reason: 'no-budget' };
  if (b.value === 0) return { kind: 'not-estimable', reason: 'zero-denominator' };
  const value = a.value / b.value;
  const { ownA, ownB, shared } = pairComponents(a, b);
  const scaled = (c: NamedComponent): NamedComponent => ({
    ...c,
    standardUncertainty: Math.abs(value) * c.standardUncertainty,
  });
  const kept = shared.map((pair) => ({
    ...pair.a,
    standardUncertainty: Math.abs(pair.a.standardUncertainty - value * pair.b.standardUncertainty),
    degreesOfFreedom: Math.min(pair.a.degreesOfFreedom, pair.b.degreesOfFreedom),
  }));
  const { standardUncertainty, degreesOfFreedom } = combineComponents([...ownA, ...ownB.map(scaled), ...kept]);
  if (standardUncertainty === 0) return { kind: 'not-estimable', reason: 'no-scatter' };
  const denominatorVariance = combineComponents(b.components).standardUncertainty ** 2;
  const set = fiellerSet(
    {
      numerator: a.value,
      denominator: b.value,
      numeratorVariance: combineComponents(a.components).standardUncertainty ** 2,
      denominatorVariance,
      covariance: shared.reduce((sum, pair) => sum + pair.a.standardUncertainty * pair.b.standardUncertainty, 0),
      degreesOfFreedom,
    },
    level,
  );
  const t = coverageFactor(level, degreesOfFreedom);
  return { kind: 'ratio', value, degreesOfFreedom, g: (t * t * denominatorVariance) / b.value ** 2, set };
}
