import { describe, expect, it } from 'vitest';
import { readingMoments } from '../../src/analysis/moments.ts';

describe('moments to read at', () => {
  it('lie one in each stretch of the clip, in order', () => {
    for (let seed = 0; seed < 200; seed += 1)
      readingMoments(24_000, 8, seed).forEach((ms, index) => {
        expect(ms).toBeGreaterThanOrEqual(index * 3000);
        expect(ms).toBeLessThan((index + 1) * 3000);
      });
  });

  it('show every phase of a frame alike, where steps of a second show one for ever', () => {
    // 25 frames/s: 40 ms; the resultant of unit vectors is 1 for one phase and about 1/√n for n random ones (Rayleigh
    // test)
    const resultant = (moments: readonly number[]): number => {
      const angles = moments.map((ms) => (2 * Math.PI * ms) / 40);
      const sum = (of: (angle: number) => number): number => angles.reduce((total, angle) => total + of(angle), 0);
      return Math.hypot(sum(Math.cos), sum(Math.sin)) / moments.length;
    };
    const steps = Array.from({ length: 800 }, (_, index) => 1000 * index);
    const ours = Array.from({ length: 100 }, (_, seed) => readingMoments(24_000, 8, seed)).flat();
    expect(resultant(steps)).toBeCloseTo(1, 9);
    // exceeded by chance once in e⁹ sets of 800 random phases: P(R̄ > r) ≈ exp(−n r²)
    expect(resultant(ours)).toBeLessThan(Math.sqrt(9 / 800));
  });

  it('are the same for the same seed', () => {
    expect(readingMoments(9000, 5, 3)).toEqual(readingMoments(9000, 5, 3));
    expect(readingMoments(9000, 5, 3)).not.toEqual(readingMoments(9000, 5, 4));
  });

  it('take a length and a number', () => {
    expect(() => readingMoments(0, 5, 3)).toThrow(RangeError);
    expect(() => readingMoments(1000, 0, 3)).toThrow(RangeError);
  });
});
