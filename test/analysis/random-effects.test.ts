import { describe, expect, it } from 'vitest';
import { fQuantile } from '../../src/analysis/distributions.ts';
import { estimateRandomEffects, estimateRandomEffectsOfSummaries } from '../../src/analysis/random-effects.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { MORLEY, SI_RSTV, SM_LS_01 } from '../support/nist-strd.ts';

describe('NIST StRD, one-way analysis of variance (certified values)', () => {
  it('SiRstv', () => {
    const got = estimateRandomEffects(SI_RSTV);
    expectDigits(got.between.sumOfSquares, 5.11462616e-2, 12, 'between SS');
    expectDigits(got.within?.sumOfSquares, 2.1663656e-1, 12, 'within SS');
    expectDigits(got.between.meanSquare, 1.27865654e-2, 12, 'between MS');
    expectDigits(got.within?.meanSquare, 1.0831828e-2, 12, 'within MS');
    expectDigits(got.f, 1.18046237440255, 12, 'F');
    expect([got.between.degreesOfFreedom, got.within?.degreesOfFreedom]).toEqual([4, 20]);
    // derived exactly from the data; p from R 4.2.2, pf(F, 4, 20, lower.tail = FALSE)
    expectDigits(got.betweenVariance, 0.00039094748, 10, 'between variance');
    expectDigits(got.p, 0.349447493402, 11, 'p');
    expectDigits(got.mean, 196.189156, 15, 'mean');
    expectDigits(got.standardUncertainty, 0.0226155392595445, 12, 'standard uncertainty'); // √(certified between MS/25)
  });

  it('SmLs01', () => {
    const got = estimateRandomEffects(SM_LS_01);
    expectDigits(got.between.sumOfSquares, 1.68, 13, 'between SS');
    expectDigits(got.within?.sumOfSquares, 1.8, 13, 'within SS');
    expectDigits(got.f, 21, 13, 'F');
    expect([got.between.degreesOfFreedom, got.within?.degreesOfFreedom]).toEqual([8, 180]);
  });
});

describe('JCGM 100:2008, H.5: a Zener voltage standard, ten days of five readings (Table H.9, µV above 10 V)', () => {
  const means = [172, 116, 13, 144, 106, 31, 60, 125, 163, 41];
  const standardDeviations = [60, 77, 111, 101, 67, 93, 80, 73, 88, 86];
  const got = estimateRandomEffectsOfSummaries(
    means.map((mean, i) => ({ n: 5, mean, standardDeviation: standardDeviations[i] })),
  );

  it("agrees with the table's own digits (R 4.2.2)", () => {
    expectDigits(got.mean, 97.1, 15, 'grand mean');
    expectDigits(got.within?.meanSquare, 7205.8, 13, 's_b²');
    expectDigits(got.between.meanSquare, 16296.0555557, 11, 's_a²');
    expectDigits(got.f, 2.26151927, 9, 'F');
    expectDigits(Math.sqrt(got.betweenVariance ?? Number.NaN), 42.638610568, 10, 'between-day component');
    expectDigits(got.standardUncertainty, 18.053285327, 10, 'u of the grand mean');
    expect(got.degreesOfFreedom).toBe(9);
  });

  it('prints as the standard prints: 57, 85, 128, 43 and 18 µV', () => {
    // 57 and 85 as quoted in Sandia National Laboratories' suncal; 128, 43 and 18 from memory
    expect((got.standardUncertainty * Math.sqrt(10)).toFixed(0)).toBe('57');
    expect(Math.sqrt(got.withinVariance ?? 0).toFixed(0)).toBe('85');
    expect(Math.sqrt(got.between.meanSquare).toFixed(0)).toBe('128');
    expect(Math.sqrt(got.betweenVariance ?? 0).toFixed(0)).toBe('43');
    expect(got.standardUncertainty.toFixed(0)).toBe('18');
  });

  it('is significant at 5 % and not at 2.5 %, as the standard concludes (from memory)', () => {
    expect(got.f).toBeGreaterThan(fQuantile(0.95, 9, 40));
    expect(got.f).toBeLessThan(fQuantile(0.975, 9, 40));
    expectDigits(got.p, 0.037396825, 7, 'p');
  });
});

it('NIST/SEMATECH e-Handbook 7.4.3: three levels of five', () => {
  const got = estimateRandomEffects([
    [6.9, 5.4, 5.8, 4.6, 4.0],
    [8.3, 6.8, 7.8, 9.2, 6.5],
    [8.0, 10.5, 8.1, 6.9, 9.3],
  ]);
  // printed: 27.897, 17.452, 9.59 and 0.00325; digits beyond those from R 4.2.2, anova(lm(y ~ level))
  expectDigits(got.between.sumOfSquares, 27.8973333333, 11);
  expectDigits(got.within?.sumOfSquares, 17.452, 12);
  expect(got.f?.toFixed(2)).toBe('9.59');
  expectDigits(got.p, 0.003248222601, 9);
});

