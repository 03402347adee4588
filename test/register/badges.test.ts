import { expect, it } from 'vitest';
import type { Session } from '../../src/model/bench.ts';
import { badgesOf } from '../../src/register/badges.ts';
import { standingBodies } from '../../src/register/comparisons/standing.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const settings = { resolution: 'hd', rate: '24', 'audio-out': 'off' };
const [clips, clip] = [2, 1].map((runs) =>
  [0, 1, 2, 3, 4, 5, 6, 7].map((n) => reading(n + 2, 300 + 5 * (n % 2), { run: 1 + (n % runs) })),
);
/** One more millisecond a reading, eight of them: a slope that chance does not make. */
const creeping = [0, 1, 2, 3, 4, 5, 6, 7].map((n) => reading(n + 2, 300 + 10 * n + (n % 2), { run: 1 + (n % 2) }));
const of = (id: string, more: Partial<Session> = {}): Session =>
  session(id, settings, { readings: clips ?? [], ...more });

it('a session is called what sets it apart from an ordinary one', () => {
  const sessions = [
    of('ordinary', { firmware: '1.0' }),
    of('alike', { firmware: '1.0', date: '2026-01-03' }),
    of('short', { firmware: '1.0', date: '2026-01-03', cutShort: 'it got hot' }),
    of('creeping', { firmware: '1.0', date: '2026-01-01', readings: creeping }),
    of('newer', { firmware: '2.0', date: '2026-02-01' }),
    of('single', { firmware: '1.0', date: '2026-02-02', readings: clip ?? [] }),
  ];
  const badges = badgesOf(bench(sessions));
  expect(Object.fromEntries(sessions.map(({ id }) => [id, badges(id)]))).toEqual({
    ordinary: [],
    alike: [],
    short: ['cut short', 'repeated later'],
    creeping: ['drifting', 'repeated later'],
    newer: ['other firmware'],
    single: ['one clip only'],
  });
});

it('the firmware that most sessions of a body have is the usual one; of two, the later', () => {
  const badges = badgesOf(bench([of('old', { firmware: '1.0' }), of('new', { firmware: '2.0', date: '2026-02-01' })]));
  expect([badges('old'), badges('new')]).toEqual([['other firmware', 'repeated later'], []]);
});

it('the ordinary and then the latest session stands for a body in a condition, whatever its value', () => {
  const sessions = [
    of('first'),
    of('repeat', { date: '2026-02-01' }),
    of('short', { date: '2026-03-01', cutShort: 'it got hot' }),
    of('other', { body: 'brae', readings: clip ?? [] }),
  ];
  const ids = (some: readonly Session[]) => standingBodies(bench(some), some).map(({ id }) => id);
  expect(ids(sessions)).toEqual(['repeat', 'other']);
  expect(ids(sessions.slice(2))).toEqual(['short', 'other']);
});
