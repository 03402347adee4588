/** `npm run plan`: how many clips and readings a session needs, and the empty sessions to fill in. */
import { finishEarlier } from './finish-earlier.ts';
import { loadBench } from './load-bench.ts';
import { CallError, runCommand } from './run.ts';
import { say } from './say.ts';
import {
  choose,
  conditionsOf,
  planConditions,
  readWanted,
  rigOf,
  WANTED_OPTIONS,
  WANTED_USAGE,
} from './plan-options.ts';
import { describePlanned, planFiles, WRITING_OPTIONS, WRITING_USAGE, writePlanned } from './write-sessions.ts';
import { asksForPair, PAIR_USAGE, withoutSession } from './pair-options.ts';
import { DISPLAY_PLAN_OPTIONS, planDisplays } from './plan-displays.ts';
import { publicationFolder } from '../site/publication.ts';
import type { Bench, Rig } from '../model/bench.ts';
import { completeSettings, type CompletedCondition } from '../planning/usual-settings.ts';
import { describeLevel } from '../register/level-words.ts';
import { lookup } from '../register/lookup.ts';

const USAGE = `Usage: npm run plan -- --rig RIG --rate RATE [--half-width MS | --difference MS] [...]

  --rig RIG            the rig to measure on
  --rate RATE          the frame rate of the body; several, separated by commas
${WANTED_USAGE}

To write the empty sessions as well:

  --body BODY          the body they are of
  --set SETTING=LEVEL  a setting; several levels, separated by commas, make a session of each; repeat for more settings
  --seed NUMBER        draws the order of the sessions (1)
${WRITING_USAGE}

A comparison of two displays, without any body, instead of a session:

${PAIR_USAGE}
  --method METHOD      side-by-side or mirrored-screen
  --write              write its empty pair of files as well`;

const OPTIONS = {
  rig: { type: 'string' },
  rate: { type: 'string' },
  ...WANTED_OPTIONS,
  body: { type: 'string' },
  set: { type: 'string', multiple: true },
  seed: { type: 'string' },
  ...WRITING_OPTIONS,
  ...DISPLAY_PLAN_OPTIONS,
} as const;

const PLANS_A_SESSION = ['rig', 'rate', 'body', 'set', 'seed'] as const;

await runCommand(USAGE, OPTIONS, async (options) => {
  const root = publicationFolder();
  const earlier = await finishEarlier(root);
  // most likely those that are asked for now: a second set would be a surprise
  if (earlier.length > 0) return;
  const bench = await loadBench(root);
  if (asksForPair(options)) return planDisplays(root, bench, withoutSession(options, PLANS_A_SESSION));
  const [stray] = (['write', 'method'] as const).filter((name) => options[name] !== undefined);
  if (stray !== undefined)
    throw new CallError(`--${stray} goes with --display and --against: it is of a comparison of two displays.`);
  const rig = rigOf(bench, options['rig']);
  const wanted = readWanted(options);
  const conditions = conditionsOf(bench, options['rate'], options['set']);
  if (options['body'] !== undefined) choose('body', options['body'], bench.bodies);
  const planned = planConditions({ bench, rig, body: options['body'] ?? '', wanted }, conditions);
  say(planned.map((each) => describePlanned(each, wanted, bench)).join('\n\n'));
  const { body, seed, dry, repeat } = options;
  if (body === undefined) return;
  const completed = planned.map((each) => ({ each, ...completeSettings(bench, rig.id, body, each.condition) }));
  const { files, says } = planFiles({
    bench,
    rig,
    body,
    planned: completed.map(({ each, condition, unstated }) => ({ ...each, condition, unstated })),
    seed,
    repeat,
  });
  // settings that were not said are the same in all conditions
  const unsaid = completed.slice(0, 1).flatMap((each) => describeUnsaid(bench, rig, each));
  say(`\n${[...unsaid, says].join('\n')}\n\n${await writePlanned(root, files, dry)}`);
});

/** What was not said with --set: how it is taken, and what stays open. */
function describeUnsaid(
  bench: Bench,
  rig: Rig,
  { condition, asUsual, unstated }: CompletedCondition,
): readonly string[] {
  const find = lookup(bench);
  const taken = asUsual.map((id) => describeLevel(find, id, condition.settings[id] ?? ''));
  return [
    ...(taken.length === 0
      ? []
      : [`Not said, so as in most sessions measured on ${rig.name}: ${taken.join(', ')}. For others, say --set.`]),
    ...(unstated.length === 0
      ? []
      : [
          `Not said, and stated by no measured session: ${unstated.join(', ')}. Say --set, or fill them in: what is not stated cannot be compared later.`,
        ]),
  ];
}
