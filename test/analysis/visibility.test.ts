import { describe, expect, it } from 'vitest';
import { tabulateVisibility } from '../../src/analysis/visibility.ts';

const STEP = 0.05;

describe('tabulateVisibility', () => {
  const CASES = [
    { name: 'a rectangle: known moment, no jitter', frameMs: 20, windowMs: 0, jitterMs: 0 },
    { name: 'a trapezoid: moment in a window, no jitter', frameMs: 20, windowMs: 12, jitterMs: 0 },
    { name: 'a rectangle blurred', frameMs: 20, windowMs: 0, jitterMs: 7 },
    { name: 'a trapezoid blurred', frameMs: 20, windowMs: 12, jitterMs: 7 },
    { name: 'a trapezoid with a window longer than the frame', frameMs: 8, windowMs: 17, jitterMs: 0 },
  ];

  /** Convolution keeps the area and adds variances: T_d·1, and T_d²/12 + T_s²/12 + σ² about (T_d − T_s)/2. */
  it.each(CASES)('has the area, mean and variance of the convolution: $name', ({ frameMs, windowMs, jitterMs }) => {
    const { values, highMs, logPeak } = tabulateVisibility({ frameMs, windowMs, jitterMs }, STEP);
    const y = Array.from(values, (_, k) => highMs - k * STEP);
    const sum = values.reduce((total, value) => total + value, 0);
    const mean = values.reduce((total, value, k) => total + value * y[k]!, 0) / sum;
    const variance = values.reduce((total, value, k) => total + value * (y[k]! - mean) ** 2, 0) / sum;
    // a sum over points errs by up to one step at each hard edge
    expect(Math.abs(sum * STEP * Math.exp(logPeak) - frameMs)).toBeLessThan(STEP);
    expect(Math.abs(mean - (frameMs - windowMs) / 2)).toBeLessThan(STEP);
    expect(Math.abs(variance - (frameMs ** 2 + windowMs ** 2) / 12 - jitterMs ** 2)).toBeLessThan(0.01 * variance);
    expect(Math.max(...values)).toBe(1);
  });

  it('is certain where the frame outlasts the window', () => {
    const { values, logPeak } = tabulateVisibility({ frameMs: 20, windowMs: 12, jitterMs: 0 }, STEP);
    expect(logPeak).toBeCloseTo(0, 10);
    expect(values.filter((value) => value > 0.999_999).length * STEP).toBeCloseTo(8, 0);
  });
});
