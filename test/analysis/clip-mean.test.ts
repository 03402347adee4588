import { describe, expect, it } from 'vitest';
import { meanOfClips, type ClipsAndDay } from '../../src/analysis/clip-mean.ts';
import { halfWidthAbout, meanOf, varianceOf } from '../../src/analysis/distribution.ts';
import { estimateSession } from '../../src/analysis/estimate.ts';
import { withLevel } from '../../src/analysis/level-change.ts';
import type { SessionInput } from '../../src/analysis/session-input.ts';
import { DEFAULT_VARIATION, type Variation } from '../../src/analysis/variation.ts';
import { seededRandom } from '../../src/analysis/random.ts';
import { rate } from '../../src/model/rate.ts';
import { normalNoise } from '../support/normal-noise.ts';

const T = 16;
const GRID = { lowMs: 0, stepMs: 1, count: 100 };

/** Clips whose delays are known exactly, in cells. */
function exact(...cells: readonly number[]): ClipsAndDay {
  const clips = cells.map((cell) => Float64Array.from({ length: GRID.count }, (_, i) => Number(i === cell)));
  return meanOfClips(clips, { sdMs: 0, step: 0.05, probability: 1 }, T, GRID);
}

function meanOn(values: Float64Array, before: number): number {
  const sum = values.reduce((all, value) => all + value, 0);
  return values.reduce((all, value, i) => all + (value * (i - before)) / sum, 0);
}

describe('a buffer that starts a frame deeper in one clip of twenty', () => {
  it('is told from clips that agree: none of them, at 0.95³, or all, at 0.05³', () => {
    const { clips, day, before } = exact(40, 40, 40);
    expect(clips.reduce((all, value) => all + value, 0)).toBeCloseTo(0.95 ** 3 + 0.05 ** 3, 12);
    expect(meanOn(clips, 0)).toBeCloseTo(40, 9);
    const deeper = 0.05 ** 3 / (0.95 ** 3 + 0.05 ** 3);
    expect(meanOn(day, before)).toBeCloseTo(40 - deeper * T + 0.05 * T, 9);
  });

  it('is told from one that does not: the day lies at the others, and a twentieth of a frame on', () => {
    const { clips, day, before } = exact(40, 40 + T, 40);
    expect(meanOn(clips, 0)).toBeCloseTo(40 + T / 3, 9);
    expect(meanOn(day, before)).toBeCloseTo(40 + 0.05 * T, 9);
  });
});

describe('what sessions say of their day, drawn as the statement says (seed 611)', () => {
  const only = (size: number) => [{ size, weight: 1 }];
  const stated: Variation = {
    ...DEFAULT_VARIATION,
    knows: 'day',
    clip: {
      change: [
        { size: 0, weight: 0.5 },
        { size: 0.12, weight: 0.5 },
      ],
      step: [
        { size: 0.05, weight: 0.7 },
        { size: 0.5, weight: 0.3 },
      ],
    },
    day: { change: only(0), step: only(0) },
  };
  const random = seededRandom(611);
  const noise = normalNoise(random);
  const frameMs = 40;
  const sessions = Array.from({ length: 300 }, () => {
    const step = random.uniform() < 0.7 ? 0.05 : 0.5;
    const sdMs = random.uniform() < 0.5 ? 0 : 0.12 * frameMs;
    const offsets = [0, 0, 0].map(() => sdMs * noise() + (random.uniform() < step ? frameMs : 0));
    const input: SessionInput = {
      method: 'instrument',
      chain: { body: { rate: rate(25) }, display: { refresh: rate(60), sync: 'input' } },
      variation: stated,
      // what an edge takes: anything up to a frame, on top of the delay
      runs: offsets.map((offsetMs) => ({
        latenciesMs: Array.from({ length: 6 }, () => 100 + offsetMs + frameMs * random.uniform()),
      })),
    };
    const { value, errors, clipChanges } = estimateSession(input);
    const truthMs = 100 + frameMs / 2 + step * frameMs;
    const apart = withLevel(errors.clips, clipChanges, frameMs, 3);
    return {
      held: Math.abs(value - truthMs) <= halfWidthAbout(errors.day, 0, 0.95),
      uMs: Math.sqrt(varianceOf(errors.day)),
      apartMs: Math.sqrt(varianceOf(apart)),
      centreMs: meanOf(errors.day),
      offMs: value - truthMs,
      clipsOffMs: value + meanOf(errors.clips) - truthMs,
    };
  });
  const mean = (of: (session: (typeof sessions)[number]) => number): number =>
    sessions.reduce((sum, session) => sum + of(session) / sessions.length, 0);

  it('holds the day in 95 of 100', () => {
    // four standard deviations of a share of 0.95 among 300
    expect(Math.abs(mean(({ held }) => Number(held)) - 0.95)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / 300));
  });
  it('has its value in the middle of what is known of the day', () => {
    for (const { centreMs } of sessions) expect(Math.abs(centreMs)).toBeLessThan(1e-9);
  });
  it('comes nearer to the day than the mean of the clips that were read', () =>
    expect(mean(({ offMs }) => offMs ** 2)).toBeLessThan(mean(({ clipsOffMs }) => clipsOffMs ** 2)));
  it('is off by nothing on the mean', () => {
    const sd = Math.sqrt(mean(({ offMs }) => offMs ** 2));
    expect(Math.abs(mean(({ offMs }) => offMs))).toBeLessThan((4 * sd) / Math.sqrt(300));
  });
  it('is surer than the clips’ mean with how means of three clips scatter', () =>
    expect(mean(({ uMs }) => uMs)).toBeLessThan(mean(({ apartMs }) => apartMs)));
});
