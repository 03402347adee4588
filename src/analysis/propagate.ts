/** Figures that are linear in others, with the distribution of their error: JCGM 101:2008, 5.2; JCGM 102:2011, 6.2. */
import type { BudgetedValue } from './components.ts';
import type { Distribution } from './distribution.ts';
import { normalLowerTail } from './distributions.ts';
import type { UncertainValue } from './error-tail.ts';
import {
  combineErrors,
  distributionOf,
  errorOf,
  isNormal,
  standardUncertaintyOf,
  type LinearError,
} from './linear-error.ts';

/**
 * A value whose error (truth − value) is known by its parts. Its distribution is worked out when it is first asked for;
 * where all parts are normal it is the normal one itself.
 */
export function propagate(value: number, error: LinearError): UncertainValue {
  const standardUncertainty = standardUncertaintyOf(error);
  if (standardUncertainty === 0) return { value, standardUncertainty, errorTail: (x) => (x > 0 ? 0 : 1) };
  if (isNormal(error))
    return { value, standardUncertainty, errorTail: (x) => normalLowerTail(-x / standardUncertainty), normal: true };
  let tail: ((x: number) => number) | undefined;
  return {
    value,
    standardUncertainty,
    errorTail: (x) => {
      tail ??= tailOf(distributionOf(error));
      return tail(x);
    },
  };
}

/** Σ coefficient·figure: what figures share cancels where its coefficients do. */
export function propagateSum(
  terms: readonly (readonly [coefficient: number, figure: BudgetedValue])[],
): UncertainValue {
  return propagate(
    terms.reduce((sum, [coefficient, { value }]) => sum + coefficient * value, 0),
    combineErrors(terms.map(([coefficient, figure]) => [coefficient, errorOf(figure)])),
  );
}

/** P(value − truth ≥ x), of the distribution of truth − value; mass spread evenly within each cell. */
function tailOf({ low, step, masses }: Distribution): (x: number) => number {
  const below = [0];
  for (const mass of masses) below.push(below.at(-1)! + mass);
  const all = below.at(-1)!;
  return (x) => {
    const place = (-x - low) / step + 0.5;
    if (place <= 0) return 0;
    if (place >= masses.length) return 1;
    const cell = Math.floor(place);
    return Math.min(1, (below[cell]! + masses[cell]! * (place - cell)) / all);
  };
}
