import { describe, expect, it } from 'vitest';
import { compileRegister } from '../../src/site/compile.ts';
import { correctionsOf, earlierValues } from '../../src/ledger/history.ts';
import { kindLabel, nameStatement } from '../../src/views/statement-name.ts';
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
