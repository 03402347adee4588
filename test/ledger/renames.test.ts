/** What was renamed is known by its content: it keeps its history, and its old address leads on. */
import { describe, expect, it } from 'vitest';
import { checkLedger } from '../../src/ledger/check.ts';
import { compareWithLedger, isUnchanged } from '../../src/ledger/compare.ts';
import { earlierValues, firstDay, renamedIds } from '../../src/ledger/history.ts';
import { renamedId, renamesBetween } from '../../src/ledger/renames.ts';
import { replay } from '../../src/ledger/replay.ts';
import type { Session } from '../../src/model/bench.ts';
import { compileBench, compileRegister } from '../../src/site/compile.ts';
import { correctionsPage } from '../../src/views/corrections-page.ts';
import { movedPages } from '../../src/views/moved-pages.ts';
import { ledgerAfter } from '../support/ledger.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const UHD = { rate: '24', resolution: 'uhd', 'audio-out': 'off' };
const sum = (digit: string): string => digit.repeat(64);
/** A session whose files have content of their own. */
const own = (one: Session, digit: string): Session => ({
  ...one,
  file: { ...one.file, sha256: sum(digit) },
  readingsFile: { ...one.readingsFile, sha256: sum(`${Number(digit) + 1}`) },
});
const a = own(session('a', UHD), '1');
const b = own(session('b', { ...UHD, 'audio-out': 'on' }), '3');
const longer = {
  ...a,
  readings: [reading(2, 800), reading(3, 310), reading(4, 305)],
  readingsFile: { ...a.readingsFile, sha256: sum('7') },
};
const named = (one: Session, id: string): Session => ({
  ...one,
  id,
  file: { ...one.file, path: `data/sessions/${id}.md` },
  readingsFile: { ...one.readingsFile, path: `data/sessions/${id}.csv` },
});
const renamed = named(longer, 'attic-a');

const before = ledgerAfter([
  { bench: bench([a, b]), date: '2026-03-01' },
  { bench: bench([longer, b]), date: '2026-04-01' },
]);
const now = bench([renamed, b]);

describe('a session that was renamed', () => {
  const changes = compareWithLedger({ ...now, ledger: before }, compileRegister(now));

  it('is neither gone nor new', () => {
    expect(changes.renames).toEqual([{ from: 'data/sessions/a', to: 'data/sessions/attic-a' }]);
    expect(changes.renamed).toContainEqual({ id: 'total/attic-a', was: 'total/a' });
    expect(changes.renamed).toContainEqual({ id: 'difference/b/attic-a', was: 'difference/b/a' });
    expect([...changes.gone, ...changes.added]).toEqual([]);
    expect(isUnchanged(changes)).toBe(false);
  });

  it('has to be recorded, since its address is another', () =>
    expect(checkLedger({ ...now, ledger: before }, changes).map(({ code }) => code)).toContain('renamed-record'));

  it('keeps what its figures said before, over two renames', () => {
    const again = bench([named(longer, 'loft-a'), b]);
    const ledger = ledgerAfter(
      [
        { bench: now, date: '2026-05-01' },
        { bench: again, date: '2026-06-01' },
      ],
      before,
    );
    expect(replay(ledger).faults).toEqual([]);
    expect(earlierValues(ledger, 'maximum/loft-a')).toMatchObject([{ text: '310 ms', until: '2026-04-01' }]);
    expect(renamedIds(ledger).get('session/a')).toBe('session/loft-a');
    const site = compileBench({ ...again, ledger });
    expect(movedPages(site).map(({ from, to }) => `${from} → ${to}`)).toEqual([
      '/sessions/a/ → /sessions/loft-a/',
      '/sessions/attic-a/ → /sessions/loft-a/',
    ]);
    const [latest] = correctionsPage(site);
    expect(latest?.renamed.map(({ was, path }) => [was, path])).toEqual([['attic-a', '/sessions/loft-a/']]);
    expect(latest?.groups.map(({ title }) => title)).toEqual(['Behind the same words']);
  });

  it('leaves no address to lead on from where another session has it by now', () => {
    const taken = bench([renamed, b, own(session('a', { ...UHD, rate: '25' }), '5')]);
    const ledger = ledgerAfter(
      [{ bench: taken, date: '2026-05-01' }],
      ledgerAfter([{ bench: now, date: '2026-04-15' }], before),
    );
    expect(movedPages(compileBench({ ...taken, ledger }))).toEqual([]);
  });

  it('and had what was set corrected, moves for that and keeps its history', () => {
    const other = {
      ...renamed,
      room: '20 °C',
      settings: { ...UHD, resolution: 'hd' },
      file: { ...renamed.file, sha256: sum('9') },
    };
    const corrected = bench([other, b]);
    const { moved } = compareWithLedger({ ...corrected, ledger: before }, compileRegister(corrected));
    expect(moved.find(({ id }) => id === 'session/attic-a')).toMatchObject({ was: 'session/a' });
    expect(moved.find(({ id }) => id === 'session/attic-a')?.causes).toContainEqual({
      kind: 'changed',
      file: 'data/sessions/attic-a.md',
      own: true,
    });
  });
});

