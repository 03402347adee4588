import { planLadder, planSession, type Ladder, type Plan, type Wanted } from '../analysis/plan.ts';
import type { Bench, Rig } from '../model/bench.ts';
import type { Rate } from '../model/rate.ts';
import { lookup } from '../register/lookup.ts';
import type { ConditionToMeasure } from './planned-session.ts';
import { methodOfRig, setupOfRig } from './setup-of-rig.ts';

export type { Ladder, Plan, Wanted };

export interface PlannedCondition {
  readonly condition: ConditionToMeasure;
  /** Ids of settings that nobody has stated; none where absent. */
  readonly unstated?: readonly string[];
  readonly plan: Plan;
  /** Where nothing particular was wanted: what more and less would give. */
  readonly ladder?: Ladder;
}

/** For whom and with what is planned; a body that is not on the bench varies as bodies without sessions do. */
export interface Planning {
  readonly bench: Bench;
  readonly rig: Rig;
  readonly body: string;
  readonly wanted: Wanted | undefined;
}

/** The least work on the rig, at this rate, that gives what is wanted; without a wish, the rung of its ladder to take. */
export function planRig(
  { bench, rig, body, wanted }: Planning,
  rate: Rate,
): Omit<PlannedCondition, 'condition' | 'unstated'> {
  const find = lookup(bench);
  const variation = find.variation(body);
  const setup = {
    ...setupOfRig(rig, rate, methodOfRig(rig), bench, find),
    ...(variation === undefined ? {} : { variation }),
  };
  if (wanted !== undefined) return { plan: planSession(setup, wanted) };
  const ladder = planLadder(setup);
  return { plan: ladder.recommended, ladder };
}
