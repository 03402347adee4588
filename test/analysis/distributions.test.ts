import { describe, expect, it } from 'vitest';
import {
  chiSquareQuantile,
  chiSquareUpperTail,
  coverageFactor,
  fQuantile,
  fUpperTail,
  normalLowerTail,
  normalQuantile,
  tQuantile,
  tTwoSided,
  tUpperTail,
} from '../../src/analysis/distributions.ts';
import { expectDigits } from '../support/log-relative-error.ts';

/** 15 digits from mpmath 1.2.1 at 40 digits; R 4.2.2 agrees to 1e-13. */
const T_QUANTILES: readonly (readonly [nu: number, q950: number, q975: number, q995: number])[] = [
  [1, 6.31375151467504, 12.7062047361747, 63.6567411628716],
  [2, 2.91998558035373, 4.30265272974946, 9.92484320091829],
  [3, 2.35336343480182, 3.18244630528371, 5.84090930973336],
  [4, 2.13184678632665, 2.77644510519779, 4.60409487134999],
  [5, 2.01504837333302, 2.57058183563632, 4.03214298355523],
  [9, 1.83311293265624, 2.26215716279821, 3.24983554159213],
  [10, 1.81246112281168, 2.22813885198628, 3.16927267261695],
  [16, 1.74588367627625, 2.11990529922126, 2.9207816224251],
  [19, 1.72913281152137, 2.09302405440831, 2.86093460646498],
  [20, 1.72471824292079, 2.08596344726587, 2.84533970978611],
  [29, 1.6991270265335, 2.0452296421327, 2.75638590367061],
  [49, 1.67655089261685, 2.00957523712924, 2.67995197363155],
  [50, 1.6759050251631, 2.00855911210076, 2.67779327094084],
  [99, 1.66039115601699, 1.98421695158642, 2.62640545728083],
  [17.7764735161785, 1.73524565378519, 2.1028172415698, 2.88265082332248],
  [2.5, 2.55821861413594, 3.57465484200368, 7.16372813894879],
];

it.each(T_QUANTILES)('t quantiles on %d degrees of freedom keep 13 digits', (nu, q950, q975, q995) => {
  expectDigits(tQuantile(0.95, nu), q950, 13);
  expectDigits(tQuantile(0.975, nu), q975, 13);
  expectDigits(tQuantile(0.995, nu), q995, 13);
  expectDigits(tQuantile(0.025, nu), -q975, 13);
});

/** mpmath at 40 digits, as above. */
const VALUES: readonly (readonly [what: string, got: number, expected: number])[] = [
  ['normal 0.75', normalQuantile(0.75), 0.674489750196082],
  ['normal 0.95', normalQuantile(0.95), 1.64485362695147],
  ['normal 0.975', normalQuantile(0.975), 1.95996398454005],
  ['normal 0.995', normalQuantile(0.995), 2.5758293035489],
  ['F 0.95 (9, 40)', fQuantile(0.95, 9, 40), 2.1240292640167],
  ['F 0.975 (9, 40)', fQuantile(0.975, 9, 40), 2.45193921702993],
  ['F 0.95 (4, 20)', fQuantile(0.95, 4, 20), 2.86608140201566],
  ['F 0.95 (4, 95)', fQuantile(0.95, 4, 95), 2.46749362344965],
  ['F 0.95 (1, 10)', fQuantile(0.95, 1, 10), 4.96460274373071],
  ['F 0.95 (2, 12)', fQuantile(0.95, 2, 12), 3.88529383465239],
  ['χ² 0.025 (9)', chiSquareQuantile(0.025, 9), 2.70038949998036],
  ['χ² 0.975 (9)', chiSquareQuantile(0.975, 9), 19.0227677986416],
  ['χ² 0.025 (4)', chiSquareQuantile(0.025, 4), 0.48441855708793],
  ['χ² 0.975 (4)', chiSquareQuantile(0.975, 4), 11.1432867818778],
  ['χ² 0.025 (19)', chiSquareQuantile(0.025, 19), 8.90651648198797],
  ['χ² 0.975 (19)', chiSquareQuantile(0.975, 19), 32.8523268617297],
  ['χ² 0.025 (95)', chiSquareQuantile(0.025, 95), 69.9248670874403],
  ['χ² 0.975 (95)', chiSquareQuantile(0.975, 95), 123.857966604295],
  ['t(2; 10)', 1 - tUpperTail(2, 10), 0.96330598261463],
  ['F(3; 4, 20)', 1 - fUpperTail(3, 4, 20), 0.956799001665786],
  ['χ²(10; 9)', 1 - chiSquareUpperTail(10, 9), 0.649514787676639],
  ['normal(1)', normalLowerTail(1), 0.841344746068543],
  ['t(−10; 4)', tUpperTail(10, 4), 0.000281001811357996],
  ['upper F(50; 4, 95)', fUpperTail(50, 4, 95), 1.40122512717547e-22],
  ['normal(−8)', normalLowerTail(-8), 6.22096057427178e-16],
];

