import { describe, expect, it } from 'vitest';
import { compileRegister } from '../../src/site/compile.ts';
import { correctionsOf, earlierValues } from '../../src/ledger/history.ts';
import { kindLabel, nameStatement } from '../../src/views/statement-name.ts';
import { statementsShown } from '../../src/write-ups/statements-shown.ts';
import { parseReferences } from '../../src/ingest/references.ts';
import type { Figure } from '../../src/register/register.ts';
import type { WriteUp } from '../../src/model/bench.ts';
import type { LedgerEntry, Move } from '../../src/model/ledger.ts';
import { ledgerOf } from '../support/ledger.ts';
import { bench, session } from '../support/small-bench.ts';

const published = bench([
  session('a', { rate: '24', resolution: 'uhd', 'audio-out': 'off' }),
  session('b', { rate: '25', resolution: 'hd', 'audio-out': 'off' }, { body: 'brae' }),
]);
const register = compileRegister(published);
const entry = (date: string, ...moved: readonly Move[]): LedgerEntry => ({
  id: `${date}-why`,
  date,
  reason: 'why',
  analysis: '1',
  causes: [],
  moved,
  gone: [],
  added: {},
});
const later = entry('2026-03-01', { id: 'total/a', from: '2 ms', to: '3 ms' });
const sooner = entry(
  '2026-02-01',
  { id: 'total/a', from: '1 ms', to: '2 ms' },
  { id: 'mean/b', from: '9 ms', to: '8 ms' },
);
const ledger = ledgerOf(published, register, [later, sooner]);

it('keeps every earlier value of a figure, latest first, with the day until which it held', () => {
  expect(earlierValues(ledger, 'total/a')).toEqual([
    { text: '2 ms', until: '2026-03-01', entry: '2026-03-01-why' },
    { text: '1 ms', until: '2026-02-01', entry: '2026-02-01-why' },
  ]);
  expect(earlierValues(ledger, 'total/b')).toEqual([]);
  expect(earlierValues(undefined, 'total/a')).toEqual([]);
});

it('tells of a report what moved in it on the day it came out or later', () => {
  const told = (ids: readonly string[], since: string) =>
    correctionsOf(ledger, new Set(ids), since).map((correction) => [
      correction.entry.date,
      correction.moved.map(({ id }) => id),
    ]);
  expect(told(['total/a', 'mean/b'], '2026-02-01')).toEqual([
    ['2026-03-01', ['total/a']],
    ['2026-02-01', ['total/a', 'mean/b']],
  ]);
  expect(told(['mean/b'], '2026-02-01')).toEqual([['2026-02-01', ['mean/b']]]);
  expect(told(['mean/b'], '2026-02-02')).toEqual([]);
});

describe('what a report states', () => {
  const shownBy = (text: string): readonly string[] => {
    const refuse = (): never => {
      throw new Error('the text of a test must be MDX');
    };
    const report: WriteUp = {
      id: 'r',
      title: 'R',
      summary: 'r',
      date: '2026-01-05',
      ...parseReferences(text, refuse),
      file: published.settingsFile,
    };
    const asked = { ...published, reports: [report] };
    return [...statementsShown(report, asked, compileRegister(asked))].sort();
  };
  const [A, B] = [
    ['body/alba-one', 'session/a', 'total/a'],
    ['body/brae', 'session/b', 'total/b'],
  ];
  const BOTH = ['body/alba-one', 'body/brae', 'session/a', 'session/b'];

  it.each([
    ['<Figure id="frames/a" />', ['body/alba-one', 'frames/a', 'session/a']],
    ['<FigureTable ids={["total/b", "mean/b"]} caption="x" />', ['body/brae', 'mean/b', 'session/b', 'total/b']],
    ['<FigureChart kind="total" caption="x" />', [...BOTH, 'total/a', 'total/b']],
    ['<FigureChart kind="total" where={{ resolution: "hd" }} caption="x" />', B],
    ['<FigureTable kind="total" body="alba-one" caption="x" />', A],
    ['<Readings session="b" />', B],
    ['<Advice body="brae" rig="attic" />', B],
    ['<Difference of="a" than="b" />', [...BOTH, 'difference/a/b', 'verdict/report-r/a/b'].sort()],
    ['<Ratio of="a" than="b" />', [...BOTH, 'difference/a/b', 'ratio/a/b', 'verdict/report-r/a/b'].sort()],
    [
      '<DifferenceTable pairs={[["b", "a"]]} caption="x" />',
      [...BOTH, 'difference/b/a', 'verdict/report-r/b/a'].sort(),
    ],
    ['<Figure id="count/sessions" />', ['count/sessions']],
    ['<MethodNote of="two-timers" /> and no figure', []],
  ])('%s', (text, ids) => expect(shownBy(text)).toEqual(ids));

  it('with Effects, all that the settings of that body change on that rig', () => {
    const figure = (id: string, of: Record<string, string>): Figure => ({ ...register.figures[0]!, id, of });
    const figures = [
      figure('effect/alba-one/attic/x', { setting: 'x', body: 'alba-one', rig: 'attic' }),
      figure('effect/brae/attic/x', { setting: 'x', body: 'brae', rig: 'attic' }),
    ];
    const part = {
      name: 'Effects',
      line: 1,
      column: 1,
      attributes: { body: { known: true, value: 'brae' }, rig: { known: true, value: 'attic' } },
    } as const;
    expect([...statementsShown({ id: 'r', parts: [part] }, published, { figures })]).toEqual(['effect/brae/attic/x']);
  });
});

describe('the name of what moved', () => {
  const site = { bench: published, figure: (id: string) => register.figures.find((figure) => figure.id === id) };
  it.each([
    ['total/a', { name: 'Total latency, Alba One, 24 frames/s (a)', path: '/sessions/a/#total' }],
    ['session/b', { name: 'Session Brae, 25 frames/s (b)', path: '/sessions/b/' }],
    ['body/brae', { name: 'Body Brae', path: '/bodies/brae/' }],
    ['count/sessions/brae', { name: 'Sessions (sessions/brae)', path: '/data/#count-sessions-brae' }],
    ['total/gone', { name: 'Total latency (gone)', path: undefined }],
    ['session/gone', { name: 'Session gone', path: undefined }],
    ['no-such-kind/x/y', { name: 'No such kind (x/y)', path: undefined }],
  ])('%s', (id, name) => expect(nameStatement(id, site)).toEqual(name));

  it('of a kind is its label', () =>
    expect([kindLabel('mean'), kindLabel('body')]).toEqual(['Mean of the readings', 'Body']));
});
