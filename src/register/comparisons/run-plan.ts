import {
  combineComponents,
  pairComponents,
  type BudgetedValue,
  type NamedComponent,
} from '../../analysis/components.ts';
import type { RunPlan } from '../../analysis/further-runs.ts';

export interface Side {
  readonly budget: BudgetedValue;
  readonly runs: number;
}

/** What further runs of two sessions would make smaller (each session's own components), and what they would leave. */
export function planRuns(a: Side, b: Side): RunPlan {
  const { ownA, ownB, shared } = pairComponents(a.budget, b.budget);
  const own = (components: readonly NamedComponent[]): NamedComponent[] =>
    components.filter(({ sharedKey }) => sharedKey === null);
  const left = [...ownA, ...ownB].filter(({ sharedKey }) => sharedKey !== null);
  const remainders = shared.map(({ a: inA, b: inB }) => ({
    standardUncertainty: Math.abs(inA.standardUncertainty - inB.standardUncertainty),
    degreesOfFreedom: Math.min(inA.degreesOfFreedom, inB.degreesOfFreedom),
  }));
  return {
    sides: [
      { ...combineComponents(own(ownA)), runs: a.runs },
      { ...combineComponents(own(ownB)), runs: b.runs },
    ],
    fixed: combineComponents([...left, ...remainders]),
  };
}
