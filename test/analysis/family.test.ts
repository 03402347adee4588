import { describe, expect, it } from 'vitest';
import { rankWithTies } from '../../src/analysis/best.ts';
import { compareFamily } from '../../src/analysis/family.ts';
import { seededRandom } from '../../src/analysis/random.ts';
import { budgeted, budgetedMean } from '../support/budgeted.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { normalNoise, shareTolerance } from '../support/normal-noise.ts';
import { PLANT_GROWTH } from '../support/r-datasets.ts';
import { readReference } from '../support/r-reference.ts';

const r = readReference('multiple');
const plants = PLANT_GROWTH.map((weights, i) => ({ id: ['ctrl', 'trt1', 'trt2'][i] ?? '', ...budgetedMean(weights) }));
const PAIRS = [
  [1, 0],
  [2, 0],
  [2, 1],
] as const;

describe('PlantGrowth (R, test/reference/multiple.R)', () => {
  const got = compareFamily(
    PAIRS.map(([i, j]) => ({
      id: `${i}-${j}`,
      a: plants[i] ?? budgeted(0, 0),
      b: plants[j] ?? budgeted(0, 0),
      margin: 0.5,
    })),
  );

  it('own and Holm-adjusted p-values', () => {
    expect(got).toHaveLength(3);
    got.forEach((comparison, k) => {
      if (comparison.difference.kind !== 'difference') throw new Error(comparison.difference.reason);
      expectDigits(comparison.difference.p, r('PlantGrowth.behrens.unadjusted')[k] ?? 0, 2);
      expectDigits(comparison.pDifference, r('PlantGrowth.behrens.holm')[k] ?? 0, 2);
    });
  });

  it('verdicts follow the adjusted values: 0.048 alone is 0.096 in the family', () => {
    expect(got.map((comparison) => comparison.verdict.kind)).toEqual(['not-settled', 'not-settled', 'slower']);
  });

  it('simultaneous intervals are those of 1 − 0.05/3 (Bonferroni)', () => {
    for (const { difference, simultaneousInterval } of got) {
      if (difference.kind !== 'difference') throw new Error(difference.reason);
      expectDigits(simultaneousInterval?.level, 1 - 0.05 / 3, 15);
      expect(simultaneousInterval?.low).toBeLessThan(difference.interval.low);
      expect(simultaneousInterval?.high).toBeGreaterThan(difference.interval.high);
    }
  });
});

it('a comparison that cannot be judged takes no part in the adjustment', () => {
  const judged = { id: 'judged', a: budgeted(10, 3), b: budgeted(0, 4), margin: 1 };
  const bare = { id: 'bare', a: { value: 1, components: [] }, b: budgeted(0, 4), margin: 1 };
  const [first, second] = compareFamily([bare, judged]);
  expect(first).toMatchObject({
    pDifference: undefined,
    simultaneousInterval: undefined,
    verdict: { kind: 'not-estimable', reason: 'no-budget' },
  });
  expectDigits(second?.pDifference, 0.0455002638963584, 12); // two-sided normal p of 2: 2·(1 − Φ(2))
});

describe('which entries cannot be told from the best', () => {
  it('PlantGrowth, lowest first: ctrl is tied with trt1, trt2 is not (R, Holm-adjusted 0.28 and 0.039)', () => {
    const got = rankWithTies(plants);
    expect(got.map(({ id, tiedWithBest }) => [id, tiedWithBest])).toEqual([
      ['trt1', true],
      ['ctrl', true],
      ['trt2', false],
    ]);
    expectDigits(got[1]?.p, r('PlantGrowth.behrens.holm')[0] ?? 0, 2);
    expectDigits(got[2]?.p, r('PlantGrowth.behrens.holm')[2] ?? 0, 2);
    expect(got[0]?.p).toBeUndefined();
  });

  it('an entry without a budget counts as tied', () => {
    const got = rankWithTies([
      { id: 'a', ...budgeted(1, 0.1) },
      { id: 'b', value: 99, components: [] },
    ]);
    expect(got.map((entry) => entry.tiedWithBest)).toEqual([true, true]);
  });

  it('one entry is the best, none is none', () => {
    expect(rankWithTies([{ id: 'a', ...budgeted(1, 0.1) }])).toEqual([
      { id: 'a', value: 1, tiedWithBest: true, p: undefined },
    ]);
    expect(rankWithTies([])).toEqual([]);
  });
});

/** Demonstrations of nine sessions, each mean of `n` normal readings: every pair compared. */
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
      const got = demonstration(noise, [0, 0, 0, 0, 0], 10);
      if (got.some(({ verdict }) => verdict.kind === 'slower' || verdict.kind === 'faster')) wrong += 1;
    }
    expect(wrong / 2000).toBeLessThanOrEqual(0.055);
    expect(wrong).toBeGreaterThan(0);
  });

  it('sameness declared falsely in at most 5.5 % at the margin, where it is declared most often', () => {
    const noise = normalNoise(seededRandom(1987));
    const trials = 6000;
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
    const trials = 1000;
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
