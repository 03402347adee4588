/**
 * That a ledger which was changed by hand is found out, at its place; and that one which was not is what its entries
 * come to.
 */
import { describe, expect, it } from 'vitest';
import { compareWithLedger } from '../../src/ledger/compare.ts';
import { checkLedger } from '../../src/ledger/check.ts';
import { digestOfEntry } from '../../src/ledger/digest.ts';
import { earlierValues } from '../../src/ledger/history.ts';
import { recordOf } from '../../src/ledger/record.ts';
import { recordedState } from '../../src/ledger/state.ts';
import { replay } from '../../src/ledger/replay.ts';
import { statementsOf } from '../../src/ledger/statements.ts';
import { inputsOf } from '../../src/ledger/compare.ts';
import { compileRegister } from '../../src/site/compile.ts';
import type { ChainedEntry, Ledger } from '../../src/model/ledger.ts';
import { describeProblem } from '../../src/model/problem-text.ts';
import { CHAIN_CODES } from '../../src/model/problem.ts';
import { ledgerAfter, ledgerOf } from '../support/ledger.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const UHD = { rate: '24', resolution: 'uhd', 'audio-out': 'off' };
const a = session('a', UHD);
const slower = {
  ...a,
  readings: [reading(2, 800), reading(3, 310), reading(4, 305)],
  readingsFile: { ...a.readingsFile, sha256: '1'.repeat(64) },
};
const c = session('c', { ...UHD, rate: '25' });
const RECORDS = [
  { bench: bench([a]), date: '2026-03-01' },
  { bench: bench([slower]), date: '2026-04-01' },
  { bench: bench([slower, c]), date: '2026-05-01' },
];
const ledger = ledgerAfter(RECORDS);
const published = RECORDS[2]!.bench;
const [first, second, third] = ledger.chain as [ChainedEntry, ChainedEntry, ChainedEntry];
const said = new Set<string>();

/** What a strict build says of the ledger itself, without what moved; and that it refuses at all. */
function faultsOf(changed: Ledger): readonly string[] {
  const { faults } = replay(changed);
  for (const { code } of faults) said.add(code);
  const now = { ...published, ledger: changed };
  const refused = checkLedger(now, compareWithLedger(now, compileRegister(published)));
  expect(refused.slice(0, faults.length)).toEqual(faults);
  return faults.map(describeProblem);
}

const withEntries = (...chain: readonly ChainedEntry[]): Ledger => ({ ...ledger, chain });
const forged = (entry: ChainedEntry): ChainedEntry => ({ ...entry, says: digestOfEntry(entry) });
const TAKE_BACK =
  'Take its files back from version control; what is wrong in an entry is put right by a further record.';
const AGAIN =
  'Take the file back from version control, or let it be written again from the entries: npm run record -- --join.';

describe('a ledger that nobody touched', () => {
  it('is what its entries come to, whatever the order in which they are read', () => {
    expect(faultsOf(ledger)).toEqual([]);
    expect(faultsOf(withEntries(third, first, second))).toEqual([]);
    expect(replay(ledger).state).toEqual(recordedState(ledger));
    expect(replay(ledger).entries.map(({ date }) => date)).toEqual(['2026-05-01', '2026-04-01', '2026-03-01']);
  });

  it('says what every figure said, until when', () => {
    // the largest of 300, 310 and 305 ms, and of 800, 310 and 305 ms
    expect(earlierValues(ledger, 'maximum/a')).toEqual([{ text: '310 ms', until: '2026-04-01', entry: second.id }]);
  });

  it('takes what counts everything for a consequence where something was added, and not where readings changed', () => {
    const { entries } = replay(ledger);
    const quiet = (index: number, id: string) => entries[index]?.moved.find((move) => move.id === id)?.quiet;
    expect(entries[0]?.moved.find(({ id }) => id === 'count/sessions')).toEqual({
      id: 'count/sessions',
      from: '1',
      to: '2',
      quiet: 'follows',
    });
    expect(quiet(1, 'maximum/a')).toBeUndefined();
    // the same readings counted otherwise is no addition
    const excluded = { ...slower, readings: [...slower.readings.slice(0, 2), reading(4, 305, { excluded: 'why' })] };
    const counted = ledgerAfter([
      { bench: bench([slower]), date: '2026-03-01' },
      {
        bench: bench([{ ...excluded, readingsFile: { ...a.readingsFile, sha256: '4'.repeat(64) } }]),
        date: '2026-04-01',
      },
    ]);
    const [latest] = replay(counted).entries;
    expect(latest?.moved.find(({ id }) => id === 'count/excluded')).toEqual({
      id: 'count/excluded',
      from: '0',
      to: '1',
    });
  });
});

