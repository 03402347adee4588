import type { BudgetedValue, NamedComponent } from '../analysis/components.ts';

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

/**
 * What sessions share, as one uncertainty: each error once, in the largest size in which a session has it. Sizes differ
 * where an error grows with the latency; the largest claims no more than any session does.
 */
export function sharedUncertainty(budgets: readonly BudgetedValue[]): number {
  const largest = new Map<string, number>();
  for (const budget of budgets) {
    for (const [key, { standardUncertainty }] of splitBudget(budget).shared)
      largest.set(key, Math.max(largest.get(key) ?? 0, standardUncertainty));
  }
  return Math.hypot(...largest.values());
}
