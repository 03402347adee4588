import { describe, expect, it } from 'vitest';
import { differenceOf } from '../../src/analysis/difference-result.ts';
import { testEquivalence } from '../../src/analysis/equivalence.ts';
import {
  intervalAt,
  probabilityOfErrorAbove,
  probabilityOfErrorBelow,
  probabilityOfZero,
} from '../../src/analysis/error-tail.ts';
import { tUpperTail } from '../../src/analysis/distributions.ts';
import { expectDigits } from '../support/log-relative-error.ts';

describe('a rectangular error of half-width 3 (JCGM 100:2008, 4.3.7: u = 3/√3), by geometry', () => {
  const value = {
    value: 2,
    standardUncertainty: Math.sqrt(3),
    errorTail: (x: number) => Math.min(1, Math.max(0, (3 - x) / 6)),
  };

  it('has its own tails, interval and p', () => {
    expectDigits(probabilityOfErrorAbove(value, 2), 1 / 6, 14);
    expectDigits(probabilityOfErrorBelow(value, 2), 5 / 6, 14);
    expectDigits(probabilityOfZero(value), 1 / 3, 14);
    const { low, high } = intervalAt(value, 0.95);
    expectDigits(low, 2 - 2.85, 12); // 95 % of the width 6, about 2
    expectDigits(high, 2 + 2.85, 12);
  });

  it('is equivalent within 5 at 5 %, and not within 4.6', () => {
    expectDigits(testEquivalence(value, 4.7).smallestMargin, 4.7, 12); // 2 + 0.9·3
    expect(testEquivalence(value, 5).equivalent).toBe(true);
    expect(testEquivalence(value, 4.6).equivalent).toBe(false);
    expectDigits(testEquivalence(value, 4).pUpper, 1 / 6, 13); // P(error ≤ −2)
    expectDigits(testEquivalence(value, 4).pLower + 1, 1, 15); // P(error ≥ 6)
  });

  it('makes a difference whose p and interval agree', () => {
    expect(differenceOf({ ...value, value: 2.8 }, 0.95).interval.low).toBeLessThan(0);
    expect(differenceOf({ ...value, value: 2.8 }, 0.95).p).toBeGreaterThan(0.05);
    expect(differenceOf({ ...value, value: 2.9 }, 0.95).interval.low).toBeGreaterThan(0);
    expect(differenceOf({ ...value, value: 2.9 }, 0.95).p).toBeLessThan(0.05);
  });
});

it('a lopsided error has a lopsided interval: exponential with mean 1, less its mean', () => {
  const value = {
    value: 0,
    standardUncertainty: 1,
    errorTail: (x: number) => Math.min(1, Math.exp(-(x + 1))),
  };
  const { low, high } = intervalAt(value, 0.9);
  expectDigits(low, 1 + Math.log(0.05), 12);
  expectDigits(high, 1 + Math.log(0.95), 12);
});

it('Student’s t scaled by u has the t interval', () => {
  const got = intervalAt({ value: 3, standardUncertainty: 2, errorTail: (x) => tUpperTail(x / 2, 7) }, 0.95);
  // JCGM 100:2008, Table G.2: t of 95 % on 7 degrees of freedom is 2.36
  expect((got.high - got.low) / 4).toBeCloseTo(2.36, 2);
  expect(intervalAt({ value: 3, standardUncertainty: 0, errorTail: () => 0 }, 0.95)).toMatchObject({ low: 3, high: 3 });
});
