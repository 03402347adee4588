/** `npm run record`: writes the published state of the numbers, and why it moved, into content/ledger/. */
import { mkdir, readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { compileSite } from '../site/compile.ts';
import { compareWithLedger, inputsOf, isUnchanged } from '../ledger/compare.ts';
import { describeChanges } from '../ledger/describe.ts';
import { entryName, entryOf } from '../ledger/entry.ts';
import { statementsOf } from '../ledger/statements.ts';
import { LEDGER } from '../ingest/read-ledger.ts';
import { renderEntry, renderFigures, renderInputs } from '../ingest/render-ledger.ts';
import { finishEarlier } from './finish-earlier.ts';
import { CallError, requireDay, runCommand } from './run.ts';
import { say } from './say.ts';
import { foldersOf, publicationFolder } from '../site/publication.ts';

const USAGE = `Usage: npm run record -- --reason TEXT --date YYYY-MM-DD

  --reason TEXT      why the numbers moved, for readers; it stands on the corrections page
  --date YYYY-MM-DD  the day of the record; nothing here reads a clock, so say it`;

await runCommand(
  USAGE,
  { reason: { type: 'string' }, date: { type: 'string' } },
  async ({ reason: given = '', date = '' }) => {
    const reason = given.trim().replace(/\s+/g, ' ');
    if (reason === '') throw new CallError(`A record needs a reason: --reason "why the numbers moved".\n\n${USAGE}`);
    requireDay(date, 'A record', USAGE);

    const root = publicationFolder();
    await finishEarlier(root);
    const folders = foldersOf(root);
    const { bench, register } = await compileSite(folders);
    const changes = compareWithLedger(bench, register);
    const folder = join(folders.contentDir, LEDGER.folder);
    const state = [
      [join(folder, LEDGER.inputs), renderInputs(inputsOf(bench, register))],
      [join(folder, LEDGER.figures), renderFigures(statementsOf(bench, register))],
    ] as const;
    const stale = await filter(state, async ([path, text]) => (await readText(path)) !== text);
    if (stale.length === 0) throw new CallError('Nothing to record: every number and every file is as recorded.');

    // The entry first: if this is cut short, running it again finishes the same record.
    const entry = isUnchanged(changes)
      ? undefined
      : await writeEntry(
          join(folder, LEDGER.entries),
          entryName(date, reason),
          renderEntry(entryOf(changes, reason, date, register.analysis)),
        );
    for (const [path, text] of stale) await writeWhole(path, text);
    say(
      entry === undefined
        ? 'No number moved; the checksums were brought up to date, without an entry.'
        : `${describeChanges(changes, { recorded: true })}\n\nRecorded in content/${LEDGER.folder}/${LEDGER.entries}/${entry}`,
    );
  },
);

/** Writes the entry under its name, or under the next one free; an equal one that is there already is that entry. */
async function writeEntry(folder: string, name: string, text: string): Promise<string> {
  for (let number = 1; ; number += 1) {
    const file = `${name}${number === 1 ? '' : `-${number}`}.yaml`;
    const there = await readText(join(folder, file));
    if (there === undefined) await writeWhole(join(folder, file), text);
    if (there === undefined || there === text) return file;
  }
}

/** All of a file or nothing. */
async function writeWhole(path: string, text: string): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  await writeFileAtomic(path, text);
}

async function readText(path: string): Promise<string | undefined> {
  return readFile(path, 'utf8').catch((error: unknown) => {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined;
    throw error;
  });
}

async function filter<T>(items: readonly T[], test: (item: T) => Promise<boolean>): Promise<readonly T[]> {
  const kept = await Promise.all(items.map(test));
  return items.filter((_, index) => kept[index]);
}
