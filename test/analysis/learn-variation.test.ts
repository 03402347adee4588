import { describe, expect, it } from 'vitest';
import {
  countRepeats,
  disagreement,
  DISAGREES,
  learnVariation,
  levelKnown,
  type SessionClips,
} from '../../src/analysis/learn-variation.ts';
import { SIZES_BEFOREHAND, type LevelSizes } from '../../src/analysis/size-grid.ts';
import type { Sizes } from '../../src/analysis/variation.ts';
import { normalClip } from '../support/normal-clips.ts';

const T = 20;

/** A session whose clips have these delays, in T_d. */
function session(body: string, condition: string, day: string, ...delays: readonly number[]): SessionClips {
  return { body, condition, day, frameMs: T, clips: delays.map((delay) => normalClip(100 + T * delay, 1)) };
}

/** Conditions measured on two days that differ by `apart` T_d, up and down in turn. */
function repeated(body: string, apart: number, count = 4): readonly SessionClips[] {
  return Array.from({ length: count }, (_, i) => [
    session(body, `c${i}`, '1', 0, 0.02),
    session(body, `c${i}`, '2', (i % 2 ? -1 : 1) * apart, (i % 2 ? -1 : 1) * apart - 0.02),
  ]).flat();
}

const mean = (sizes: Sizes): number => sizes.reduce((sum, { size, weight }) => sum + size * weight, 0);

it('counts clips beyond the first of their day, and days beyond the first of their condition', () => {
  const sessions = [
    session('a', 'x', '1', 0, 0, 0),
    session('a', 'x', '1', 0, 0),
    session('a', 'x', '2', 0),
    session('a', 'y', '2', 0),
    session('b', 'x', '3', 0, 0),
  ];
  expect(countRepeats(sessions)).toEqual({ clips: 5, days: 1 });
});

it('speaks of no level that was not repeated often enough', () => {
  expect(levelKnown({ clips: 3, days: 3 })).toBe('clips');
  expect(levelKnown({ clips: 4, days: 3 })).toBe('day');
  expect(levelKnown({ clips: 0, days: 4 })).toBe('condition');
});

describe('sizes learnt', () => {
  it('of days follow how far days lie apart', () => {
    const near = learnVariation(repeated('a', 0.01)).bodies.get('a')!.day;
    const far = learnVariation(repeated('a', 0.5)).bodies.get('a')!.day;
    expect(mean(near.change)).toBeLessThan(0.08);
    expect(mean(far.change)).toBeGreaterThan(0.2);
  });

  it('of clips follow how far clips of a day lie apart, by whole frames or not', () => {
    const stepping = ['1', '0', '0', '1', '0', '1'].map((up, i) => session('a', `c${i}`, '1', 0, Number(up)));
    const { clip } = learnVariation(stepping).bodies.get('a')!;
    expect(clip.step.find(({ size }) => size === 0)!.weight).toBeLessThan(0.05);
    expect(mean(clip.change)).toBeLessThan(0.2);
  });

  it('of a body without repeats lean on those of other bodies, without becoming them', () => {
    const alone = learnVariation([session('b', 'x', '1', 0)]).bodies.get('b')!.day;
    const beside = learnVariation([...repeated('a', 0.5), session('b', 'x', '1', 0)]);
    const own = mean(beside.bodies.get('b')!.day.change);
    expect(own).toBeGreaterThan(mean(alone.change));
    expect(own).toBeLessThan(mean(beside.bodies.get('a')!.day.change) * 1.5);
    expect(mean(beside.others.day.change)).toBeCloseTo(own, 10);
  });

  it('depend neither on the order of sessions nor on a common shift', () => {
    const sessions = [...repeated('a', 0.2), ...repeated('b', 0.4, 2)];
    const { bodies } = learnVariation(sessions);
    const turned = learnVariation(sessions.toReversed()).bodies;
    const shifted = learnVariation(
      sessions.map((own) => ({ ...own, clips: own.clips.map((clip) => ({ ...clip, lowMs: clip.lowMs + 5 * T })) })),
    ).bodies;
    for (const other of [turned, shifted])
      for (const [body, { day, clip }] of bodies) {
        expect(mean(other.get(body)!.day.change)).toBeCloseTo(mean(day.change), 8);
        expect(mean(other.get(body)!.clip.step)).toBeCloseTo(mean(clip.step), 8);
      }
  });
});

describe('disagreement with what is stated', () => {
  const still: LevelSizes = {
    clip: { change: [{ size: 0, weight: 1 }], step: [{ size: 0, weight: 1 }] },
    day: { change: [{ size: 0, weight: 1 }], step: [{ size: 0, weight: 1 }] },
  };
  const known = repeated('a', 0, 2);

  it('is seen where days differ that should not', () => {
    const fresh = [session('a', 'c0', '3', 0.5, 0.5), session('a', 'c1', '3', -0.4, -0.4)];
    expect(disagreement(known, fresh, () => still)).toBeGreaterThan(DISAGREES);
  });
  it('is not seen in sessions as foretold, and is 1 where nothing was foretold', () => {
    const fresh = [session('a', 'c0', '3', 0, 0.02), session('a', 'c9', '3', 0)];
    expect(disagreement(known, fresh, () => still)).toBeLessThan(1);
    expect(disagreement(known, fresh, () => SIZES_BEFOREHAND)).toBeCloseTo(1, 10);
    expect(disagreement([], [session('a', 'c9', '3', 5)], () => still)).toBeCloseTo(1, 10);
  });
});
