import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { describe, expect, it } from 'vitest';
import {
  addIndependent,
  fromCdf,
  halfWidthAbout,
  meanOf,
  onStep,
  rectangular,
  varianceOf,
  type Distribution,
} from '../../src/analysis/distribution.ts';

const STEP = 0.02;
const normal = (): Distribution => fromCdf((x) => normalCdf(x, 0, 1), 6, STEP);

/**
 * JCGM 101:2008, clause 9.2: Y = X1 + X2 + X3 + X4. The half-widths of the shortest 95 % intervals are closed forms
 * (9.2.2: 1.959964·2; 9.2.3: 2√3·(2 − (3/5)^¼)) and, for 9.2.4, R's one-dimensional convolution. The clause prints
 * 3.92, 3.88 and 17.0.
 */
const ADDITIVE = [
  { clause: '9.2.2', inputs: [normal(), normal(), normal(), normal()], u: 2, half: 3.91992797, printed: '3.92' },
  { clause: '9.2.3', inputs: [1, 1, 1, 1].map((u) => rectangular(u, STEP)), u: 2, half: 3.879406741, printed: '3.88' },
  {
    clause: '9.2.4',
    inputs: [1, 1, 1, 10].map((u) => rectangular(u, STEP)),
    u: Math.sqrt(103),
    half: 17.015814,
    printed: '17.0',
  },
];

describe('sums of independent quantities', () => {
  it.each(ADDITIVE)('propagate as in JCGM 101, $clause', ({ inputs, u, half, printed }) => {
    const sum = inputs.reduce(addIndependent);
    const found = halfWidthAbout(sum, 0, 0.95);
    // cells of width 0.02: the grid adds 4·step²/12 to a variance at most, and as much again at a law's cut ends
    expect(Math.abs(Math.sqrt(varianceOf(sum)) - u)).toBeLessThan(1e-3);
    expect(Math.abs(found - half)).toBeLessThan(2e-3);
    expect(found.toFixed(printed.split('.')[1]!.length)).toBe(printed);
  });

  it('refuse grids of different steps', () => {
    expect(() => addIndependent(rectangular(1, 0.1), rectangular(1, 0.2))).toThrow(/one step/);
  });
});

describe('a distribution on a grid', () => {
  const skew: Distribution = { low: 3, step: 0.5, masses: [0.5, 0.3, 0.2] };

  it('has the mean and variance of its masses', () => {
    // by hand: 3·0.5 + 3.5·0.3 + 4·0.2 = 3.35; squares 0.1225·0.5 + 0.0225·0.3 + 0.4225·0.2 = 0.1525
    expect(meanOf(skew)).toBeCloseTo(3.35, 12);
    expect(varianceOf(skew)).toBeCloseTo(0.1525, 12);
  });
});

describe('onStep', () => {
  it('keeps mass and mean, and adds less than step²/4 to a variance', () => {
    const before = normal();
    const after = onStep(before, 0.3);
    expect(after.masses.reduce((sum, mass) => sum + mass, 0)).toBeCloseTo(1, 12);
    expect(meanOf(after)).toBeCloseTo(meanOf(before), 12);
    expect(varianceOf(after)).toBeGreaterThanOrEqual(1 - 1e-6);
    expect(varianceOf(after)).toBeLessThan(1 + 0.3 ** 2 / 4);
  });
});