describe('is found out:', () => {
  it('a word of a reason', () =>
    expect(faultsOf(withEntries(first, { ...second, reason: 'Another' }, third))).toEqual([
      `${second.path}  it and ${second.id}.csv beside it do not say what was recorded. ${TAKE_BACK}`,
    ]));

  it('an old value in the table of an entry', () => {
    const changes = first.changes.map((change) =>
      change.id === 'maximum/a' && change.now ? { ...change, now: { ...change.now, text: '320 ms' } } : change,
    );
    expect(faultsOf(withEntries({ ...first, changes }, second, third))).toEqual([
      `${first.path}  it and ${first.id}.csv beside it do not say what was recorded. ${TAKE_BACK}`,
    ]);
  });

  it('a row of an entry that is left out', () => {
    const changes = second.changes.filter(({ id }) => id !== 'maximum/a');
    expect(faultsOf(withEntries(first, { ...second, changes }, third))[0]).toContain('do not say what was recorded');
  });

  it('an entry of another day', () =>
    expect(faultsOf(withEntries(first, { ...second, date: '2026-04-02' }, third))).toEqual([
      `${second.path}  it and ${second.id}.csv beside it do not say what was recorded. ${TAKE_BACK}`,
    ]));

  it('an entry of another day, with a digest that fits', () => {
    const dated = forged({ ...second, date: '2026-02-01' });
    expect(faultsOf(withEntries(first, dated, third))).toEqual([
      `${third.path}  follows an entry that is not here (${second.says.slice(0, 12)}). ${TAKE_BACK}`,
      `${dated.path}  date  is of 2026-02-01, and the entry before it of 2026-03-01. ${TAKE_BACK}`,
    ]);
  });

  it.each([
    ['first', [second, third], () => `${second.path}  follows an entry that is not here (${first.says.slice(0, 12)})`],
    ['middle', [first, third], () => `${third.path}  follows an entry that is not here (${second.says.slice(0, 12)})`],
  ] as const)('the %s entry, when it is removed', (_which, left, says) =>
    expect(faultsOf(withEntries(...left))).toEqual([`${says()}. ${TAKE_BACK}`]),
  );

  it('the last entry, when it is removed', () =>
    expect(faultsOf(withEntries(first, second))).toEqual([
      `content/ledger/inputs.csv  ledger  the last entry is not the one that was recorded last (${third.says.slice(0, 12)}). ${TAKE_BACK}`,
    ]));

  it('all entries, when they are removed', () =>
    expect(faultsOf(withEntries())[0]).toContain('the last entry is not the one that was recorded last'));

  it('an entry that was forged and put at the end', () => {
    const last = forged({ ...third, before: third.says, changes: [{ line: 2, id: 'total/none' }] });
    expect(faultsOf(withEntries(first, second, third, last))).toEqual(
      [
        `content/ledger/entries/${third.id}.csv:2  total/none  what it says to have changed was not so by the entries before it. ${TAKE_BACK}`,
        `content/ledger/inputs.csv  ledger  the last entry is not the one that was recorded last (${third.says.slice(0, 12)}). ${TAKE_BACK}`,
      ].toSorted((x, y) => Number(x.includes('.csv:')) - Number(y.includes('.csv:'))),
    );
  });

  it('two entries that follow the same one', () => {
    const other = forged({ ...third, id: 'other', path: 'content/ledger/entries/other.yaml', reason: 'Other' });
    expect(faultsOf(withEntries(first, second, third, other))[0]).toBe(
      `content/ledger/entries/other.yaml  follows the same entry as ${third.id} does, as where two branches both recorded. Join them: npm run record -- --join.`,
    );
  });

  it('a row that is missing, edited or made up in the list of figures', () => {
    const at = (id: string) => ledger.figures.find((figure) => figure.id === id)!;
    const { line } = at('maximum/a');
    expect(faultsOf({ ...ledger, figures: ledger.figures.filter(({ id }) => id !== 'maximum/a') })).toEqual([
      `content/ledger/figures.csv  maximum/a  is missing here; by the entries it is "800 ms". ${AGAIN}`,
    ]);
    const edit = (more: object) =>
      ledger.figures.map((figure) => (figure.id === 'maximum/a' ? { ...figure, ...more } : figure));
    expect(faultsOf({ ...ledger, figures: edit({ text: '700 ms' }) })).toEqual([
      `content/ledger/figures.csv:${line}  maximum/a  is "700 ms" here, and by the entries "800 ms". ${AGAIN}`,
    ]);
    expect(faultsOf({ ...ledger, figures: edit({ value: 801 }) })).toEqual([
      `content/ledger/figures.csv:${line}  maximum/a  is "800 ms (801)" here, and by the entries "800 ms (800)". ${AGAIN}`,
    ]);
    expect(
      faultsOf({ ...ledger, figures: [...ledger.figures, { id: 'total/z', text: '1 ms', files: '', line: 9 }] }),
    ).toEqual([`content/ledger/figures.csv:9  total/z  is "1 ms" here, and in no entry. ${AGAIN}`]);
  });

  it('a checksum that was edited, which would lay what moves at another door', () =>
    expect(faultsOf({ ...ledger, checksums: { ...ledger.checksums, 'data/sessions/a.csv': '2'.repeat(64) } })).toEqual([
      `content/ledger/inputs.csv  data/sessions/a.csv  is "${'2'.repeat(60)}…" here, and by the entries "${'1'.repeat(60)}…". ${AGAIN}`,
    ]));

  it('a row that went missing does not pass for a new one', () => {
    const now = { ...published, ledger: { ...ledger, figures: ledger.figures.filter(({ id }) => id !== 'maximum/a') } };
    expect(compareWithLedger(now, compileRegister(published)).added).toEqual([]);
  });
});

