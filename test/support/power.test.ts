import { describe, expect, it } from 'vitest';
import { noncentralTLowerTail, noncentralTUpperTail } from '../../src/analysis/noncentral-t.ts';
import { detectableDifference, powerOfT, readingsForHalfWidth, sampleSizeOfT, type TestPlan } from './power.ts';
import { expectDigits } from './log-relative-error.ts';
import { readReference } from './r-reference.ts';

const r = readReference('power');

describe('noncentral t', () => {
  /** mpmath 1.2.1, quadrature at 25 digits. */
  it.each([
    ['P(T < 2; 10, 1)', noncentralTLowerTail(2, 10, 1), 0.807611562530375],
    ['P(T < 1; 5, 2)', noncentralTLowerTail(1, 5, 2), 0.158135643556918],
    ['P(T < t₀.₉₇₅(18); 18, 2)', noncentralTLowerTail(2.1009220402409605, 18, 2), 0.526690956897836],
    ['P(T > t₀.₉₇₅(38); 38, √10)', noncentralTUpperTail(2.02439416391197, 38, Math.sqrt(10)), 0.868952801692127],
    ['P(T < −t₀.₉₇₅(38); 38, √10)', noncentralTLowerTail(-2.02439416391197, 38, Math.sqrt(10)), 2.26031862717e-7],
  ])('%s', (what, got, expected) => expectDigits(got, expected, 11.5, what));

  it.each([0.3, 1, 2, 9, 100, 1e6])(
    'with noncentrality 0 and %d degrees of freedom it is the t distribution (at ν = 1, atan)',
    (nu) => {
      expectDigits(noncentralTUpperTail(0, nu, 0), 0.5, 14);
      if (nu === 1) expectDigits(noncentralTUpperTail(2, 1, 0), 0.5 - Math.atan(2) / Math.PI, 13);
    },
  );

  it('keeps its digits with few degrees of freedom and a large noncentrality (R, pt)', () => {
    expectDigits(noncentralTUpperTail(40, 1, 30), r('far.1.30')[0] ?? 0, 10);
    expectDigits(noncentralTLowerTail(20, 3, 25), r('far.3.25')[0] ?? 0, 9);
  });

  it('of infinite degrees of freedom is normal', () => {
    expectDigits(noncentralTUpperTail(1.959963984540054, Infinity, 1.959963984540054), 0.5, 15);
  });

  it('refuses what lies outside its domain', () => {
    expect(() => noncentralTUpperTail(Infinity, 5, 1)).toThrow('noncentral t needs finite arguments');
    expect(() => noncentralTUpperTail(1, 0, 1)).toThrow('degrees of freedom are above 0');
  });
});

const two: TestPlan = { kind: 'two-sample', sided: 2, alpha: 0.05, standardDeviation: 1 };
const one: TestPlan = { ...two, kind: 'one-sample' };

describe('power.t.test in R (test/reference/power.R)', () => {
  it.each([
    ['power.20.1', powerOfT(two, 20, 1)],
    ['power.20.1.strict', powerOfT(two, 20, 1, true)],
    ['power.5.1', powerOfT(two, 5, 1)],
    ['power.10.1', powerOfT(two, 10, 1)],
    ['power.10.0.5', powerOfT(two, 10, 0.5)],
    ['power.one.20.0.5', powerOfT(one, 20, 0.5)],
    ['n.90.1', sampleSizeOfT(two, 1, 0.9)],
    ['n.90.1.one-sided', sampleSizeOfT({ ...two, sided: 1 }, 1, 0.9)],
    ['n.80.0.2', sampleSizeOfT(two, 0.2, 0.8)],
    ['n.80.0.5', sampleSizeOfT(two, 0.5, 0.8)],
    ['n.80.0.8', sampleSizeOfT(two, 0.8, 0.8)],
    ['n.one-sample.one-sided', sampleSizeOfT({ ...one, sided: 1 }, 1, 0.9)],
    ['delta.20', detectableDifference(two, 20, 0.8)],
    ['delta.10', detectableDifference(two, 10, 0.8)],
    ['delta.one.5', detectableDifference(one, 5, 0.8)],
  ])('%s', (name, got) => expectDigits(got, r(name)[0] ?? 0, 9, name)); // R's own noncentral t is good to about 1e-12

  it('NIST/SEMATECH e-Handbook 7.2.2.2 asks for 11 readings where exact power asks for 10.08', () => {
    expect(Math.ceil(sampleSizeOfT({ ...one, sided: 1 }, 1, 0.9) ?? 0)).toBe(11);
  });
});

it('scales: power depends on difference over standard deviation', () => {
  expectDigits(powerOfT({ ...two, standardDeviation: 8 }, 20, -8), powerOfT(two, 20, 1), 15);
});

it('two are enough for a difference of a hundred standard deviations, and none are for no difference', () => {
  expect(sampleSizeOfT(two, 100, 0.8)).toBe(2);
  expect(sampleSizeOfT(two, 0, 0.8)).toBeUndefined();
  expect(sampleSizeOfT(two, 1e-9, 0.8)).toBeUndefined();
});

/** t₀.₉₇₅(n−1)/√n in R 4.2.2: 0.5142 at n = 17, 0.4973 at 18; 0.5774 at 14, 0.5538 at 15. */
it.each([
  [0.5, 18],
  [0.515, 17],
  [0.56, 15],
  [100, 2],
])('a half-width of %d standard deviations takes %d readings', (width, n) =>
  expect(readingsForHalfWidth(1, width)).toBe(n),
);

it.each([
  () => powerOfT(two, 1, 1),
  () => powerOfT({ ...two, standardDeviation: 0 }, 9, 1),
  () => powerOfT({ ...two, alpha: 0.5 }, 9, 1),
  () => sampleSizeOfT(two, 1, 1),
  () => sampleSizeOfT(two, 1, 0.05),
  () => detectableDifference(two, 9, Number.NaN),
  () => readingsForHalfWidth(0, 1),
])('refuses a plan that makes no sense: %s', (plan) => expect(plan).toThrow(RangeError));
