/** `npm run import`: readings from a workbook → a session, with the workbook beside it as its source. */
import { readFile, stat } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { basename, extname, join } from 'node:path';
import { checksum } from '../ingest/files-in-hand.ts';
import { WORKBOOK_NAME, WORKBOOKS } from '../ingest/workbook-names.ts';
import { describeUnderstood } from '../import/describe-understood.ts';
import { describeMistakes, ImportError } from '../import/mistakes.ts';
import { readBook } from '../import/read-book.ts';
import { renderImported, renderImportedPair, type KeptWorkbook } from '../import/render-imported.ts';
import { understand, type Understood } from '../import/understand.ts';
import { METHODS, type Bench, type MethodId } from '../model/bench.ts';
import { problemsError } from '../model/problem-text.ts';
import { ProblemsError } from '../model/problem.ts';
import { newSessionId } from '../planning/planned-session.ts';
import { newPairId } from '../planning/render-pair.ts';
import { methodOfRig } from '../planning/setup-of-rig.ts';
import { benchInHand } from '../recompute/bench-in-hand.ts';
import { fromCaller, publicationFolder } from '../site/publication.ts';
import { finishEarlier } from './finish-earlier.ts';
import { gatherFiles } from './gather-files.ts';
import { readImportOptions, READING_OPTIONS, READING_USAGE } from './import-options.ts';
import { loadBench } from './load-bench.ts';
import { asksForPair, PAIR_OPTIONS, PAIR_USAGE, readPair, takenIds, withoutSession } from './pair-options.ts';
import { choose, conditionsOf, rigOf } from './plan-options.ts';
import { CallError, requireDay, runCommand, type CommandOptions } from './run.ts';
import { say } from './say.ts';
import type { NewFile } from './write-all.ts';
import { writePlanned } from './write-sessions.ts';

const USAGE = `Usage: npm run import -- FILE --body BODY --rig RIG --rate RATE --date DAY [--set SETTING=LEVEL ...] [...]

Reads one session, or one comparison of two displays, from a workbook (.xlsx, .xls, .ods) or from text in columns (.csv, .tsv), says what it understood
and what it converted, and writes the session with the workbook beside it. Try it with --dry first.

  --body BODY           the body that was measured
  --rig RIG             the rig it was measured on
  --rate RATE           its frame rate
  --set SETTING=LEVEL   any other setting; repeat for more
  --date YYYY-MM-DD     the day
  --method METHOD       two-timers, frame-count or instrument; what the rig is for if left out
  --firmware TEXT       --room TEXT       --warm-up TEXT
  --id ID               the session's name; from body and settings if left out
  --dry                 say what was understood and would be written, and write nothing

Two displays read against each other (side-by-side or mirrored-screen), instead of --body, --rig, --rate and --set:

${PAIR_USAGE}

${READING_USAGE}`;

const OPTIONS = {
  body: { type: 'string' },
  rig: { type: 'string' },
  rate: { type: 'string' },
  set: { type: 'string', multiple: true },
  date: { type: 'string' },
  method: { type: 'string' },
  firmware: { type: 'string' },
  room: { type: 'string' },
  'warm-up': { type: 'string' },
  id: { type: 'string' },
  dry: { type: 'boolean' },
  ...READING_OPTIONS,
  ...PAIR_OPTIONS,
} as const;

const IMPORTS_A_SESSION = ['body', 'rig', 'rate', 'set', 'firmware', 'warm-up'] as const;

const LIMIT_BYTES = 16 * 2 ** 20;

await runCommand(
  USAGE,
  OPTIONS,
  async (options, words) => {
    const [file, ...others] = words;
    if (file === undefined || others.length > 0) throw new CallError(`Name one file to import.\n\n${USAGE}`);
    const root = publicationFolder();
    const earlier = await finishEarlier(root);
    // most likely what is asked for now
    if (earlier.length > 0) return;
    const bench = await loadBench(root);
    const target = asksForPair(options)
      ? await pairTarget(root, bench, withoutSession(options, IMPORTS_A_SESSION))
      : sessionTarget(bench, options);
    const bytes = await read(file);
    const name = basename(file);
    try {
      const { separator, encoding } = options;
      const understood = understand(
        await readBook(bytes, { separator, encoding }),
        readImportOptions(options, target.method),
      );
      say(`${[describeUnderstood(name, understood), ...target.open].join('\n\n')}\n`);
      const files = await filesOf(root, target, understood, { name, bytes });
      await checkWhole(root, files, { name, understood });
      say(
        `The workbook is published with the session, whole: every sheet, and what its properties say of who wrote it.\n\n${await writePlanned(root, files, options['dry'])}`,
      );
    } catch (error) {
      if (error instanceof ImportError) throw new CallError(describeMistakes(name, error.mistakes));
      throw error;
    }
  },
  { takesWords: true },
);

/** What the readings become. */
interface Target {
  /** How they are read. */
  readonly method: MethodId;
  /** `data/sessions/desk`: where its two files go, but for their endings. */
  readonly path: string;
  /** What was not said of it, a sentence each. */
  readonly open: readonly string[];
  render(understood: Understood, workbook: KeptWorkbook): { readonly front: string; readonly readings: string };
}

type Options = CommandOptions<typeof OPTIONS>;

