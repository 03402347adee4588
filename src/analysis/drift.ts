import { fsum } from 'd3-array';
import { tTwoSided } from './distributions.ts';
import { DEFAULT_LEVEL, tInterval, type Interval } from './interval.ts';
import { meanOf } from './summary.ts';

export interface Drift {
  readonly kind: 'drift';
  /** Change of y per unit of x. */
  readonly slope: number;
  readonly slopeStandardUncertainty: number;
  readonly slopeInterval: Interval;
  /** y at x = 0. */
  readonly intercept: number;
  readonly interceptStandardUncertainty: number;
  readonly residualStandardDeviation: number;
  readonly degreesOfFreedom: number;
  /** Two-sided p of slope = 0; undefined where the points lie on the line exactly. */
  readonly p: number | undefined;
}

export interface NoDrift {
  readonly kind: 'not-estimable';
  /** `too-few`: fewer than three points. `one-position`: all x are equal. */
  readonly reason: 'too-few' | 'one-position';
}

/**
 * Does latency creep along a session? The ordinary least squares line y = intercept + slope·x.
 *
 * slope = Σ(x−x̄)(y−ȳ)/Σ(x−x̄)², u(slope) = s/√Σ(x−x̄)², s² = residual sum of squares/(n − 2).
 * x is the time (or the number) of the reading, y its latency; the slope is in y's unit per x's unit. It takes the
 * readings as independent, so for readings that share a phase the interval is too short.
 * Accuracy: 12 digits on NIST StRD Norris (slope and its standard deviation).
 * Source: NIST/ITL StRD, linear regression; e-Handbook 4.1.4.1.
 * Throws a RangeError where x and y differ in number, or a value is not finite.
 */
export function estimateDrift(x: readonly number[], y: readonly number[], level = DEFAULT_LEVEL): Drift | NoDrift {
  if (x.length !== y.length) throw new RangeError(`${x.length} positions for ${y.length} values`);
  if (x.length < 3) return { kind: 'not-estimable', reason: 'too-few' };
  const [xMean, yMean] = [meanOf(x), meanOf(y)];
  const dx = x.map((value) => value - xMean);
  const dy = y.map((value) => value - yMean);
  const sxx = fsum(dx.map((d) => d * d));
  if (sxx === 0) return { kind: 'not-estimable', reason: 'one-position' };

  const slope = fsum(dx.map((d, i) => d * (dy[i] ?? 0))) / sxx;
  const residuals = dx.map((d, i) => (dy[i] ?? 0) - slope * d);
  const degreesOfFreedom = x.length - 2;
  const residualStandardDeviation = Math.sqrt(fsum(residuals.map((r) => r * r)) / degreesOfFreedom);
  const slopeStandardUncertainty = residualStandardDeviation / Math.sqrt(sxx);
  return {
    kind: 'drift',
    slope,
    slopeStandardUncertainty,
    slopeInterval: tInterval(slope, slopeStandardUncertainty, degreesOfFreedom, level),
    intercept: yMean - slope * xMean,
    interceptStandardUncertainty: residualStandardDeviation * Math.sqrt(1 / x.length + xMean ** 2 / sxx),
    residualStandardDeviation,
    degreesOfFreedom,
    p: slopeStandardUncertainty > 0 ? tTwoSided(slope / slopeStandardUncertainty, degreesOfFreedom) : undefined,
  };
}
