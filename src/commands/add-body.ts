/** `npm run add-body`: a new body's file, and the sessions that make it comparable with what is published. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline/promises';
import { comparableConditions } from '../planning/comparable-conditions.ts';
import { renderNewBody } from '../planning/render-body.ts';
import { findSteering } from '../ingest/control-characters.ts';
import { parseDurationMs } from '../ingest/quantities.ts';
import { finishEarlier } from './finish-earlier.ts';
import { loadBench } from './load-bench.ts';
import { planConditions, readWanted, rigOf, WANTED_OPTIONS, WANTED_USAGE } from './plan-options.ts';
import { CallError, runCommand } from './run.ts';
import { say } from './say.ts';
import { describePlanned, planFiles, writePlanned } from './write-sessions.ts';
import { publicationFolder } from '../site/publication.ts';

const USAGE = `Usage: npm run add-body -- --name NAME --maker MAKER --model MODEL --rig RIG [...]

What is left out is asked for, where there is somebody to ask.

  --name NAME            as pages call it: "Fenn 3"
  --maker MAKER
  --model MODEL
  --rig RIG              the rig to measure it on
  --id ID                its file's name; from the name if left out
  --sensor-readout TIME  if it is known: "14 ms"
  --invented             it does not exist: pages that show it say so
  --most NUMBER          sessions to plan at the most (6)
  --seed NUMBER          draws their order (1)
  --dry                  say what would be written, and write nothing
${WANTED_USAGE}`;

const OPTIONS = {
  name: { type: 'string' },
  maker: { type: 'string' },
  model: { type: 'string' },
  rig: { type: 'string' },
  id: { type: 'string' },
  'sensor-readout': { type: 'string' },
  invented: { type: 'boolean' },
  most: { type: 'string' },
  seed: { type: 'string' },
  dry: { type: 'boolean' },
  ...WANTED_OPTIONS,
} as const;

await runCommand(USAGE, OPTIONS, async (options) => {
  const root = publicationFolder();
  const earlier = await finishEarlier(root);
  // most likely those that are asked for now: a second set would be a surprise
  if (earlier.length > 0) return;
  const bench = await loadBench(root);
  const ask = await asker();
  try {
    const name = options['name'] ?? (await ask('name', 'What do pages call it?'));
    const maker = options['maker'] ?? (await ask('maker', 'Who makes it?'));
    const model = options['model'] ?? (await ask('model', 'Which model is it?'));
    const rig = rigOf(
      bench,
      options['rig'] ?? (await ask('rig', `On which rig (${bench.rigs.map(({ id }) => id).join(', ')})?`)),
    );
    const id =
      options['id'] ??
      name
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-|-$/g, '');
    if (!/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(id))
      throw new CallError(`'${id}' cannot be an id; give one with --id, in lower-case letters, digits and hyphens.`);
    refuseSteering({ name, maker, model });
    const readout = options['sensor-readout'];
    if (readout !== undefined && parseDurationMs(readout) === undefined)
      throw new CallError(`--sensor-readout is a duration, such as "14 ms", not '${readout}'.`);
    const most = Number(options['most'] ?? '6');
    if (!Number.isInteger(most) || most < 1)
      throw new CallError(`--most is a whole number above 0, not '${options['most']}'.`);
    if (existsSync(join(root, 'data', 'bodies', `${id}.md`)))
      throw new CallError(`data/bodies/${id}.md is there already; choose another --id. Nothing was written.`);
    const wanted = readWanted(options);

    const conditions = comparableConditions(bench, rig, id, most);
    const planned = planConditions({ bench, rig, body: id, wanted }, conditions);
    const body = {
      path: `data/bodies/${id}.md`,
      text: renderNewBody({ name, maker, model, readout, invented: options['invented'] !== undefined }),
    };
    const { files, says } = planFiles({ bench, rig, body: id, planned, seed: options['seed'] });
    const written = await writePlanned(root, [body, ...files], options['dry']);
    if (planned.length === 0) {
      say(written);
      say(
        `Nothing has been measured on ${rig.id} yet that it could be compared with; plan its sessions with npm run plan -- --rig ${rig.id} --body ${id} --rate RATE.`,
      );
      return;
    }
    for (const [index, each] of planned.entries()) {
      say(
        `${describePlanned(each, wanted, bench)}\n  Measured on ${conditions[index]?.bodies} other ${conditions[index]?.bodies === 1 ? 'body' : 'bodies'}.\n`,
      );
    }
    say(`${says}\n\n${written}`);
  } finally {
    ask.close();
  }
});

/** A build would refuse the file. */
function refuseSteering(texts: Readonly<Record<string, string>>): void {
  for (const [option, text] of Object.entries(texts)) {
    const steering = findSteering(text);
    if (steering !== undefined)
      throw new CallError(
        `--${option} holds the character ${steering.name}, which steers terminals or turns the direction of text.`,
      );
  }
}

type Ask = ((option: string, question: string) => Promise<string>) & { close(): void };

/** Asks at a terminal; elsewhere, what is missing is a mistake in the call. */
async function asker(): Promise<Ask> {
  if (!process.stdin.isTTY) {
    return Object.assign(
      (option: string): Promise<string> => {
        throw new CallError(`--${option} is missing, and there is nobody to ask.\n\n${USAGE}`);
      },
      { close: () => undefined },
    );
  }
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  const ask = async (_option: string, question: string): Promise<string> => {
    for (;;) {
      const answer = (await terminal.question(`${question} `)).trim();
      if (answer !== '') return answer;
    }
  };
  return Object.assign(ask, { close: () => terminal.close() });
}
