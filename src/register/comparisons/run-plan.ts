import {
  combineComponents,
  pairComponents,
  type BudgetedValue,
  type CombinedUncertainty,
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

/** A session with what its total counts for in a value that several give. */
export interface SharedSide extends Side {
  readonly share: number;
}

/**
 * The same for a difference that a fit of many sessions gives: those of either side count with their shares, and
 * whatever else its uncertainty holds (displays, links, what sessions share, disagreement) no further run of the two
 * makes smaller.
 */
export function planRunsOfFit(
  standardUncertainty: number,
  sides: readonly [readonly SharedSide[], readonly SharedSide[]],
): RunPlan {
  const ownOf = (side: readonly SharedSide[], isIncluded: (component: NamedComponent) => boolean) =>
    combineComponents(
      side.flatMap(({ budget, share }) =>
        budget.components
          .filter((component) => component.sharedKey === null && isIncluded(component))
          .map((component) => ({
            standardUncertainty: Math.abs(share) * component.standardUncertainty,
            degreesOfFreedom: component.degreesOfFreedom,
          })),
      ),
    );
  const rest = (...parts: readonly CombinedUncertainty[]): CombinedUncertainty => {
    const left = parts.reduce((sum, part) => sum - part.standardUncertainty ** 2, standardUncertainty ** 2);
    return { standardUncertainty: Math.sqrt(Math.max(0, left)), degreesOfFreedom: Infinity };
  };
  const [a, b] = sides;
  const ofRuns = (side: readonly SharedSide[]) => ownOf(side, (one) => !isOfDays(one));
  const whole = (side: readonly SharedSide[]) => ownOf(side, () => true);
  const runsOf = (side: readonly SharedSide[]): number => side.reduce((sum, { runs }) => sum + runs, 0);
  const hasDays = [...a, ...b].some(({ budget }) =>
    budget.components.some((one) => isOfDays(one) && one.standardUncertainty > 0),
  );
  return {
    sides: [
      { ...ofRuns(a), runs: runsOf(a) },
      { ...ofRuns(b), runs: runsOf(b) },
    ],
    fixed: rest(ofRuns(a), ofRuns(b)),
    ...(hasDays && { otherDays: { sides: [whole(a), whole(b)], fixed: rest(whole(a), whole(b)) } }),
  };
}

function isOfDays({ name }: NamedComponent): boolean {
  return name === LEVEL_COMPONENTS.condition;
}