it('NIST/SEMATECH e-Handbook 7.4.4: five batches of three', () => {
  const got = estimateRandomEffects([
    [74, 76, 75],
    [68, 71, 72],
    [75, 77, 77],
    [72, 74, 73],
    [79, 81, 79],
  ]);
  // R 4.2.2; the handbook prints 147.74 and 17.99, which are rounding artefacts
  expectDigits(got.between.sumOfSquares, 147.733333333, 11);
  expectDigits(got.within?.sumOfSquares, 18, 12);
  expectDigits(got.f, 20.518518519, 10);
  expectDigits(got.p, 8.246390332e-5, 9);
  expectDigits(got.betweenVariance, 11.711111111, 10);
  expectDigits(got.mean, 74.866666667, 10);
  expectDigits(got.standardUncertainty, 1.569146973, 9);
});

describe('R 4.2.2, datasets::morley as runs', () => {
  it('five runs of twenty: anova(lm(Speed ~ factor(Expt)))', () => {
    const got = estimateRandomEffects(MORLEY);
    expectDigits(got.between.sumOfSquares, 94514, 12);
    expectDigits(got.within?.sumOfSquares, 523510, 12);
    expectDigits(got.f, 4.28780252526217, 12);
    expectDigits(got.p, 0.00311444604745636, 12);
    expectDigits(got.betweenVariance, 905.893421053, 11);
    expectDigits(Math.sqrt(got.withinVariance ?? 0), 74.2336283563, 11);
    expectDigits(got.standardUncertainty, 15.3715646569, 11);
    expect(got.effectiveGroupSize).toBe(20);
    expect(got.mean).toBe(852.4);
  });

  it('runs of unequal size: rows 1–3, 25 and 50–57 dropped', () => {
    const dropped = new Set([1, 2, 3, 25, 50, 51, 52, 53, 54, 55, 56, 57]);
    const runs = MORLEY.map((run, i) => run.filter((_, j) => !dropped.has(20 * i + j + 1)));
    expect(runs.map((run) => run.length)).toEqual([17, 19, 12, 20, 20]);
    const got = estimateRandomEffects(runs);
    expectDigits(got.between.meanSquare, 30514.745168402, 12);
    expectDigits(got.within?.meanSquare, 5612.870988598, 12);
    expectDigits(got.f, 5.436566283, 9);
    expectDigits(got.p, 0.000615141937, 8);
    expectDigits(got.effectiveGroupSize, 17.471590909, 10);
    expectDigits(got.betweenVariance, 1425.278001836, 12);
    expectDigits(got.mean, 851.10227038, 10);
    expectDigits(got.standardUncertainty, 18.88558402, 9);
  });
});

it('reports a between-group variance below zero beside the clipped one', () => {
  // group means are equal: MSB 0, MSW 2, so (0 − 2)/2
  const got = estimateRandomEffects([
    [1, 3],
    [3, 1],
  ]);
  expect(got).toMatchObject({ betweenVariance: 0, betweenVarianceUnclipped: -1, f: 0, p: 1 });
});

it('one value in every group leaves the variance within unknown, and says so', () => {
  const got = estimateRandomEffects([[1], [2], [6]]);
  expect(got).toMatchObject({ mean: 3, within: undefined, f: undefined, p: undefined, betweenVariance: undefined });
  expectDigits(got.standardUncertainty, Math.sqrt(7 / 3), 15);
});

it('no scatter within groups gives no F', () => {
  expect(
    estimateRandomEffects([
      [1, 1],
      [2, 2],
    ]),
  ).toMatchObject({ f: undefined, p: undefined, betweenVariance: 0.5 });
});

it.each([
  [[]],
  [[[1, 2]]],
  [[[1], []]],
  [
    [
      [1, Number.NaN],
      [2, 3],
    ],
  ],
])('refuses %j', (groups: number[][]) => {
  expect(() => estimateRandomEffects(groups)).toThrow(RangeError);
});

it.each([
  [{ n: 0, mean: 1, standardDeviation: undefined }],
  [{ n: 2, mean: 1, standardDeviation: undefined }],
  [{ n: 1.5, mean: 1, standardDeviation: 1 }],
])('refuses a group summary of %j', (bad) => {
  expect(() => estimateRandomEffectsOfSummaries([{ n: 2, mean: 1, standardDeviation: 1 }, bad])).toThrow('group 2 has');
});
