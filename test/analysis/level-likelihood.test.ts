import { describe, expect, it } from 'vitest';
import { logLikelihoodOfSizes } from '../../src/analysis/level-likelihood.ts';
import { NODES, SIZES_BEFOREHAND } from '../../src/analysis/size-grid.ts';
import { normalClip } from '../support/normal-clips.ts';
import { readReference } from '../support/r-reference.ts';

function nodeOf(clipChange: number, clipStep: number, dayChange: number, dayStep: number): number {
  const { clip, day } = SIZES_BEFOREHAND;
  const wanted = [
    clip.change.findIndex(({ size }) => size === clipChange),
    clip.step.findIndex(({ size }) => size === clipStep),
    day.change.findIndex(({ size }) => size === dayChange),
    day.step.findIndex(({ size }) => size === dayStep),
  ];
  return NODES.findIndex((node) => node.every((place, kind) => place === wanted[kind]));
}

describe('casks within batches, as clips within days', () => {
  const r = readReference('variation');
  const [batches, means] = [r('casks.batch'), r('casks.mean')];
  // two measurements each
  const u = r('residual')[0]! / Math.SQRT2;
  const days = [...Map.groupBy(means, (_, i) => batches[i]!).values()].map((casks) =>
    casks.map((mean) => normalClip(mean, u)),
  );
  const logs = logLikelihoodOfSizes({ frameMs: r('frame')[0]!, days });
  const ours = r('sizes.clip').map((clip, i) => logs[nodeOf(clip, 0, r('sizes.day')[i]!, 0)]!);
  const theirs = r('restricted');

  it('have the restricted likelihood that R computes from the normal density', () => {
    const best = theirs.indexOf(Math.max(...theirs));
    const compared = theirs.flatMap((value, i) => (theirs[best]! - value < 12 ? [i] : []));
    expect(compared.length).toBeGreaterThan(10);
    // The grid adds up to (T_d/32)²/4 = 0.009 to a variance of at least 0.34 + (0.25 · 6)² = 2.6, in 29 contrasts.
    const tolerance = ((29 / 2) * 0.009) / 2.6 + 0.05;
    for (const i of compared)
      expect(Math.abs(ours[i]! - ours[best]! - (theirs[i]! - theirs[best]!))).toBeLessThan(tolerance);
  });

  it('have their highest likelihood at the sizes next to those that lme4 fits', () => {
    // Bates, lme4: Mixed-effects modeling with R, 2.2: 2.904 between casks and 1.287 between batches, with T_d = 6
    const [casks, batch] = [2.904 / 6, 1.287 / 6];
    const best = ours.indexOf(Math.max(...ours));
    expect([r('sizes.clip')[best], r('sizes.day')[best]]).toEqual([0.5, 0.25]);
    expect(Math.abs(0.5 - casks)).toBeLessThan(0.02);
    expect(Math.abs(0.25 - batch)).toBeLessThan(0.04);
  });
});

describe('a step by a whole frame', () => {
  // Two clips one T_d apart, readings exact to 0.05 T_d; by hand: steps of probability p give p(1 − p) for each order.
  const steps = logLikelihoodOfSizes({ frameMs: 20, days: [[normalClip(100, 1), normalClip(120, 1)]] });
  it('with probability p is as likely as p(1 − p) says', () => {
    const ratio = Math.exp(steps[nodeOf(0, 0.5, 0, 0)]! - steps[nodeOf(0, 0.2, 0, 0)]!);
    expect(ratio).toBeCloseTo(0.25 / 0.16, 6);
    expect(steps[nodeOf(0, 0.2, 0, 0)]).toBeCloseTo(steps[nodeOf(0, 0.8, 0, 0)]!, 6);
  });
  it('explains what no small change does', () => {
    expect(steps[nodeOf(0, 0.5, 0, 0)]! - steps[nodeOf(0.06, 0, 0, 0)]!).toBeGreaterThan(20);
  });
  it('between days shows on days alone', () => {
    const days = logLikelihoodOfSizes({
      frameMs: 20,
      days: [
        [normalClip(100, 1), normalClip(100, 1)],
        [normalClip(120, 1), normalClip(120, 1)],
      ],
    });
    expect(days[nodeOf(0, 0, 0, 0.5)]! - days[nodeOf(0, 0.5, 0, 0)]!).toBeGreaterThan(1);
  });
});

it('says nothing of days from one day, and nothing at all from one clip', () => {
  const oneDay = logLikelihoodOfSizes({ frameMs: 20, days: [[normalClip(100, 1), normalClip(104, 2)]] });
  const clip = nodeOf(0.25, 0, 0, 0);
  for (const change of [0.06, 0.25, 1]) expect(oneDay[nodeOf(0.25, 0, change, 0.2)]).toBeCloseTo(oneDay[clip]!, 12);
  expect(oneDay[nodeOf(0.5, 0, 0, 0)]).not.toBeCloseTo(oneDay[clip]!, 2);
  expect(new Set(logLikelihoodOfSizes({ frameMs: 20, days: [[normalClip(100, 1)]] }))).toEqual(new Set([0]));
});
