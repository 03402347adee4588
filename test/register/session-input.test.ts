import { describe, expect, it } from 'vitest';
import { lookup } from '../../src/register/lookup.ts';
import { sessionInput } from '../../src/register/session-input.ts';
import { bench, reading, session } from '../support/small-bench.ts';

/** A timer of 100 s that starts again during the clip. */
const STAMPS_MS = [92_000, 97_000, 1_500, 6_000];
const rows = STAMPS_MS.map((sourceMs, i) => reading(2 + i, 300 + i, { sourceMs, shownMs: sourceMs - 300 - i }));

describe('sessionInput', () => {
  it.each([
    { order: 'in the order of time', readings: rows, unwrapped: [92_000, 97_000, 101_500, 106_000] },
    { order: 'the other way round', readings: [...rows].reverse(), unwrapped: [106_000, 101_500, 97_000, 92_000] },
  ])('unwraps stamps of rows $order', ({ readings, unwrapped }) => {
    const one = session('a', { rate: '24' }, { readings });
    const whole = bench([one]);
    const rigs = whole.rigs.map((rig) => ({
      ...rig,
      ...(rig.sourceTimer && { sourceTimer: { ...rig.sourceTimer, wrapsAfterMs: 100_000 } }),
    }));
    const input = sessionInput(one, lookup({ ...whole, rigs }));
    expect(input.runs).toEqual([{ sourceMs: unwrapped, latenciesMs: readings.map(({ latencyMs }) => latencyMs) }]);
  });
});
