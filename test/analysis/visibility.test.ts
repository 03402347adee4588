import { describe, expect, it } from 'vitest';
import { visibility } from '../../src/analysis/visibility.ts';

const STEP = 0.05;

describe('visibility', () => {
  const CASES = [
    { name: 'a rectangle: known moment, no jitter', standsMs: 20, windowMs: 0, jitterMs: 0 },
    { name: 'a trapezoid: moment in a window, no jitter', standsMs: 20, windowMs: 12, jitterMs: 0 },
    { name: 'a rectangle blurred', standsMs: 20, windowMs: 0, jitterMs: 7 },
    { name: 'a trapezoid blurred', standsMs: 20, windowMs: 12, jitterMs: 7 },
    { name: 'a trapezoid with a window longer than the frame', standsMs: 8, windowMs: 17, jitterMs: 0 },
  ];

  /** Convolution keeps the area and adds variances: T_d·1, and T_d²/12 + T_s²/12 + σ² about (T_d − T_s)/2. */
  it.each(CASES)('has the area, mean and variance of the convolution: $name', ({ standsMs, windowMs, jitterMs }) => {
    const y = Array.from({ length: 4000 }, (_, k) => (k - 2000) * STEP);
    const values = y.map((at) => visibility(at, { standsMs, windowMs, jitterMs }));
    const sum = values.reduce((total, value) => total + value, 0);
    const mean = values.reduce((total, value, k) => total + value * y[k]!, 0) / sum;
    const variance = values.reduce((total, value, k) => total + value * (y[k]! - mean) ** 2, 0) / sum;
    // a sum over points errs by up to one step at each hard edge
    expect(Math.abs(sum * STEP - standsMs)).toBeLessThan(STEP);
    expect(Math.abs(mean - (standsMs - windowMs) / 2)).toBeLessThan(STEP);
    expect(Math.abs(variance - (standsMs ** 2 + windowMs ** 2) / 12 - jitterMs ** 2)).toBeLessThan(0.01 * variance);
  });

  it('is certain where the frame outlasts the window', () => {
    const shape = { standsMs: 20, windowMs: 12, jitterMs: 0 };
    expect([-12, -6, 0, 4, 8, 14, 20].map((y) => visibility(y, shape))).toEqual([0, 0.5, 1, 1, 1, 0.5, 0]);
  });
});