describe('a body and a rig that were renamed', () => {
  const [alba, brae] = bench([]).bodies;
  const [attic] = bench([]).rigs;
  const two = [a, b].map((one) => ({ ...one, body: 'alba-two', rig: 'loft' }));
  const called = <One extends { readonly file: { readonly path: string } }>(
    one: One,
    id: string,
    digit: string,
  ): One => ({
    ...one,
    id,
    file: { ...one.file, path: one.file.path.replace(/[^/]+$/, `${id}.md`), sha256: sum(digit) },
  });
  const places = (body: string, rig: string) => ({
    bodies: [called(alba!, body, '8'), brae!],
    rigs: [called(attic!, rig, '9')],
  });
  const old = ledgerAfter([{ bench: bench([a, b], places('alba-one', 'attic')), date: '2026-03-01' }]);
  const then = (sessions: readonly Session[]) => bench(sessions, places('alba-two', 'loft'));
  const moved = (sessions: readonly Session[]): readonly string[] =>
    compareWithLedger({ ...then(sessions), ledger: old }, compileRegister(then(sessions))).moved.map(({ id }) => id);

  it('move nothing, whatever names them: conditions, what is shared, families', () => {
    expect([alba?.id, attic?.id]).toEqual(['alba-one', 'attic']);
    expect(moved(two)).toEqual([]);
  });

  it('hide nothing that moved besides', () => {
    const [first, second] = two as [Session, Session];
    expect(moved([{ ...first, date: '2026-02-02' }, second])).toContain('session/a');
    expect(moved([{ ...first, body: 'brae' }, second])).toContain('session/a');
  });

  it('are told as renamed alone on the corrections page', () => {
    const ledger = ledgerAfter([
      { bench: bench([a, b], places('alba-one', 'attic')), date: '2026-03-01' },
      { bench: then(two), date: '2026-04-01' },
    ]);
    const [latest] = replay(ledger).entries;
    expect(latest?.moved).toEqual([]);
    expect(latest?.renamed).toContainEqual({ id: 'body/alba-two', was: 'body/alba-one' });
  });
});

describe('a rename', () => {
  const inputs = (checksums: Readonly<Record<string, string>>) => ({ analysis: '1', checksums });
  it.each([
    ['of a body', { 'data/bodies/a.md': sum('1') }, { 'data/bodies/b.md': sum('1') }, ['data/bodies/b']],
    [
      'of a report',
      { 'content/reports/a.mdx': sum('1') },
      { 'content/reports/b.mdx': sum('1') },
      ['content/reports/b'],
    ],
    ['is none where the content is another', { 'data/bodies/a.md': sum('1') }, { 'data/bodies/b.md': sum('2') }, []],
    [
      'is none where both are there',
      { 'data/bodies/a.md': sum('1') },
      { 'data/bodies/a.md': sum('1'), 'data/bodies/b.md': sum('1') },
      [],
    ],
    [
      'is none where two have that content',
      { 'data/bodies/a.md': sum('1') },
      { 'data/bodies/b.md': sum('1'), 'data/bodies/c.md': sum('1') },
      [],
    ],
    ['is none from one folder to another', { 'data/bodies/a.md': sum('1') }, { 'data/rigs/a.md': sum('1') }, []],
    [
      'of a session goes by its readings',
      { 'data/sessions/a.md': sum('1'), 'data/sessions/a.csv': sum('2') },
      { 'data/sessions/b.md': sum('3'), 'data/sessions/b.csv': sum('2') },
      ['data/sessions/b'],
    ],
  ] as const)('%s', (_what, recorded, then, to) =>
    expect(renamesBetween(inputs(recorded), inputs(then)).map((rename) => rename.to)).toEqual(to),
  );

  it('is known in ids that hold the name between others, where that id is there', () => {
    const renames = [{ from: 'data/bodies/fenn', to: 'data/bodies/dell-2' }];
    const there = new Set(['family/settings-dell-2-attic', 'family/settings-dell-2-3-attic']);
    const now = (id: string): string | undefined => renamedId(id, renames, (one) => there.has(one));
    expect(now('family/settings-fenn-attic')).toBe('family/settings-dell-2-attic');
    expect(now('family/settings-fennel-attic')).toBe(undefined);
    expect(now('family/settings-fenn-loft')).toBe(undefined);
  });

  it('reaches every part of an id, and families that a write-up asked for', () => {
    const renames = [
      { from: 'data/sessions/a', to: 'data/sessions/x' },
      { from: 'content/reports/r', to: 'content/reports/s' },
    ];
    const anywhere = (): boolean => true;
    expect(renamedId('verdict/report-r/a/b/within-8-ms', renames, anywhere)).toBe('verdict/report-s/x/b/within-8-ms');
    expect(renamedId('total/ab', renames, anywhere)).toBe(undefined);
    expect(renamedId('total/a', renames, () => false)).toBe(undefined);
  });
});

it('a report is told of since the first day that was recorded, whatever day it says now', () => {
  const report = {
    id: 'r',
    title: 'R',
    summary: 'r',
    text: '',
    parts: [],
    links: [],
    prose: [],
    ownNames: [],
    file: { path: 'content/reports/r.mdx', sha256: sum('1'), bytes: 1 },
  };
  const dated = (date: string) => bench([a, b], { reports: [{ ...report, date }] });
  const ledger = ledgerAfter([
    { bench: dated('2026-02-01'), date: '2026-03-01' },
    { bench: dated('2026-05-01'), date: '2026-05-02' },
  ]);
  expect(firstDay(ledger, { id: 'r', date: '2026-05-01' })).toBe('2026-02-01');
});
