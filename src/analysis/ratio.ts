import type { BudgetedValue } from './components.ts';
import { intervalAt } from './error-tail.ts';
import { DEFAULT_LEVEL } from './interval.ts';
import { combineErrors, errorOf, standardUncertaintyOf, type LinearError } from './linear-error.ts';
import { propagate } from './propagate.ts';
import { atan, cos, hypot, sin, tan } from './elementary.ts';

/** The values of the ratio that the data do not contradict. */
export type RatioSet =
  | { readonly kind: 'bounded'; readonly low: number; readonly high: number; readonly level: number }
  /** Everything but the open interval from `below` to `above`: at most `below`, or at least `above`. */
  | { readonly kind: 'complement'; readonly below: number; readonly above: number; readonly level: number }
  /** Nothing is contradicted. */
  | { readonly kind: 'unbounded'; readonly level: number };

/** A value with the parts of its error. */
export interface ValueWithError {
  readonly value: number;
  readonly error: LinearError;
}

const CLOSE = 1e-10;
const MOST_STEPS = 80;

/**
 * The set of ratios ρ at which a − ρ·b does not contradict 0, by inverting its distribution: errors of a and −ρ·b are
 * convolved, what both share enters once. With normal errors it is Fieller's set.
 *
 * ρ is taken as the tangent of an angle θ, along which a·cos θ − b·sin θ goes from 0 at the ratio itself to its largest at
 * a right angle: where 0 is not contradicted even there, nothing is; where the limits lie on either side of a vertical
 * tangent, the denominator is not told from 0, and what is left is the complement of an interval. Nothing is clipped.
 *
 * Domain: finite values, not both 0. Accuracy: 10⁻⁸ in θ.
 * Source: E. C. Fieller, J. R. Stat. Soc. B 16 (1954), 175 (from memory); JCGM 101:2008, 5.2 for the distribution.
 */
export function ratioSet(a: ValueWithError, b: ValueWithError, level = DEFAULT_LEVEL): RatioSet {
  if (![a.value, b.value].every(Number.isFinite) || (a.value === 0 && b.value === 0))
    throw new RangeError(`a ratio needs finite values that are not both 0, not ${a.value} and ${b.value}`);
  const middle = b.value === 0 ? Math.PI / 2 : atan(a.value / b.value);
  const side = b.value < 0 || (b.value === 0 && a.value < 0) ? -1 : 1;
  /** By how much 0 is inside the interval at so large an angle up (+1) or down (−1); below 0 outside. */
  const inside = (turn: 1 | -1, by: number): number => {
    const angle = middle + turn * by;
    const [cosine, sine] = [side * cos(angle), side * sin(angle)];
    const error = combineErrors([
      [cosine, a.error],
      [-sine, b.error],
    ]);
    const at = -turn * hypot(a.value, b.value) * sin(by);
    const { low, high } = intervalAt(propagate(at, error), level);
    return turn > 0 ? high : -low;
  };
  const ends = ([1, -1] as const).map((turn) => ({ turn, last: inside(turn, Math.PI / 2) }));
  if (ends.some(({ last }) => last >= 0)) return { kind: 'unbounded', level };
  const [up = 0, down = 0] = ends.map(({ turn, last }) => crossing((by) => inside(turn, by), [Math.PI / 2, last]));
  const [from, to] = [middle - down, middle + up];
  return from > -Math.PI / 2 && to < Math.PI / 2
    ? { kind: 'bounded', low: tan(from), high: tan(to), level }
    : { kind: 'complement', below: tan(to), above: tan(from), level };
}

/** Where a function falls through 0 between 0 and `end`: the Illinois variant of the secant rule, which keeps the bracket. */
function crossing(f: (x: number) => number, [end, atEnd]: readonly [x: number, value: number]): number {
  let [left, right] = [0, end];
  let [atLeft, atRight] = [f(left), atEnd];
  if (atLeft <= 0) return 0;
  for (let step = 0, kept = 0; step < MOST_STEPS && right - left > CLOSE; step += 1) {
    const x = step % 8 === 7 ? (left + right) / 2 : right - (atRight * (right - left)) / (atRight - atLeft);
    const value = f(x);
    if (Math.abs(value) < CLOSE * (atLeft - atRight)) return x;
    if (value > 0) {
      [left, atLeft] = [x, value];
      if (kept === 1) atRight /= 2;
      kept = 1;
    } else {
      [right, atRight] = [x, value];
      if (kept === -1) atLeft /= 2;
      kept = -1;
    }
  }
  return (left + right) / 2;
}

export interface Ratio {
  readonly kind: 'ratio';
  readonly value: number;
  readonly set: RatioSet;
}

export interface NoRatio {
  readonly kind: 'not-estimable';
  readonly reason: 'no-budget' | 'no-scatter' | 'zero-denominator';
}

/** Several ratios of some values at one level. */
export interface RatiosAsked {
  readonly values: readonly BudgetedValue[];
  /** Of each ratio, the places of numerator and denominator among the values. */
  readonly pairs: readonly (readonly [numerator: number, denominator: number])[];
  readonly level: number;
}

export function estimateRatios({ values, pairs, level }: RatiosAsked): readonly (Ratio | NoRatio)[] {
  return pairs.map(([a, b]) => estimateRatio(values[a]!, values[b]!, level));
}

/** The ratio a/b of two estimates with budgets, with its set; errors that both share count once. */
export function estimateRatio(a: BudgetedValue, b: BudgetedValue, level = DEFAULT_LEVEL): Ratio | NoRatio {
  if ([a, b].some(({ components, own }) => components.length === 0 && !own))
    return { kind: 'not-estimable', reason: 'no-budget' };
  if (b.value === 0) return { kind: 'not-estimable', reason: 'zero-denominator' };
  const value = a.value / b.value;
  const [errorA, errorB] = [errorOf(a), errorOf(b)];
  const left = combineErrors([
    [1, errorA],
    [-value, errorB],
  ]);
  if (standardUncertaintyOf(left) === 0) return { kind: 'not-estimable', reason: 'no-scatter' };
  return {
    kind: 'ratio',
    value,
    set: ratioSet({ value: a.value, error: errorA }, { value: b.value, error: errorB }, level),
  };
}