it.each(VALUES)('%s keeps 13 digits', (what, got, expected) => expectDigits(got, expected, 13, what));

/**
 * Table G.2 of JCGM 100:2008, read in NIST Technical Note 1297, Table B.1: ν, 95 %, 99 %. Printed to two decimals,
 * three for ∞.
 */
const TABLE_G2: readonly (readonly [number, number, number])[] = [
  [1, 12.71, 63.66],
  [2, 4.3, 9.92],
  [3, 3.18, 5.84],
  [4, 2.78, 4.6],
  [5, 2.57, 4.03],
  [9, 2.26, 3.25],
  [10, 2.23, 3.17],
  [16, 2.12, 2.92],
  [20, 2.09, 2.85],
  [50, 2.01, 2.68],
];

it.each(TABLE_G2)('the coverage factors on %d degrees of freedom print as in Table G.2', (nu, t95, t99) => {
  expect(coverageFactor(0.95, nu).toFixed(2)).toBe(t95.toFixed(2));
  expect(coverageFactor(0.99, nu).toFixed(2)).toBe(t99.toFixed(2));
});

it('infinite degrees of freedom are the normal distribution (Table G.2: 1.960 and 2.576)', () => {
  expect(coverageFactor(0.95, Infinity).toFixed(3)).toBe('1.960');
  expect(coverageFactor(0.99, Infinity).toFixed(3)).toBe('2.576');
  expect(tUpperTail(1, Infinity)).toBe(normalLowerTail(-1));
});

it('F on infinite denominator degrees of freedom is χ² over its own', () => {
  expectDigits(fUpperTail(19.0227677986416 / 9, 9, Infinity), 0.025, 12);
});

it('a two-sided p is at most 1', () => expect(tTwoSided(0, 7)).toBe(1));

describe('what lies outside the domain is refused', () => {
  it.each([0, 1, -0.1, 1.1, Number.NaN])('probability %d', (p) => {
    expect(() => tQuantile(p, 9)).toThrow('a probability lies between 0 and 1');
    expect(() => normalQuantile(p)).toThrow(RangeError);
    expect(() => fQuantile(p, 1, 2)).toThrow(RangeError);
    expect(() => chiSquareQuantile(p, 3)).toThrow(RangeError);
  });

  it.each([0, -3, Number.NaN])('%d degrees of freedom', (nu) => {
    expect(() => tQuantile(0.975, nu)).toThrow('degrees of freedom are above 0');
    expect(() => tUpperTail(1, nu)).toThrow(RangeError);
    expect(() => fUpperTail(1, nu, 2)).toThrow(RangeError);
    expect(() => chiSquareUpperTail(1, nu)).toThrow(RangeError);
  });
});

it.each([1e14, 1e15, 1e17, 1e61])(
  't on %d degrees of freedom is the normal distribution (NIST/SEMATECH e-Handbook, 1.3.6.7.2: 1.960)',
  (nu) => {
    expect(coverageFactor(0.95, nu)).toBeCloseTo(1.95996398454005, 12);
  },
);
