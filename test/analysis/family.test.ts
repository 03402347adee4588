import { describe, expect, it } from 'vitest';
import { rankWithTies } from '../../src/analysis/best.ts';
import { compareFamily } from '../../src/analysis/family.ts';
import { budgeted, budgetedMean } from '../support/budgeted.ts';
import { expectDigits } from '../support/log-relative-error.ts';
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
