import { expect, describe, it } from 'vitest';
import { estimateSession } from '../../src/analysis/estimate.ts';
import { continueSession, NEXT_READING_TRIALS } from '../../src/analysis/next-reading.ts';
import type { Setup } from '../../src/analysis/precision.ts';
import { rate } from '../../src/model/rate.ts';

describe('what the next reading buys', () => {
  const setup = (body: number, timer: number): Setup => ({
    chain: {
      body: { rate: rate(body) },
      source: { refresh: rate(timer) },
      display: { refresh: rate(60), sync: 'input' },
      observer: { rate: rate(240), readoutMs: 0, sourceRow: 0.5, displayRow: 0.5 },
    },
    method: 'two-timers',
    resolutionMs: 1,
  });
  const next = (of: Setup, counts: readonly number[]) => {
    const trials = Array.from({ length: NEXT_READING_TRIALS }, (_, trial) => continueSession(of, counts, trial));
    const mean = (way: keyof (typeof trials)[number]): number =>
      trials.reduce((sum, trial) => sum + estimateSession(trial[way]).expandedUncertainty, 0) / trials.length;
    return { nowMs: mean('nowMs'), sameClipMs: mean('sameClipMs'), newClipMs: mean('newClipMs') };
  };

  it('is a new clip where rates stay in step within one, so that its readings share their phase error', () => {
    // 30 against 60: locked for ever (1 / |2·30 − 60| is infinite)
    const { sameClipMs, newClipMs } = next(setup(30, 60), [6]);
    expect(newClipMs).toBeLessThan(0.95 * sameClipMs);
  });

  it('is a reading more of the same clip where there is but one of a body whose rate drifts through all phases', () => {
    const { nowMs, sameClipMs } = next(setup(24, 60), [1]);
    expect(sameClipMs).toBeLessThan(0.9 * nowMs);
  });

  it('cannot be said before there is one', () => {
    expect(() => continueSession(setup(24, 60), [], 0)).toThrow(RangeError);
    expect(() => continueSession(setup(24, 60), [3, 0], 0)).toThrow(RangeError);
  });
});
