import { describe, expect, it } from 'vitest';
import { estimateDifference } from '../../src/analysis/difference.ts';
import { planFurtherRuns, uncertaintyAfter, type RunPlan } from '../../src/analysis/further-runs.ts';
import { powerOfT } from '../support/power.ts';
import { decideVerdict } from '../../src/analysis/verdict.ts';
import { budgeted, budgetedMean } from '../support/budgeted.ts';
import { SLEEP_1, SLEEP_2 } from '../support/r-datasets.ts';

const apart = (value: number, u: number, df = Infinity): ReturnType<typeof estimateDifference> =>
  estimateDifference(budgeted(value, u, df), budgeted(0, 0));

describe('the rule', () => {
  // normal distribution: 1.96 u for "excludes zero", 1.645 u for equivalence
  it.each([
    [10, 5, 4, { kind: 'slower', withinMargin: false }],
    [-10, 5, 4, { kind: 'faster', withinMargin: false }],
    [9.7, 5, 4, undefined],
    [0.5, 1, 4, { kind: 'same', margin: 4 }],
    [-2.3, 1, 4, { kind: 'faster', withinMargin: true }],
    [2.4, 1.3, 4, undefined],
    [0, 2.5, 4, undefined],
  ])('a difference of %d with uncertainty %d at a margin of %d', (value, u, margin, expected) => {
    const got = decideVerdict({ difference: apart(value, u), margin });
    if (expected === undefined) expect(got.kind).toBe('not-settled');
    else expect(got).toEqual(expected);
  });

  it('sleep at a margin of 3 is not settled, at 4 the same (R: p 0.079 of no difference; 0.056 and 0.0054 of equivalence)', () => {
    const difference = estimateDifference(budgetedMean(SLEEP_1), budgetedMean(SLEEP_2));
    expect(decideVerdict({ difference, margin: 3 }).kind).toBe('not-settled');
    expect(decideVerdict({ difference, margin: 4 })).toEqual({ kind: 'same', margin: 4 });
  });

  it('adjusted p-values take the place of its own', () => {
    expect(decideVerdict({ difference: apart(10, 5), margin: 4, pDifference: 0.09 }).kind).toBe('not-settled');
    expect(decideVerdict({ difference: apart(0.5, 1), margin: 4, pEquivalence: 0.2 }).kind).toBe('not-settled');
  });

  it('passes on why there is nothing to judge by', () => {
    expect(decideVerdict({ difference: apart(5, 0), margin: 4 })).toEqual({
      kind: 'not-estimable',
      reason: 'no-scatter',
    });
  });

  it('says that nothing was planned where nobody said what averages over runs', () => {
    expect(decideVerdict({ difference: apart(3, 5), margin: 4 })).toEqual({
      kind: 'not-settled',
      furtherRuns: { kind: 'out-of-reach', reason: 'no-plan' },
    });
  });
});

describe('further runs', () => {
  const side = { standardUncertainty: 1, degreesOfFreedom: 9, runs: 10 };
  const nothing = { standardUncertainty: 0, degreesOfFreedom: Infinity };
  const plan: RunPlan = { sides: [side, side], fixed: nothing };

  it('ten runs a side at σ = √10 and a difference of 0.5·√10 need 64 in all (R, power.t.test: n 63.77)', () => {
    // equal sides: Welch and Satterthwaite give 2n − 2 degrees of freedom, as power.t.test has
    expect(planFurtherRuns(0.5 * Math.sqrt(10), plan, 0.1)).toEqual({
      kind: 'runs',
      each: 54,
      as: 'difference',
      power: 0.8,
    });
    expect(uncertaintyAfter(plan, 54).degreesOfFreedom).toBeCloseTo(126, 9);
    expect(powerOfT({ kind: 'two-sample', sided: 2, alpha: 0.05, standardDeviation: 1 }, 64, 0.5)).toBeGreaterThan(0.8);
  });

  // Normal errors: seen with probability 0.8 once D/u is z₀.₉₇₅ + z₀.₈ = 2.8016, so that u² is at most (3/2.8016)² =
  // 1.1466.
  const known = (standardUncertainty: number) => ({ standardUncertainty, degreesOfFreedom: Infinity });
  const withDays = (ofRuns: number, ofDays: number, runs: number): RunPlan => ({
    sides: [
      { ...known(ofRuns), runs },
      { ...known(ofRuns), runs },
    ],
    fixed: known(Math.SQRT2 * ofDays),
    otherDays: { sides: [known(Math.hypot(ofRuns, ofDays)), known(Math.hypot(ofRuns, ofDays))], fixed: known(0) },
  });
  it('asks for other days where runs leave what days differ by: 2/(1 + m) ≤ 1.1466 for m = 1', () =>
    expect(planFurtherRuns(3, withDays(0, 1, 3), 0.1)).toMatchObject({ kind: 'sessions', each: 1, as: 'difference' }));
  it('and for runs where those are less work: 8/(1 + m) + 0.02 ≤ 1.1466 for m = 7', () =>
    expect(planFurtherRuns(3, withDays(2, 0.1, 1), 0.1)).toMatchObject({ kind: 'runs', each: 7, as: 'difference' }));

  it('shows sameness where the difference is small against the margin', () => {
    const got = planFurtherRuns(0, plan, 3);
    expect(got).toMatchObject({ kind: 'runs', as: 'sameness' });
    if (got.kind !== 'runs') return;
    // normal theory: (z.95 + z.90)·u = margin at u = 3/2.926; t asks for no less, and no more than two runs on top
    const normal = 20 / (3 / (1.6448536 + 1.2815516)) ** 2 - 10;
    expect(got.each).toBeGreaterThanOrEqual(Math.ceil(normal));
    expect(got.each).toBeLessThanOrEqual(Math.ceil(normal) + 2);
  });

  it('no number of runs beats an uncertainty that they do not average', () => {
    const fixed = { standardUncertainty: 5, degreesOfFreedom: Infinity };
    expect(planFurtherRuns(3, { ...plan, fixed }, 4)).toEqual({ kind: 'out-of-reach', reason: 'too-many' });
  });

  it('one run is enough where the plan is nearly there', () => {
    expect(planFurtherRuns(100, plan, 4)).toMatchObject({ each: 1, as: 'difference' });
  });
});
