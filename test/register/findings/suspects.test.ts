/** Readings that are most likely wrong, by rates written out here: a body at 24 frames/s and a timer at 60. */
import { describe, expect, it } from 'vitest';
import { suspectsOf } from '../../../src/register/findings/suspects.ts';
import { lookup } from '../../../src/register/lookup.ts';
import { compileSession } from '../../../src/register/session-figures.ts';
import type { Reading } from '../../../src/model/bench.ts';
import { bench, session } from '../../support/small-bench.ts';

/** Stamps on the grid of 1/60 s, cut to whole milliseconds: refresh n is shown as ⌊n · 1000/60⌋. */
const at = (refresh: number): number => Math.floor((refresh * 1000) / 60);
const time = (ms: number): string =>
  `00:${String(Math.floor(ms / 1000)).padStart(2, '0')}.${String(ms % 1000).padStart(3, '0')}`;

function typed(line: number, sourceMs: number, shownMs: number, run = 1): Reading {
  const [source, shown] = [time(sourceMs), time(shownMs)];
  return { line, run, sourceMs, shownMs, latencyMs: sourceMs - shownMs, cells: { source, shown } };
}

function suspectsIn(readings: readonly Reading[]) {
  const measured = session('a', { rate: '24' }, { readings });
  return suspectsOf(compileSession(measured, lookup(bench([measured]))));
}

/** Latencies of 9, 10 or 11 refreshes: 150 to 184 ms. The range is 1000/24 + 2 · 1000/60 + 2 · 1 = 77 ms. */
const GOOD = [
  [120, 111],
  [261, 251],
  [397, 386],
  [522, 513],
  [668, 658],
  [801, 790],
] as const;
const good = (count: number): readonly Reading[] =>
  GOOD.slice(0, count).map(([source, shown], index) => typed(index + 2, at(source), at(shown)));

describe('a reading is suspected', () => {
  it('of nothing where it is as the rates allow', () => expect(suspectsIn(good(6))).toEqual([]));

  it('already as the second, where it is too far from the first; one digit would make it a neighbour', () => {
    const [first] = good(1);
    // 4.350 − 3.183 = 1.167 s in place of 0.167: the seconds of the display misread
    const found = suspectsIn([first!, typed(3, at(261), at(251) - 1000)]).find(({ line }) => line === 3);
    // 1167 − 150 ms, over 1000/60 ms
    expect(found?.why.join(' ')).toMatch(
      /61\.0 refreshes of the timer\) from the reading before it; the rates allow 77\.0 ms/,
    );
    expect(found?.suits).toContain(`shown ${time(at(251))}`);
  });

  it('among others, where it alone is out of their range', () => {
    const wrong = typed(8, at(930), at(920) - 100);
    const found = suspectsIn([...good(6), wrong]);
    expect(found.map(({ line }) => line)).toEqual([8]);
    expect(found[0]?.suits).toContain(`shown ${time(at(920))}`);
  });

  it('where a stamp is off the grid of refreshes, though its latency is like the others’', () => {
    const wrong = typed(8, at(930), at(920) - 10);
    const found = suspectsIn([...good(6), wrong]);
    expect(found.map(({ line }) => line)).toEqual([8]);
    expect(found[0]?.why.join(' ')).toMatch(/off the grid of refreshes/);
    expect(found[0]?.suits).toContain(`shown ${time(at(920))}`);
  });

  it('of no more than it is: the first of a new clip has no neighbour yet', () =>
    expect(suspectsIn([...good(3), typed(5, at(90), at(70), 2)])).toEqual([]));
});
