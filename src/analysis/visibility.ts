/**
 * How likely the frame that was seen is the one that ought to be visible, for every pipeline delay.
 *
 * A frame captured at b is visible on a display that follows its input while b + L + J ≤ m < b + L + J + T_d,
 * where m is the moment that counts (of the reading; on a display with its own clock, of the refresh that
 * stood then) and J a delay of this frame alone, normal with standard deviation σ. With y = m − b − L:
 *
 *     known moment              V(y) = Φ(y/σ) − Φ((y − T_d)/σ)
 *     moment in a window        V(y) = [G(y + T_s) − G(y) − G(y + T_s − T_d) + G(y − T_d)] / T_s
 *     (m uniform over T_s
 *      from y + b + L on)       with G(x) = x·Φ(x/σ) + σ·φ(x/σ), the integral of Φ(x/σ)
 *
 * For σ = 0, Φ is the unit step and G(x) = max(x, 0): a rectangle and a trapezoid.
 */
import { fastNormalCdf, integralOfNormalCdf } from './normal-table.ts';

export interface Shape {
  /** How long a frame stands: T_d. */
  readonly standsMs: number;
  /** T_s where the moment is uniform in a window; 0 where it is known. */
  readonly windowMs: number;
  /** σ. */
  readonly jitterMs: number;
}

/** V(y), a probability; y in ms. */
export function visibility(y: number, { standsMs, windowMs, jitterMs }: Shape): number {
  return Math.max(0, windowMs > 0 ? inWindow(y, standsMs, windowMs, jitterMs) : known(y, standsMs, jitterMs));
}

function known(y: number, standsMs: number, sigma: number): number {
  if (sigma === 0) return y >= 0 && y < standsMs ? 1 : 0;
  return fastNormalCdf(y / sigma) - fastNormalCdf((y - standsMs) / sigma);
}

function inWindow(y: number, standsMs: number, windowMs: number, sigma: number): number {
  const g = (x: number): number => (sigma === 0 ? Math.max(x, 0) : sigma * integralOfNormalCdf(x / sigma));
  return (g(y + windowMs) - g(y) - g(y + windowMs - standsMs) + g(y - standsMs)) / windowMs;
}
