import type { BudgetedValue } from '../../src/analysis/components.ts';
import { errorOf, type LinearError } from '../../src/analysis/linear-error.ts';
import { summarize } from '../../src/analysis/summary.ts';

/** The mean of independent readings, with its standard error as the only component. */
export function budgetedMean(values: readonly number[]): BudgetedValue {
  const { n, mean, standardError } = summarize(values);
  if (standardError === undefined) throw new Error('a budgeted mean needs two values');
  return {
    value: mean,
    components: [
      { name: 'repeatability', standardUncertainty: standardError, degreesOfFreedom: n - 1, sharedKey: null },
    ],
  };
}

/** A value with one own component, known exactly unless degrees of freedom are given. */
export function budgeted(value: number, standardUncertainty: number, degreesOfFreedom = Infinity): BudgetedValue {
  return { value, components: [{ name: 'own', standardUncertainty, degreesOfFreedom, sharedKey: null }] };
}

/** A normal error of a value that shares it with no other. */
export function normalError(standardUncertainty: number): LinearError {
  return errorOf(budgeted(0, standardUncertainty));
}
