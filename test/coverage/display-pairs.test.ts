import { describe, expect, it } from 'vitest';
import { estimateDisplayPair } from '../../src/analysis/display-pair.ts';
import { PAIR_ROWS, inputOf } from './pair-rows.ts';
import { worldRandom } from './world.ts';

/** Few for a test; `pair-rows.ts` says what more sessions of its first rows gave. */
const SESSIONS = 5;

describe('two displays side by side, on simulated benches', () => {
  it('the interval holds the truth as often as it says, over all rows', () => {
    const held = PAIR_ROWS.flatMap((row, index) => {
      const draw = worldRandom(31_000 + index);
      return Array.from({ length: SESSIONS }, () => {
        const { world, session } = row.draw(draw);
        const { value, expandedUncertainty } = estimateDisplayPair(inputOf(row, world, session));
        return Number(Math.abs(value - session.differenceMs) <= expandedUncertainty);
      });
    });
    const trials = held.length;
    // at a true coverage of 0.92, fewer than this happen once in ten thousand (normal approximation, 3.7 standard deviations)
    const fewest = 0.92 * trials - 3.7 * Math.sqrt(0.92 * 0.08 * trials);
    expect(trials).toBeGreaterThan(100);
    expect(held.reduce((sum, one) => sum + one, 0)).toBeGreaterThan(fewest);
  }, 120_000);

  it('would notice intervals half as wide', () => {
    const row = PAIR_ROWS.find(({ name }) => name.startsWith('both follow, observer 59.94'))!;
    const draw = worldRandom(77);
    let held = 0;
    for (let i = 0; i < 60; i += 1) {
      const { world, session } = row.draw(draw);
      const { value, expandedUncertainty } = estimateDisplayPair(inputOf(row, world, session));
      held += Number(Math.abs(value - session.differenceMs) <= expandedUncertainty / 2);
    }
    expect(held / 60).toBeLessThan(0.9);
  }, 60_000);
});
