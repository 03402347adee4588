import { combineComponents, pairComponents, type BudgetedValue, type NamedComponent } from './components.ts';
import { differenceOf, type DifferenceResult, type NoDifference } from './difference-result.ts';
import { DEFAULT_LEVEL } from './interval.ts';

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
 * u² = Σ of the own components' squares; a component that both share (same name, same key) is one and the same error,
 * so only the difference of its two sizes remains, which is 0 where they are equal. Unequal variances are allowed;
 * degrees of freedom are Welch and Satterthwaite's. With one own component each, s/√n on n − 1, this is Welch's t.
 *
 * Source: JCGM 100:2008, 5.2.2 (fully correlated inputs) and G.4; NIST/SEMATECH e-Handbook, 1.3.5.3.
 *
 * `estimateDifference` of 2.33 (u 0.633, 9) and 0.75 (u 0.566, 9) is 1.58 on 17.78 degrees of freedom.
 */
export function estimateDifference(
  a: BudgetedValue,
  b: BudgetedValue,
  level = DEFAULT_LEVEL,
): Difference | NoDifference {
  const value = a.value - b.value;
  if (!Number.isFinite(value)) throw new RangeError(`a difference needs finite values, not ${a.value} and ${b.value}`);
  if (a.components.length === 0 || b.components.length === 0)
    return { kind: 'not-estimable', value, reason: 'no-budget' };

  const { ownA, ownB, shared } = pairComponents(a, b);
  const remainders = shared.map(({ a: inA, b: inB }) => ({
    ...inA,
    standardUncertainty: Math.abs(inA.standardUncertainty - inB.standardUncertainty),
    degreesOfFreedom: Math.min(inA.degreesOfFreedom, inB.degreesOfFreedom),
  }));
  const components = [...ownA, ...ownB, ...remainders.filter((c) => c.standardUncertainty > 0)];
  const { standardUncertainty, degreesOfFreedom } = combineComponents(components);
  if (standardUncertainty === 0) return { kind: 'not-estimable', value, reason: 'no-scatter' };
  const cancelled = remainders.filter((c) => c.standardUncertainty === 0).map((c) => c.name);
  return { ...differenceOf({ value, standardUncertainty, degreesOfFreedom }, level), components, cancelled };
}
