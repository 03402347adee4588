import { pairComponents, type BudgetedValue, type NamedComponent } from './components.ts';
import { differenceOf, type DifferenceResult, type NoDifference } from './difference-result.ts';
import { DEFAULT_LEVEL } from './interval.ts';
import { propagateSum } from './propagate.ts';

export type { NoDifference } from './difference-result.ts';

export interface Difference extends DifferenceResult {
  /** What is left of both budgets. */
  readonly components: readonly NamedComponent[];
  /** Names of shared components that cancelled altogether. */
  readonly cancelled: readonly string[];
}

/**
 * The difference a − b of two estimates with budgets.
 *
 * u² = Σ of the own parts' squares; a component that both share (same name, same key) is one and the same error, so only
 * the difference of its two sizes remains, which is 0 where they are equal. Interval and p come from the convolution of
 * what is left (JCGM 101:2008, 5.2). A session's error is one with itself.
 *
 * A component on few degrees of freedom enters as Student's t scaled by its size: with one of each, s/√n on n − 1, this is
 * the distribution of Behrens and Fisher.
 *
 * Source: JCGM 100:2008, 5.2.2 (fully correlated inputs); JCGM 101:2008, 6.4.9.
 */
export function estimateDifference(
  a: BudgetedValue,
  b: BudgetedValue,
  level = DEFAULT_LEVEL,
): Difference | NoDifference {
  const value = a.value - b.value;
  if (!Number.isFinite(value)) throw new RangeError(`a difference needs finite values, not ${a.value} and ${b.value}`);
  if ([a, b].some(({ components, own }) => components.length === 0 && !own))
    return { kind: 'not-estimable', value, reason: 'no-budget' };

  const { ownA, ownB, shared } = pairComponents(a, b);
  const remainders = shared.map(({ a: inA, b: inB }) => ({
    ...inA,
    standardUncertainty: Math.abs(inA.standardUncertainty - inB.standardUncertainty),
    degreesOfFreedom: Math.min(inA.degreesOfFreedom, inB.degreesOfFreedom),
  }));
  const components = [...ownA, ...ownB, ...remainders.filter((c) => c.standardUncertainty > 0)];
  const cancelled = remainders.filter((c) => c.standardUncertainty === 0).map((c) => c.name);
  const known = propagateSum([
    [1, a],
    [-1, b],
  ]);
  if (known.standardUncertainty === 0) return { kind: 'not-estimable', value, reason: 'no-scatter' };
  return { ...differenceOf(known, level), components, cancelled };
}
