import { expect, it } from 'vitest';
import { betweenSessions } from '../../src/register/findings/inputs/between-sessions.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const AT_24 = { rate: '24', resolution: 'uhd', 'audio-out': 'off' };
const own = (first: number) => ({ readings: [0, 1, 2, 3].map((at) => reading(first + at, 300 + at)) });
const rulesOf = (...sessions: Parameters<typeof bench>[0]): readonly string[] =>
  betweenSessions(bench(sessions)).map(({ rule, where }) => `${rule} ${where['session']}`);

it('says nothing of sessions that have nothing wrong between them', () => {
  expect(rulesOf(session('a', AT_24, own(2)), session('b', AT_24, own(9)))).toEqual([]);
});

it('names a session whose readings are those of another', () => {
  expect(rulesOf(session('a', AT_24, own(2)), session('b', AT_24, own(2)))).toEqual(['copied-readings b']);
});

it('names a session that leaves a setting out', () => {
  expect(rulesOf(session('a', AT_24, own(2)), session('b', { rate: '24', resolution: 'uhd' }, own(9)))).toEqual([
    'setting-not-stated b',
  ]);
});

it.each(['1.4', 'v1.40', '1.40 beta'])('names a firmware 1.40 that is also written %s', (firmware) => {
  expect(
    rulesOf(session('a', AT_24, { ...own(2), firmware: '1.40' }), session('b', AT_24, { ...own(9), firmware })),
  ).toEqual(['firmware-spelling b']);
});

it('names a date far from any other', () => {
  const days = ['2026-01-02', '2026-01-03', '2062-01-02'];
  expect(rulesOf(...days.map((date, at) => session(`s${at}`, AT_24, { ...own(2 + 7 * at), date })))).toEqual([
    'date-apart s2',
  ]);
});
