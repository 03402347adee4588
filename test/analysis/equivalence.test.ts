import { expect, it } from 'vitest';
import { estimateDifference } from '../../src/analysis/difference.ts';
import { testEquivalence } from '../../src/analysis/equivalence.ts';
import { budgetedMean } from '../support/budgeted.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { SLEEP_1, SLEEP_2 } from '../support/r-datasets.ts';
import { readReference } from '../support/r-reference.ts';

const r = readReference('difference');
const sleep = estimateDifference(budgetedMean(SLEEP_1), budgetedMean(SLEEP_2));
if (sleep.kind !== 'difference') throw new Error(sleep.reason);

/**
 * R: pairs of one-sided tests on sleep by the distribution of Behrens and Fisher; equivalent at 0.05 only at margin 4.
 */
it.each([
  [2, false],
  [3, false],
  [4, true],
])('two one-sided tests at a margin of %d', (margin, equivalent) => {
  const got = testEquivalence(sleep, margin);
  // convolved on cells of 1/24 of the standard uncertainty
  expectDigits(got.pLower, r(`tost.${margin}.lower`)[0] ?? 0, 1.7);
  expectDigits(got.pUpper, r(`tost.${margin}.upper`)[0] ?? 0, 1.4);
  expect(got.p).toBe(Math.max(got.pLower, got.pUpper));
  expect(got.equivalent).toBe(equivalent);
});

it('decides as the 90 % interval does, and its smallest margin is the far end of it', () => {
  const { interval, smallestMargin } = testEquivalence(sleep, 3);
  const half = r('behrens.sleep.half90')[0] ?? 0;
  expectDigits(sleep.value - interval.low, half, 2.5);
  expectDigits(interval.high - sleep.value, half, 2.5);
  expect(smallestMargin).toBe(-interval.low);
  expect(testEquivalence(sleep, smallestMargin * 1.000001).equivalent).toBe(true);
  expect(testEquivalence(sleep, smallestMargin * 0.999999).equivalent).toBe(false);
});

it.each([0, -1, Number.NaN, Infinity])('refuses a margin of %d', (margin) => {
  expect(() => testEquivalence(sleep, margin)).toThrow('a margin is above 0');
});

it('refuses a difference without uncertainty', () => {
  expect(() => testEquivalence({ value: 1, standardUncertainty: 0, errorTail: () => 0 }, 1)).toThrow(
    'equivalence needs an uncertainty above 0',
  );
});
