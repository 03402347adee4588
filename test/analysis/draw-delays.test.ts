import { describe, expect, it } from 'vitest';
import { drawDelays } from '../../src/analysis/draw-delays.ts';
import { seededRandom } from '../../src/analysis/random.ts';
import { DEFAULT_VARIATION, type Level, type Variation } from '../../src/analysis/variation.ts';
import { rate } from '../../src/model/rate.ts';
import { setupOf } from '../support/rig-setup.ts';

const only = (size: number) => [{ size, weight: 1 }];
const stated = (knows: Level): Variation => ({
  ...DEFAULT_VARIATION,
  knows,
  clip: { change: only(0.1), step: only(0.2) },
  day: { change: only(0.25), step: only(0) },
});
const { chain } = setupOf(rate(25));

/** Mean and standard deviation of what the mean of 4 clips is off what the total speaks of, drawn 4000 times. */
function offBy(knows: Level): { readonly mean: number; readonly sd: number } {
  const random = seededRandom(29);
  const off = Array.from({ length: 4000 }, () => {
    const { clipsMs, meanMs } = drawDelays({ chain, variation: stated(knows) }, 4, random);
    return clipsMs.reduce((sum, ms) => sum + ms / 4, 0) - meanMs;
  });
  const mean = off.reduce((sum, x) => sum + x / off.length, 0);
  return { mean, sd: Math.sqrt(off.reduce((sum, x) => sum + (x - mean) ** 2 / off.length, 0)) };
}

describe('drawDelays', () => {
  // by hand, T_d 40 ms: a clip's 4 ms and a step of 40 ms in a fifth of them, of four clips; a day's 10 ms
  const CLIPS_MS = Math.sqrt((4 ** 2 + 40 ** 2 * 0.2 * 0.8) / 4);
  it.each([
    ['clips', 0],
    ['day', CLIPS_MS],
    ['condition', Math.hypot(CLIPS_MS, 10)],
  ] as const)('scatters clips about their %s by what is stated', (knows, sdMs) => {
    const { mean, sd } = offBy(knows);
    // five standard deviations of a mean, and of a standard deviation of 4000 draws that are nearly normal
    expect(Math.abs(mean)).toBeLessThanOrEqual((5 * sdMs) / Math.sqrt(4000) + 1e-9);
    expect(Math.abs(sd - sdMs)).toBeLessThanOrEqual((5 * sdMs) / Math.sqrt(8000) + 1e-9);
  });

  it('draws nothing where nothing is stated', () => {
    const random = seededRandom(1);
    expect(drawDelays({ chain }, 3, random)).toEqual({ clipsMs: [0, 0, 0], meanMs: 0 });
    expect(random.word()).toBe(seededRandom(1).word());
  });
});
