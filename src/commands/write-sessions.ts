import { describePlan, describeDesign } from '../planning/plan-text.ts';
import { newSessionId, type NewSession } from '../planning/planned-session.ts';
import type { PlannedCondition, Wanted } from '../planning/plan-rig.ts';
import { renderNewSession } from '../planning/render-session.ts';
import { methodOfRig } from '../planning/setup-of-rig.ts';
import { shuffle } from '../planning/schedule.ts';
import { describeLevel } from '../register/level-words.ts';
import { lookup } from '../register/lookup.ts';
import type { Bench, Rig } from '../model/bench.ts';
import { CallError } from './run.ts';
import type { NewFile } from './write-all.ts';

interface Order {
  readonly bench: Bench;
  readonly rig: Rig;
  /** An id; its file may be among those that are still to be written. */
  readonly body: string;
  readonly planned: readonly PlannedCondition[];
  readonly seed: string | undefined;
}

/** `59.94 frames/s, UHD: 3 clips of …` and what that gives. */
export function describePlanned({ condition, plan }: PlannedCondition, wanted: Wanted, bench: Bench): string {
  const find = lookup(bench);
  const levels = Object.entries(condition.settings).map(([setting, level]) => describeLevel(find, setting, level));
  return [
    `${levels.join(', ')}:`,
    `  ${describeDesign(plan)} (${plan.runs * plan.readings} readings)`,
    ...describePlan(plan, wanted).map((line) => `  ${line}`),
  ].join('\n');
}

export interface PlannedFiles {
  readonly files: readonly NewFile[];
  /** In which order to measure, and what to do next. */
  readonly says: string;
}

/** The pairs of files, in an order drawn at random. */
export function planFiles({ bench, rig, body, planned, seed: seedText }: Order): PlannedFiles {
  const seed = Number(seedText ?? '1');
  if (!Number.isInteger(seed) || seed < 0) throw new CallError(`--seed is a whole number, not '${seedText}'.`);
  const taken = new Set<string>();
  const sessions = shuffle(planned, seed).map(({ condition, plan }, index): NewSession => {
    const id = newSessionId(body, condition, bench, taken);
    taken.add(id);
    return {
      id,
      body,
      rig: rig.id,
      method: methodOfRig(rig),
      condition,
      plan,
      position: index + 1,
      of: planned.length,
    };
  });
  const files = sessions.flatMap((session) => {
    const { front, readings } = renderNewSession(session);
    const path = `data/sessions/${session.id}`;
    return [
      { path: `${path}.md`, text: front },
      { path: `${path}.csv`, text: readings },
    ];
  });
  const says = [
    'Written, to be measured in this order:',
    ...sessions.map(
      ({ id, position, plan }) => `  ${position}. data/sessions/${id}.md and .csv: ${describeDesign(plan)}`,
    ),
    'Fill in the date and what the first line of each asks for, type the readings, and run npm run build. Until then they are counted as planned.',
  ].join('\n');
  return { files, says };
}
