import type { BudgetedValue } from '../analysis/components.ts';
import type { Figure } from './register.ts';

/** A published figure as a value with its budget, as comparisons take it. */
export function budgetOfFigure({
  value,
  components = [],
  own,
}: Pick<Figure, 'value' | 'components' | 'own'>): BudgetedValue {
  return {
    value,
    ...(own && { own }),
    components: components.map(({ name, standardUncertainty, degreesOfFreedom, shared, distribution }) => ({
      name,
      standardUncertainty,
      degreesOfFreedom: degreesOfFreedom ?? Infinity,
      sharedKey: shared,
      distribution,
    })),
  };
}
