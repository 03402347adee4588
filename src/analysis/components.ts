import type { Distribution } from './distribution.ts';
import { hypot } from './elementary.ts';

/** One named part of an estimate's uncertainty, in the unit of the estimate. */
export interface NamedComponent {
  readonly name: string;
  readonly standardUncertainty: number;
  /** Infinity where it is taken as exactly known. */
  readonly degreesOfFreedom: number;
  /** What the error is the same for (`rig:balcony`); null where it is this estimate's own. */
  readonly sharedKey: string | null;
  /** `rectangular`; anything else, and nothing, is taken as normal, or as Student's t on the degrees of freedom. */
  readonly distribution?: string;
}

/** What a session's own components come to, as a distribution about 0 (value + error = truth). */
export interface OwnError {
  /** The session: figures with one session in common have its error in common. */
  readonly key: string;
  readonly error: Distribution;
  /** Of what the error is times this: a total in frames. 1 where absent. */
  readonly scale?: number;
}

/** A value with its budget. */
export interface BudgetedValue {
  readonly value: number;
  readonly components: readonly NamedComponent[];
  /** Where it is known: the components without a key are then its breakdown. */
  readonly own?: OwnError;
}

export interface CombinedUncertainty {
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
}

/**
 * Root sum of squares of independent components, with effective degrees of freedom by Welch and Satterthwaite:
 * ν = u⁴ / Σ(uᵢ⁴/νᵢ). Components of zero are of no effect; no component at all gives 0 and Infinity.
 * Source: JCGM 100:2008, 5.1.2 and G.4.1. Throws a RangeError for an uncertainty below 0 or degrees of freedom not above 0.
 *
 * Four components of 1 on 10 degrees of freedom each: 2 on 40.
 */
export function combineComponents(
  components: readonly Pick<NamedComponent, 'standardUncertainty' | 'degreesOfFreedom'>[],
): CombinedUncertainty {
  for (const { standardUncertainty, degreesOfFreedom } of components) {
    if (!(standardUncertainty >= 0 && Number.isFinite(standardUncertainty)) || !(degreesOfFreedom > 0)) {
      throw new RangeError(
        `a component has an uncertainty of at least 0 and degrees of freedom above 0, not ${standardUncertainty} and ${degreesOfFreedom}`,
      );
    }
  }
  const standardUncertainty = hypot(...components.map((c) => c.standardUncertainty));
  if (standardUncertainty === 0) return { standardUncertainty: 0, degreesOfFreedom: Infinity };
  const parts = components.map((c) => (c.standardUncertainty / standardUncertainty) ** 4 / c.degreesOfFreedom);
  const sum = parts.reduce((a, b) => a + b, 0);
  return { standardUncertainty, degreesOfFreedom: sum === 0 ? Infinity : 1 / sum };
}

/** A component that both of two estimates have: the same name and the same, non-null key. */
export interface SharedPair {
  readonly a: NamedComponent;
  readonly b: NamedComponent;
}

/** Splits two budgets into what each has alone and what they share. Throws a RangeError where one names a shared component twice. */
export function pairComponents(
  a: BudgetedValue,
  b: BudgetedValue,
): {
  readonly ownA: readonly NamedComponent[];
  readonly ownB: readonly NamedComponent[];
  readonly shared: readonly SharedPair[];
} {
  const keysOfB = keyed(b);
  const keysOfA = keyed(a);
  const shared: SharedPair[] = [];
  for (const [key, component] of keysOfA) {
    const other = keysOfB.get(key);
    if (other) shared.push({ a: component, b: other });
  }
  const taken = new Set(shared.flatMap((pair) => [pair.a, pair.b]));
  return {
    ownA: a.components.filter((c) => !taken.has(c)),
    ownB: b.components.filter((c) => !taken.has(c)),
    shared,
  };
}

function keyed(value: BudgetedValue): Map<string, NamedComponent> {
  const byKey = new Map<string, NamedComponent>();
  for (const component of value.components) {
    if (component.sharedKey === null) continue;
    const key = JSON.stringify([component.name, component.sharedKey]);
    if (byKey.has(key))
      throw new RangeError(
        `component '${component.name}' shared by '${component.sharedKey}' is named twice in one budget`,
      );
    byKey.set(key, component);
  }
  return byKey;
}
