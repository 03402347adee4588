/** `npm run record`: writes the published state of the numbers, and why it moved, into content/ledger/. */
import { checkLedgerFiles } from '../ingest/check-ledger-files.ts';
import { findSteering } from '../ingest/control-characters.ts';
import { LEDGER } from '../ingest/read-ledger.ts';
import { renderChanges, renderEntry, renderFigures, renderInputs } from '../ingest/render-ledger.ts';
import { inputsOf, inputsOfState } from '../ledger/compare.ts';
import { describeChanges } from '../ledger/describe.ts';
import { joinBranches } from '../ledger/join.ts';
import { lastDay, recordOf } from '../ledger/record.ts';
import { isEarlierForm, type State } from '../ledger/state.ts';
import { replay } from '../ledger/replay.ts';
import { statementsOf } from '../ledger/statements.ts';
import type { Bench } from '../model/bench.ts';
import { isInputId, type ChainedEntry } from '../model/ledger.ts';
import { problemsError } from '../model/problem-text.ts';
import type { Register } from '../register/register.ts';
import { compileRemembering } from 'lagfolio/site';
import { finishEarlier } from './finish-earlier.ts';
import { CallError, requireDay, runCommand } from './run.ts';
import { say } from './say.ts';
import { foldersOf, publicationFolder } from '../site/publication.ts';
import { whileWriting, type NewFile } from './write-all.ts';

const USAGE = `Usage: npm run record -- --reason TEXT --date YYYY-MM-DD
       npm run record -- --join

  --reason TEXT      why the numbers moved, for readers; it stands on the corrections page
  --date YYYY-MM-DD  the day of the record; nothing here reads a clock, so say it
  --join             after a merge of two branches that both recorded: puts their entries one after the other`;

const FOLDER = `content/${LEDGER.folder}`;
const ENTRIES = `${FOLDER}/${LEDGER.entries}`;
/** Files that are named where more were measured after their record. */
const LATER_SHOWN = 5;

await runCommand(
  USAGE,
  { reason: { type: 'string' }, date: { type: 'string' }, join: { type: 'boolean' } },
  async ({ reason: given, date, join: joins = false }) => {
    if (joins && (given !== undefined || date !== undefined))
      throw new CallError(`--join keeps the reasons and days of what was recorded, and takes none.\n\n${USAGE}`);
    if (!joins) checkCall(given, date);
    const root = publicationFolder();
    const finished = await finishEarlier(root);
    await whileWriting(root, async (write) => {
      const { bench, register } = await compileRemembering({ ...foldersOf(root), ledgerEntriesAlone: joins });
      if (joins) return await writeJoined(bench, register, write);
      const text = { reason: oneLine(given), date: date ?? '' };
      return await writeRecord(bench, register, text, write, finished.includes(`${FOLDER}/${LEDGER.figures}`));
    });
  },
);

type Write = (files: readonly NewFile[]) => Promise<void>;

async function writeRecord(
  bench: Bench,
  register: Register,
  text: { readonly reason: string; readonly date: string },
  write: Write,
  wasFinished: boolean,
): Promise<void> {
  const { ledger } = bench;
  const faults = ledger === undefined || isEarlierForm(ledger) ? [] : replay(ledger).faults;
  if (faults.length > 0) throw problemsError(faults);
  const last = lastDay(ledger);
  const record = recordOf(ledger, statementsOf(bench, register), inputsOf(bench, register), text, ENTRIES);
  if (record === undefined) {
    if (!wasFinished) throw new CallError('Nothing to record: every number and every file is as recorded.');
    say('Nothing more to record: what was cut short is recorded now.');
    return;
  }
  if (last !== undefined && text.date < last)
    throw new CallError(`The last record is of ${last}, and days never fall: --date ${last} or later.\n\n${USAGE}`);
  checkMeasuredBefore(bench, text.date);
  await writeLedger(write, record.entries, [], record.state, record.entries.at(-1)?.says ?? '');
  const what =
    describeChanges(record.changes, { recorded: true }) ||
    'Nothing that is published moved; which files changed is recorded.';
  const paths = record.entries.map(({ path }) => path);
  say(`${what}\n\nRecorded in ${paths.join(' and ')}`);
}

async function writeJoined(bench: Bench, register: Register, write: Write): Promise<void> {
  const { ledger } = bench;
  if (ledger === undefined || ledger.chain.length === 0)
    throw new CallError('Nothing to join: no entry of content/ledger/ was recorded in the form that can be joined.');
  const joined = joinBranches(ledger, statementsOf(bench, register), inputsOf(bench, register));
  if (joined.problems.length > 0) throw problemsError(joined.problems);
  const rewritten = joined.chain.filter((entry) => !ledger.chain.includes(entry));
  await writeLedger(write, rewritten, rewritten, joined.state, joined.chain.at(-1)?.says ?? '');
  say(
    rewritten.length === 0
      ? `The state was written again from the ${joined.chain.length} entries.`
      : `Joined; placed anew, one after the other: ${rewritten.map(({ path }) => path).join(', ')}`,
  );
}

/** What is recorded was measured by then: a later day is mistyped in the session or in the call. */
function checkMeasuredBefore({ sessions, displayPairs }: Bench, day: string): void {
  const later = [...sessions, ...displayPairs].filter(({ date }) => date > day);
  if (later.length === 0) return;
  const named = later.slice(0, LATER_SHOWN).map(({ file, date }) => `  ${file.path}  date  ${date}`);
  const more = later.length > LATER_SHOWN ? [`  and ${later.length - LATER_SHOWN} more`] : [];
  throw new CallError(
    [
      `Measured after ${day}, the day of this record:`,
      ...named,
      ...more,
      'Correct those days, or the one of the record.',
    ].join('\n'),
  );
}

/** All of it or nothing. */
async function writeLedger(
  write: Write,
  entries: readonly ChainedEntry[],
  replaced: readonly ChainedEntry[],
  state: State,
  head: string,
): Promise<void> {
  const rows = [...state.values()];
  const files = [
    ...entries.flatMap((entry) => {
      const replaces = replaced.includes(entry);
      return [
        { path: entry.path, text: renderEntry(entry), replaces },
        { path: entry.path.replace(/yaml$/, 'csv'), text: renderChanges(entry.changes), replaces },
      ];
    }),
    {
      path: `${FOLDER}/${LEDGER.figures}`,
      text: renderFigures(rows.filter(({ id }) => !isInputId(id))),
      replaces: true,
    },
    { path: `${FOLDER}/${LEDGER.inputs}`, text: renderInputs(inputsOfState(state), head), replaces: true },
  ];
  checkLedgerFiles(files);
  await write(files);
}

function checkCall(reason = '', date = ''): void {
  if (oneLine(reason) === '')
    throw new CallError(`A record needs a reason: --reason "why the numbers moved".\n\n${USAGE}`);
  const steering = findSteering(oneLine(reason));
  if (steering !== undefined)
    throw new CallError(`The reason holds the character ${steering.name}, which steers terminals; leave it out.`);
  requireDay(date, 'A record', USAGE);
}

function oneLine(text = ''): string {
  return text.trim().replace(/\s+/g, ' ');
}
