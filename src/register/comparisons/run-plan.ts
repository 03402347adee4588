import {
  combineComponents,
  pairComponents,
  type BudgetedValue,
  type NamedComponent,
} from '../../analysis/components.ts';
import type { RunPlan } from '../../analysis/further-runs.ts';
import { LEVEL_COMPONENTS } from '../../analysis/variation.ts';

export interface Side {
  readonly budget: BudgetedValue;
  readonly runs: number;
}

/**
 * What further runs of two sessions would make smaller (each session's own components), and what they would leave: what
 * both share, and how their days differ, which only other days make smaller.
 */
export function planRuns(a: Side, b: Side): RunPlan {
  const { ownA, ownB, shared } = pairComponents(a.budget, b.budget);
  const own = (components: readonly NamedComponent[]): NamedComponent[] =>
    components.filter(({ sharedKey }) => sharedKey === null);
  const left = [...ownA, ...ownB].filter(({ sharedKey }) => sharedKey !== null);
  const remainders = shared.map(({ a: inA, b: inB }) => ({
    standardUncertainty: Math.abs(inA.standardUncertainty - inB.standardUncertainty),
    degreesOfFreedom: Math.min(inA.degreesOfFreedom, inB.degreesOfFreedom),
  }));
  const ofRuns = (components: readonly NamedComponent[]): NamedComponent[] =>
    own(components).filter((one) => !isOfDays(one));
  const ofDays = [...ownA, ...ownB].filter((one) => isOfDays(one) && one.standardUncertainty > 0);
  return {
    sides: [
      { ...combineComponents(ofRuns(ownA)), runs: a.runs },
      { ...combineComponents(ofRuns(ownB)), runs: b.runs },
    ],
    fixed: combineComponents([...left, ...remainders, ...ofDays]),
    ...(ofDays.length > 0 && {
      otherDays: {
        sides: [combineComponents(own(ownA)), combineComponents(own(ownB))],
        fixed: combineComponents([...left, ...remainders]),
      },
    }),
  };
}

function isOfDays({ name }: NamedComponent): boolean {
  return name === LEVEL_COMPONENTS.condition;
}