describe('a ledger in the form of before', () => {
  const told = [
    { id: 'x', date: '2026-02-01', reason: 'why', analysis: '1', causes: [], moved: [], gone: [], added: {} },
  ];
  const before = ledgerOf(RECORDS[0]!.bench, undefined, told);
  const withoutMore = { ...before, figures: before.figures.map(({ also: _, ...figure }) => figure) };

  it('is told of, with what to do', () =>
    expect(faultsOf(withoutMore)).toEqual([
      'content/ledger/figures.csv  was recorded in the form of before, in which nobody can see whether it was changed by hand. Record once, and it is brought into the present form; its entries stay: npm run record -- --reason "…" --date YYYY-MM-DD.',
    ]));

  it('opens a chain with its first record: the state as it was, on the day it was recorded, then what moved', () => {
    const { bench: now } = RECORDS[1]!;
    const register = compileRegister(now);
    const record = recordOf(
      withoutMore,
      statementsOf(now, register),
      inputsOf(now, register),
      { date: '2026-04-01', reason: 'Mistyped' },
      'content/ledger/entries',
    );
    expect(record?.entries.map(({ date, reason }) => [date, reason])).toEqual([
      ['2026-02-01', 'What was recorded so far, in the form that can be replayed.'],
      ['2026-04-01', 'Mistyped'],
    ]);
    const after: Ledger = { ...withoutMore, chain: record?.entries ?? [], head: record?.entries.at(-1)?.says ?? '' };
    expect(replay(after).faults.filter(({ code }) => !code.startsWith('row-'))).toEqual([]);
    expect(replay(after).state).toEqual(record?.state);
    expect(earlierValues(after, 'maximum/a')).toMatchObject([{ text: '310 ms', until: '2026-04-01' }]);
    // readers are told nothing new by the entry that opens the chain
    expect(replay(after).entries[1]).toMatchObject({ date: '2026-02-01', moved: [], added: {} });
    // its own entries are held from then on
    expect(replay({ ...after, told: [{ ...told[0]!, reason: 'Other' }] }).faults.map(({ code }) => code)).toContain(
      'entry-lost',
    );
  });
});

it('every fault of a chain was seen above', () =>
  expect(CHAIN_CODES.filter((code) => !said.has(code))).toEqual(['join-unrecorded']));
