import type { BudgetedValue, NamedComponent } from '../analysis/components.ts';
import type { Weighed } from '../analysis/linear-contrast.ts';
import { errorOf, standardUncertaintyOf } from '../analysis/linear-error.ts';

/** A budget in two: what this session has alone, and what it shares with others, by name and key. */
export function splitBudget({ components }: BudgetedValue): {
  own: readonly NamedComponent[];
  shared: ReadonlyMap<string, NamedComponent>;
} {
  return {
    own: components.filter(({ sharedKey }) => sharedKey === null),
    shared: new Map(
      components
        .filter(({ sharedKey }) => sharedKey !== null)
        .map((component) => [`${component.name}@${component.sharedKey ?? ''}`, component]),
    ),
  };
}

/** A total as fits weigh it: by what it has alone, with the whole of its error. */
export function weighed(budget: BudgetedValue): Weighed {
  return {
    standardUncertainty: standardUncertaintyOf(errorOf({ ...budget, components: splitBudget(budget).own })),
    error: errorOf(budget),
  };
}
