import { describe, expect, it } from 'vitest';
import { varianceOf } from '../../src/analysis/distribution.ts';
import { withLevel } from '../../src/analysis/level-change.ts';
import { checkVariation, DEFAULT_VARIATION } from '../../src/analysis/variation.ts';

const POINT = { low: 0, step: 0.25, masses: [1] };
const only = (size: number) => [{ size, weight: 1 }];

describe('checkVariation', () => {
  it('accepts the default', () => {
    expect(() => checkVariation(DEFAULT_VARIATION)).not.toThrow();
  });

  it.each([
    { clip: { change: [{ size: 0, weight: 0.5 }], step: only(0) }, message: /clip\.change .*sum to 1, not to 0\.5/ },
    { clip: { change: only(-1), step: only(0) }, message: /clip\.change/ },
    { clip: { change: only(0), step: only(1.5) }, message: /clip\.step .*from 0 to 1/ },
  ])('refuses $message', ({ clip, message }) => {
    expect(() => checkVariation({ ...DEFAULT_VARIATION, clip })).toThrow(message);
  });
});

describe('withLevel', () => {
  it('adds the variance of a mean: sd²/n, and p(1 − p)/n of whole frames', () => {
    const variance = (change: number, step: number, count: number): number =>
      varianceOf(withLevel(POINT, [{ sdMs: 40 * change, step, probability: 1 }], 40, count));
    // step²/12 is what sorting into cells adds
    expect(variance(0.25, 0, 1)).toBeCloseTo(100, 0);
    expect(variance(0.25, 0, 4)).toBeCloseTo(25, 0);
    expect(variance(0, 0.5, 2)).toBeCloseTo((0.25 * 1600) / 2, 0);
    expect(variance(0, 0, 2)).toBe(0);
  });
});
