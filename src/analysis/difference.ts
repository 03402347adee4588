import { combineComponents, pairComponents, type BudgetedValue, type NamedComponent } from './components.ts';
import { differenceOf, type DifferenceResult, type NoDifference } from './difference-result.ts';
import { massBelow } from './distribution.ts';
import type { UncertainValue } from './error-tail.ts';
import { combineErrors, distributionOf, errorOf, standardUncertaintyOf } from './linear-error.ts';
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
 * Where the sessions' own errors are known as distributions, interval and p come from their convolution with what is left
 * of the shared parts (JCGM 101:2008, 5.2); there are no degrees of freedom then. A session's error is one with itself.
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
  const known = a.own || b.own ? withDistribution(value, a, b) : { value, ...combineComponents(components) };
  if (known.standardUncertainty === 0) return { kind: 'not-estimable', value, reason: 'no-scatter' };
  return { ...differenceOf(known, level), components, cancelled };
}

function withDistribution(value: number, a: BudgetedValue, b: BudgetedValue): UncertainValue {
  const parts = combineErrors([
    [1, errorOf(a)],
    [-1, errorOf(b)],
  ]);
  const error = distributionOf(parts);
  return {
    value,
    standardUncertainty: standardUncertaintyOf(parts),
    degreesOfFreedom: Infinity,
    // the tail is of estimate − truth, the distribution of truth − estimate
    errorTail: (x) => massBelow(error, -x),
  };
}
