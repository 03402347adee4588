import { planSession, type Plan, type Wanted } from '../analysis/plan.ts';
import type { Bench, Rig } from '../model/bench.ts';
import type { Rate } from '../model/rate.ts';
import { lookup } from '../register/lookup.ts';
import type { Condition } from './planned-session.ts';
import { methodOfRig, setupOfRig } from './setup-of-rig.ts';

export type { Plan, Wanted };

export interface PlannedCondition {
  readonly condition: Condition;
  readonly plan: Plan;
}

/** The least work on this rig, at this rate, that gives what is wanted. */
export function planRig(bench: Bench, rig: Rig, rate: Rate, wanted: Wanted): Plan {
  return planSession(setupOfRig(rig, rate, methodOfRig(rig), bench, lookup(bench)), wanted);
}
