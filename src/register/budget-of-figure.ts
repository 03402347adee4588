import type { BudgetedValue } from '../analysis/components.ts';
import type { Figure } from './register.ts';

/** A published figure as a value with its budget, as comparisons take it. */
export function budgetOfFigure({ value, components = [] }: Pick<Figure, 'value' | 'components'>): BudgetedValue {
  return {
    value,
    components: components.map(({ name, standardUncertainty, degreesOfFreedom, shared }) => ({
      name,
      standardUncertainty,
      degreesOfFreedom: degreesOfFreedom ?? Infinity,
      sharedKey: shared,
    })),
  };
}
