import { describeDesign, describeLadder, describePlan } from '../planning/plan-text.ts';
import { newSessionId, type NewSession } from '../planning/planned-session.ts';
import type { PlannedCondition, Wanted } from '../planning/plan-rig.ts';
import { renderNewSession } from '../planning/render-session.ts';
import { methodOfRig } from '../planning/setup-of-rig.ts';
import { shuffle } from '../planning/schedule.ts';
import { describeLevel } from '../register/level-words.ts';
import { lookup } from '../register/lookup.ts';
import type { Bench, PlannedPair, PlannedSession, Rig } from '../model/bench.ts';
import { CallError } from './run.ts';
import { whileWriting, type NewFile } from './write-all.ts';

interface Order {
  readonly bench: Bench;
  readonly rig: Rig;
  /** An id; its file may be among those that are still to be written. */
  readonly body: string;
  readonly planned: readonly PlannedCondition[];
  readonly seed: string | undefined;
  /** Whether conditions that are planned already are planned once more. */
  readonly repeat?: boolean | undefined;
}

/** `59.94 frames/s, UHD: 3 clips of …` and what that gives. */
export function describePlanned(
  { condition, plan, ladder }: PlannedCondition,
  wanted: Wanted | undefined,
  bench: Bench,
): string {
  const find = lookup(bench);
  const levels = Object.entries(condition.settings).map(([setting, level]) => describeLevel(find, setting, level));
  return [
    `${levels.join(', ')}:`,
    ...(ladder !== undefined
      ? describeLadder(ladder)
      : [
          `${describeDesign(plan)} (${plan.runs * plan.readings} readings)`,
          ...(wanted === undefined ? [] : describePlan(plan, wanted)),
        ]
    ).map((line) => `  ${line}`),
  ].join('\n');
}

export const WRITING_OPTIONS = { dry: { type: 'boolean' }, repeat: { type: 'boolean' } } as const;
export const WRITING_USAGE = `  --dry                say what would be written, and write nothing
  --repeat             plan once more what is planned already`;

export interface PlannedFiles {
  readonly files: readonly NewFile[];
  /** In which order to measure, and what to do next. */
  readonly says: string;
}

/** The pairs of files, in an order drawn at random; none for what is planned already, so that planning twice makes no copies. */
export function planFiles({ bench, rig, body, planned: wanted, seed: seedText, repeat = false }: Order): PlannedFiles {
  const seed = Number(seedText ?? '1');
  if (!Number.isInteger(seed) || seed < 0) throw new CallError(`--seed is a whole number, not '${seedText}'.`);
  const taken = new Set<string>();
  const there = wanted.flatMap((each) => {
    const found = repeat
      ? undefined
      : bench.planned.find((one) => one.body === body && one.rig === rig.id && isSame(one, each));
    return found === undefined ? [] : [[each, found] as const];
  });
  const planned = wanted.filter((each) => !there.some(([known]) => known === each));
  const sessions = shuffle(planned, seed).map(({ condition, plan, unstated }, index): NewSession => {
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
      ...(unstated === undefined ? {} : { unstated }),
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
    ...there.map(([, planned]) => plannedAlready(planned)),
    ...(sessions.length === 0 ? [] : ['To be measured in this order:']),
    ...sessions.map(
      ({ id, position, plan }) => `  ${position}. data/sessions/${id}.md and .csv: ${describeDesign(plan)}`,
    ),
    ...(sessions.length === 0
      ? []
      : [
          'Fill in the date and what the first line of each asks for, type the readings, and run npm run build. Until then they are counted as planned.',
        ]),
  ].join('\n');
  return { files, says };
}

export function plannedAlready({ file }: PlannedSession | PlannedPair): string {
  return `Planned already: ${file.path}. To plan it once more, say --repeat.`;
}

function isSame({ settings }: PlannedSession, { condition }: PlannedCondition): boolean {
  const names = new Set([...Object.keys(settings), ...Object.keys(condition.settings)]);
  return [...names].every((name) => settings[name] === condition.settings[name]);
}

/** Writes them, or says that nothing was written. */
export async function writePlanned(root: string, files: readonly NewFile[], dry: boolean | undefined): Promise<string> {
  if (files.length === 0) return 'Nothing to write.';
  const list = files.map(({ path }) => `  ${path}`).join('\n');
  if (dry === true) return `Nothing was written, as --dry says. Without it:\n${list}`;
  await whileWriting(root, (write) => write(files));
  return `Written:\n${list}`;
}
