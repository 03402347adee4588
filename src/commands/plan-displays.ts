/** `npm run plan -- --display … --against …`: how many readings a comparison of two displays takes, and its empty files. */
import { planPair, planPairLadder } from '../analysis/plan-pairs.ts';
import type { Bench } from '../model/bench.ts';
import { describeDesign, describeLadder, describePlan } from '../planning/plan-text.ts';
import { newPairId, renderPlannedPair, setupOfPair } from '../planning/render-pair.ts';
import { lookup } from '../register/lookup.ts';
import { PAIR_OPTIONS, readPair, takenIds } from './pair-options.ts';
import { readWanted, WANTED_OPTIONS } from './plan-options.ts';
import { CallError, type CommandOptions } from './run.ts';
import { say } from './say.ts';
import { plannedAlready, writePlanned, WRITING_OPTIONS } from './write-sessions.ts';

export const DISPLAY_PLAN_OPTIONS = {
  ...PAIR_OPTIONS,
  ...WANTED_OPTIONS,
  method: { type: 'string' },
  write: { type: 'boolean' },
  ...WRITING_OPTIONS,
} as const;

export async function planDisplays(
  root: string,
  bench: Bench,
  options: CommandOptions<typeof DISPLAY_PLAN_OPTIONS>,
): Promise<void> {
  const wanted = readWanted(options);
  if (wanted?.kind === 'difference')
    throw new CallError('Of two displays plan for --half-width: their difference is what is measured.');
  const pair = readPair(options, bench, options.method);
  const find = lookup(bench);
  const setup = setupOfPair(pair, find);
  const ladder = wanted === undefined ? planPairLadder(setup) : undefined;
  const plan = ladder?.recommended ?? planPair(setup, wanted?.halfWidthMs ?? Number.POSITIVE_INFINITY);
  const method = bench.methods.find(({ id }) => id === pair.method);
  say(
    [
      `${find.display(pair.display).name} against ${find.display(pair.against).name}:`,
      ...(ladder === undefined
        ? [
            `${describeDesign(plan)} (${plan.runs * plan.readings} readings)`,
            ...(wanted === undefined ? [] : describePlan(plan, wanted)),
          ]
        : describeLadder(ladder)
      ).map((line) => `  ${line}`),
      `  How it is done, and what to take care of: “${method?.title ?? pair.method}”, ${method?.file.path ?? ''}.`,
    ].join('\n'),
  );
  if (options.write !== true) return;
  const { repeat = false } = options;
  const there = bench.plannedPairs.find(
    ({ method, display, against }) => method === pair.method && display === pair.display && against === pair.against,
  );
  if (there !== undefined && !repeat) return say(`\n${plannedAlready(there)}\n\nNothing to write.`);
  const id = newPairId(pair, await takenIds(root));
  const { front, readings } = renderPlannedPair(pair, plan);
  const files = [
    { path: `data/display-pairs/${id}.md`, text: front },
    { path: `data/display-pairs/${id}.csv`, text: readings },
  ];
  say(`\n${await writePlanned(root, files, options.dry)}`);
}
