/**
 * How likely the frame that was seen is the one that ought to be visible, for every pipeline delay.
 *
 * A frame captured at b is visible on a display that follows its input while b + L + J ≤ m < b + L + J + T_d,
 * where m is the moment that counts (of the reading; on a display with its own clock, of the refresh that
 * stood then) and J a delay of this frame alone, normal with standard deviation σ. With y = m − b − L:
 *
 *     known moment              K(y) = Φ(y/σ) − Φ((y − T_d)/σ)
 *     moment in a window        K(y) = [G(y + T_s) − G(y) − G(y + T_s − T_d) + G(y − T_d)] / T_s
 *     (m uniform over T_s
 *      from y + b + L on)       with G(x) = x·Φ(x/σ) + σ·φ(x/σ), the integral of Φ(x/σ)
 *
 * For σ = 0, Φ is the unit step and G(x) = max(x, 0): a rectangle and a trapezoid.
 */
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';

export interface Kernel {
  /** Value at y = highMs − k·stepMs, relative to the highest. */
  readonly values: Float64Array;
  readonly highMs: number;
  /** Natural logarithm of the highest value. */
  readonly logPeak: number;
}

/** Standard deviations beyond which a normal distribution is cut: it leaves 2·10⁻⁹. */
const TAIL = 6;

export interface KernelShape {
  /** T_d. */
  readonly frameMs: number;
  /** T_s where the moment is uniform in a window; 0 where it is known. */
  readonly windowMs: number;
  /** σ. */
  readonly jitterMs: number;
}

/** A table of K wherever it is not zero. */
export function tabulateVisibility({ frameMs, windowMs, jitterMs }: KernelShape, stepMs: number): Kernel {
  const highMs = frameMs + TAIL * jitterMs + stepMs;
  const lowMs = -windowMs - TAIL * jitterMs - stepMs;
  const count = Math.ceil((highMs - lowMs) / stepMs) + 2;
  const at =
    windowMs > 0
      ? (y: number): number => inWindow(y, frameMs, windowMs, jitterMs)
      : (y: number): number => known(y, frameMs, jitterMs);
  const values = Float64Array.from({ length: count }, (_, k) => Math.max(0, at(highMs - k * stepMs)));
  let peak = 0;
  for (const value of values) peak = Math.max(peak, value);
  for (let k = 0; k < count; k += 1) values[k]! /= peak;
  return { values, highMs, logPeak: Math.log(peak) };
}

function known(y: number, frameMs: number, sigma: number): number {
  if (sigma === 0) return y >= 0 && y < frameMs ? 1 : 0;
  return normalCdf(y / sigma, 0, 1) - normalCdf((y - frameMs) / sigma, 0, 1);
}

function inWindow(y: number, frameMs: number, windowMs: number, sigma: number): number {
  const g = (x: number): number => integralOfCdf(x, sigma);
  return (g(y + windowMs) - g(y) - g(y + windowMs - frameMs) + g(y - frameMs)) / windowMs;
}

/** ∫ Φ(t/σ) dt up to x. */
function integralOfCdf(x: number, sigma: number): number {
  if (sigma === 0 || x > 8 * sigma) return Math.max(x, 0);
  if (x < -8 * sigma) return 0;
  const z = x / sigma;
  return x * normalCdf(z, 0, 1) + (sigma * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}