function sessionTarget(bench: Bench, options: Options): Target {
  const rig = rigOf(bench, options['rig']);
  const [condition] = conditionsOf(bench, options['rate'], options['set']);
  if (condition === undefined || /,/.test(options['rate'] ?? ''))
    throw new CallError('--rate is one frame rate: a session has one condition.');
  const { id: body } = choose('body', options['body'], bench.bodies);
  const { firmware, room } = options;
  const { settings } = condition;
  const described = { body, rig: rig.id, date: dayOf(options), settings, firmware, room, warmUp: options['warm-up'] };
  const { id: method } = choose(
    'method',
    options['method'] ?? methodOfRig(rig),
    METHODS.map((id) => ({ id })),
  );
  const id = idOf(options['id']) ?? newSessionId(body, condition, bench, new Set());
  return {
    method,
    path: `data/sessions/${id}`,
    open: unsaidSettings(bench, settings),
    render: (understood, workbook) => renderImported(understood, described, workbook),
  };
}

async function pairTarget(root: string, bench: Bench, options: Options): Promise<Target> {
  const pair = readPair(options, bench, options['method']);
  const described = { pair, date: dayOf(options), room: options['room'] };
  const id = idOf(options['id']) ?? newPairId(pair, await takenIds(root));
  return {
    method: 'two-timers',
    path: `data/display-pairs/${id}`,
    open: [],
    render: (understood, workbook) => renderImportedPair(understood, described, workbook),
  };
}

function unsaidSettings({ settings }: Bench, said: Readonly<Record<string, string>>): readonly string[] {
  const unsaid = settings.map(({ id }) => id).filter((id) => said[id] === undefined);
  if (unsaid.length === 0) return [];
  return [
    `Not said: ${unsaid.join(', ')}. What is not stated cannot be compared later; say it with --set, or in the session’s file.`,
  ];
}

function dayOf(options: Options): string {
  const date = options['date'] ?? '';
  requireDay(date, 'A session', USAGE.split('\n')[0] ?? '');
  return date;
}

function idOf(said: string | undefined): string | undefined {
  if (said !== undefined && !/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(said))
    throw new CallError(`'${said}' cannot be an id; give one with --id, in lower-case letters, digits and hyphens.`);
  return said;
}

async function read(file: string): Promise<Uint8Array> {
  const path = fromCaller(file);
  const status = await stat(path).catch(() => undefined);
  if (status === undefined) throw new CallError(`${file} is not there.`);
  if (!status.isFile()) throw new CallError(`${file} is no file.`);
  if (status.size > LIMIT_BYTES) throw new CallError(`${file} is larger than 16 MiB, more than any list of readings.`);
  return new Uint8Array(await readFile(path));
}

/** Its two files, and the workbook unless the same is kept already. */
async function filesOf(
  root: string,
  { path, render }: Target,
  understood: Understood,
  workbook: { readonly name: string; readonly bytes: Uint8Array },
): Promise<readonly NewFile[]> {
  const sha256 = checksum(workbook.bytes);
  const kept = await nameFor(root, workbook.name, sha256);
  const { front, readings } = render(understood, { name: kept.name, sha256 });
  return [
    { path: `${path}.md`, text: front },
    { path: `${path}.csv`, text: readings },
    ...(kept.isThere ? [] : [{ path: `${WORKBOOKS}/${kept.name}`, text: workbook.bytes }]),
  ];
}

/** Its own name as a name of the publication; with a number where another workbook has it. */
async function nameFor(root: string, file: string, sha256: string): Promise<{ name: string; isThere: boolean }> {
  const extension = extname(file).toLowerCase();
  const stem =
    basename(file, extname(file))
      .normalize('NFKD')
      .toLowerCase()
      .replaceAll('ß', 'ss')
      .replace(/\p{M}/gu, '')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'workbook';
  for (let number = 1; ; number += 1) {
    const name = `${stem}${number === 1 ? '' : `-${number}`}${extension}`;
    if (!WORKBOOK_NAME.test(name))
      throw new CallError(
        `${file} ends in ${extension === '' ? 'nothing' : extension}; save it as .xlsx, .xls, .ods, .csv, .tsv or .txt.`,
      );
    const path = join(root, WORKBOOKS, name);
    if (!existsSync(path)) return { name, isThere: false };
    if (checksum(new Uint8Array(await readFile(path))) === sha256) return { name, isThere: true };
  }
}

/** Reads the new session among all others, as a build will; what is wrong with a row is told by its place in the workbook. */
async function checkWhole(
  root: string,
  files: readonly NewFile[],
  { name, understood: { rows, table } }: { readonly name: string; readonly understood: Understood },
): Promise<void> {
  const all = new Map(await gatherFiles([join(root, 'data')]));
  const encoder = new TextEncoder();
  for (const { path, text } of files) if (typeof text === 'string') all.set(path, encoder.encode(text));
  try {
    benchInHand(all);
  } catch (error) {
    if (!(error instanceof ProblemsError)) throw error;
    const place = table.sheet.name === '' ? name : `${name}, sheet '${table.sheet.name}'`;
    throw problemsError(
      error.problems.map((problem) => {
        const row = problem.file.endsWith('.csv') ? rows[(problem.line ?? 1) - 2] : undefined;
        return row === undefined ? problem : { ...problem, file: place, line: row.row };
      }),
    );
  }
}
