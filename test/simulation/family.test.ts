/** How often families of comparisons and rankings are wrong, over thousands of seeded benches. */
import { describe, expect, it } from 'vitest';
import { rankWithTies } from '../../src/analysis/best.ts';
import { compareFamily } from '../../src/analysis/family.ts';
import { seededRandom } from '../../src/analysis/random.ts';
import { budgetedMean } from '../support/budgeted.ts';
import { normalNoise, shareTolerance } from '../support/normal-noise.ts';

/** Demonstrations of a few sessions, each mean of `n` normal readings: every pair compared. */
function demonstration(noise: () => number, truth: readonly number[], n: number): ReturnType<typeof compareFamily> {
  const values = truth.map((mean) => budgetedMean(Array.from({ length: n }, () => mean + 10 * noise())));
  const questions = values.flatMap((a, i) =>
    values.slice(i + 1).map((b, k) => ({ id: `${i} ${i + 1 + k}`, a, b, margin: 8 })),
  );
  return compareFamily(questions);
}

describe('by simulation, seeded; tolerances are four standard deviations of a share', () => {
  it('any slower or faster in at most 5.5 % of 2,000 demonstrations without true differences', () => {
    const noise = normalNoise(seededRandom(2026));
    let wrong = 0;
    for (let i = 0; i < 2000; i += 1) {
      const got = demonstration(noise, [0, 0, 0], 10);
      if (got.some(({ verdict }) => verdict.kind === 'slower' || verdict.kind === 'faster')) wrong += 1;
    }
    expect(wrong / 2000).toBeLessThanOrEqual(0.055);
    expect(wrong).toBeGreaterThan(0);
  });

  it('sameness declared falsely in at most 5.5 % at the margin, where it is declared most often', () => {
    const noise = normalNoise(seededRandom(1987));
    const trials = 3000;
    let wrong = 0;
    for (let i = 0; i < trials; i += 1) {
      const [got] = demonstration(noise, [8, 0], 40);
      if (got?.equivalence?.equivalent) wrong += 1;
    }
    expect(wrong / trials).toBeLessThanOrEqual(0.055);
    expect(Math.abs(wrong / trials - 0.05)).toBeLessThan(shareTolerance(0.05, trials));
  });

  it('the truly lowest entry is among those tied with the best in at least 95 % of demonstrations', () => {
    const noise = normalNoise(seededRandom(65));
    const trials = 300;
    let kept = 0;
    for (let i = 0; i < trials; i += 1) {
      const entries = [0, 1, 1, 2, 6].map((mean, k) => ({
        id: String(k),
        ...budgetedMean(Array.from({ length: 10 }, () => mean + 5 * noise())),
      }));
      if (rankWithTies(entries).find((entry) => entry.id === '0')?.tiedWithBest) kept += 1;
    }
    expect(kept / trials).toBeGreaterThan(0.95 - shareTolerance(0.95, trials));
  });
});
