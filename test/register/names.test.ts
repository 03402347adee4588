/** That figures are named by what they are of: whatever joins them, and in whatever order files are read. */
import { expect, it } from 'vitest';
import { compileRegister } from '../../src/site/compile.ts';
import type { Bench, Session } from '../../src/model/bench.ts';
import { rate } from '../../src/model/rate.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const UHD = { rate: '24', resolution: 'uhd', 'audio-out': 'off' };
const later = (ms: number) => [reading(2, 300 + ms), reading(3, 311 + ms), reading(4, 305 + ms)];
const on = (one: Session, display: string): Session => ({ ...one, id: `${one.id}-${display}`, display });
const SESSIONS = [
  session('m-alba', UHD),
  session('m-alba-audio', { ...UHD, 'audio-out': 'on' }, { readings: later(40) }),
  session('m-alba-25', { ...UHD, rate: '25' }, { readings: later(-9) }),
  session('m-brae', UHD, { body: 'brae', readings: later(90) }),
];
const BOTH = [...SESSIONS.map((one) => on(one, 'screen')), on(session('m-alba', UHD, { readings: later(25) }), 'wall')];

/** A bench with two displays, its lists as read from files in this order. */
function site(sessions: readonly Session[], more: Partial<Bench> = {}): Bench {
  const small = bench(sessions);
  const wall = { ...small.displays[0]!, id: 'wall', name: 'Wall', refresh: rate(50) };
  return { ...small, displays: [...small.displays, wall], ...more };
}

/** What each figure is of, and the sign of its value. */
function named(of: Bench): ReadonlyMap<string, string> {
  const { figures } = compileRegister(of);
  return new Map(figures.map((figure) => [figure.id, `${JSON.stringify(figure.of)} ${Math.sign(figure.value)}`]));
}

const KINDS = /^(?:difference|ratio|verdict|effect|interaction|element|cost)\//;
const before = named(site(BOTH));

it('a body that joins takes no figure its name, and turns no sign round', () => {
  expect([...before.keys()].filter((id) => KINDS.test(id)).length).toBeGreaterThan(12);
  for (const id of ['aaa', 'zzz']) {
    const body = { ...site([]).bodies[0]!, id, name: id };
    const theirs = BOTH.filter((one) => one.body === 'alba-one').map((one) => ({
      ...one,
      id: `${id}-${one.id}`,
      body: id,
    }));
    const bodies = [...site([]).bodies, body].sort((x, y) => (x.id < y.id ? -1 : 1));
    const sessions = [...BOTH, ...theirs].sort((x, y) => (x.id < y.id ? -1 : 1));
    const after = named(site(sessions, { bodies }));
    expect([...before].filter(([name, of]) => KINDS.test(name) && after.get(name) !== of)).toEqual([]);
  }
});

it('the order in which sessions and displays come names nothing', () => {
  const displays = site([]).displays.toReversed();
  expect(new Map([...named(site(BOTH.toReversed(), { displays }))].sort())).toEqual(new Map([...before].sort()));
});
