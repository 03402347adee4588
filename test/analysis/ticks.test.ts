import { describe, expect, it } from 'vitest';
import { refreshAlternatives } from '../../src/analysis/refreshes.ts';
import { seededRandom } from '../../src/analysis/random.ts';
import { agreeingTicks } from '../../src/analysis/ticks.ts';

const REFRESH_MS = 1000 / 60;
const TOLERANCE = [1e-4, 1e-4] as const;

describe('refreshAlternatives', () => {
  it.each([1, 5, 10])('brackets the true refreshes for a step of %d ms', (resolutionMs) => {
    const random = seededRandom(resolutionMs);
    for (let trial = 0; trial < 20; trial += 1) {
      const start = random.between(0, 1000);
      const refreshes = Array.from({ length: 20 }, () => start + Math.floor(random.between(0, 900)) * REFRESH_MS);
      const stamps = refreshes.map((ms) => Math.floor(ms / resolutionMs) * resolutionMs);
      const found = refreshAlternatives(stamps.slice(0, 10), stamps.slice(10), REFRESH_MS, resolutionMs);
      const offsets = found.map(({ sourceMs }) => sourceMs[0]! - refreshes[0]!);
      // 256 starts are tried over one step, 8 kept: the truth lies between the outermost, or a cell or so beyond
      expect(Math.min(...offsets)).toBeLessThan(resolutionMs / 8);
      expect(Math.max(...offsets)).toBeGreaterThan(-resolutionMs / 8);
      for (const { sourceMs, shownMs, lastingMs } of found) {
        expect(lastingMs).toBe(REFRESH_MS);
        // every alternative keeps all refreshes on one grid
        for (const ms of [...sourceMs, ...shownMs])
          expect(
            Math.abs(Math.round((ms - sourceMs[0]!) / REFRESH_MS) * REFRESH_MS - (ms - sourceMs[0]!)),
          ).toBeLessThan(1e-6);
      }
    }
  });

  it('gives the grid up where stamps are on none', () => {
    const [only] = refreshAlternatives([100, 207.5], [3, 11], REFRESH_MS, 0.1);
    expect(only).toEqual({ sourceMs: [100, 207.5], shownMs: [3, 11], lastingMs: REFRESH_MS + 0.1 });
  });
});

describe('agreeingTicks', () => {
  it('keeps the true phase among those that agree, and only ticks inside their windows', () => {
    const random = seededRandom(8);
    const stepMs = 1001 / 30;
    for (let trial = 0; trial < 8; trial += 1) {
      const phase = random.between(0, stepMs);
      const ticks = Array.from({ length: 12 }, (_, i) => phase + (9 * i + Math.floor(random.between(0, 5))) * stepMs);
      const begins = ticks.map((ms) => ms - random.between(0, REFRESH_MS));
      const states = agreeingTicks(begins, REFRESH_MS, stepMs, TOLERANCE, 64, 0);
      expect(states.length).toBeGreaterThan(4);
      for (const state of states)
        state.forEach((inside, i) =>
          inside.forEach((ms) => expect(ms >= begins[i]! && ms < begins[i]! + REFRESH_MS).toBe(true)),
        );
      const firsts = states.map((state) => state[0]![0]! - ticks[0]!);
      expect(Math.min(...firsts)).toBeLessThan(0.5);
      expect(Math.max(...firsts)).toBeGreaterThan(-0.5);
    }
  });

  it('finds none where the windows contradict the rate', () => {
    expect(agreeingTicks([0, 1000, 2020], 10, 40, TOLERANCE, 64, 0)).toEqual([]);
  });
});
