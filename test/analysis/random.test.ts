import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/analysis/random.ts';

describe('seededRandom', () => {
  it('gives the 10 000th word that ISO C++ [rand.predef] publishes for mt19937 with its default seed', () => {
    const random = seededRandom(5489);
    for (let i = 1; i < 10_000; i += 1) random.word();
    expect(random.word()).toBe(4_123_659_995);
  });

  it('stays within [0, 1) and repeats for equal seeds', () => {
    const [a, b] = [seededRandom(7), seededRandom(7)];
    for (let i = 0; i < 2_000; i += 1) {
      const value = a.uniform();
      expect(value).toBe(b.uniform());
      expect(value).toBeGreaterThanOrEqual(0);
      expect(value).toBeLessThan(1);
    }
  });

  it.each([-1, 1.5, 2 ** 32, NaN])('refuses %s as a seed', (seed) => {
    expect(() => seededRandom(seed)).toThrow(/a seed is an integer/);
  });
});
