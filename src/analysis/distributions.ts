/**
 * Quantiles and tail probabilities, taken from the stdlib distribution packages and guarded.
 *
 * Degrees of freedom are real numbers above 0; Infinity is allowed and gives the limiting distribution.
 * Upper tails are computed as tails, never as 1 − cdf, so that small p-values keep their digits.
 * Accuracy: about 1e-13 relative against values computed at 40 digits (test/analysis/distributions.test.ts).
 */
import chiSquareQuantileOf from '@stdlib/stats-base-dists-chisquare-quantile';
import fCdf from '@stdlib/stats-base-dists-f-cdf';
import fQuantileOf from '@stdlib/stats-base-dists-f-quantile';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantileOf from '@stdlib/stats-base-dists-normal-quantile';
import tCdf from '@stdlib/stats-base-dists-t-cdf';
import tQuantileOf from '@stdlib/stats-base-dists-t-quantile';
import gammaInc from '@stdlib/math-base-special-gammainc';

/** From here on t and normal quantiles agree to 1e-15, t = z + (z³ + z)/4ν; and the package gives 0 from about 1e17 on. */
const AS_GOOD_AS_INFINITE = 1e15;

/** z with P(Z ≤ z) = p. `normalQuantile(0.975)` is 1.95996… */
export function normalQuantile(p: number): number {
  checkProbability(p);
  return normalQuantileOf(p, 0, 1);
}

/** P(Z ≤ z). */
export function normalLowerTail(z: number): number {
  return finiteOrThrow(normalCdf(z, 0, 1), `normal lower tail of ${z}`);
}

/** t with P(T ≤ t) = p on ν degrees of freedom. `tQuantile(0.975, 9)` is 2.26215… */
export function tQuantile(p: number, degreesOfFreedom: number): number {
  checkProbability(p);
  checkDegreesOfFreedom(degreesOfFreedom);
  if (p === 0.5) return 0;
  if (degreesOfFreedom >= AS_GOOD_AS_INFINITE) return normalQuantile(p);
  return finiteOrThrow(
    tQuantileOf(p, degreesOfFreedom),
    `t quantile of ${p} on ${degreesOfFreedom} degrees of freedom`,
  );
}

/** The factor t with P(|T| ≤ t) = level: `coverageFactor(0.95, 9)` is 2.26 (JCGM 100:2008, Table G.2). */
export function coverageFactor(level: number, degreesOfFreedom: number): number {
  return tQuantile(0.5 + level / 2, degreesOfFreedom);
}

/** P(T ≥ t) on ν degrees of freedom. */
export function tUpperTail(t: number, degreesOfFreedom: number): number {
  checkDegreesOfFreedom(degreesOfFreedom);
  if (degreesOfFreedom === Infinity) return normalLowerTail(-t);
  return finiteOrThrow(tCdf(-t, degreesOfFreedom), `t upper tail of ${t}`);
}

/** P(|T| ≥ |t|) on ν degrees of freedom: the two-sided p-value. */
export function tTwoSided(t: number, degreesOfFreedom: number): number {
  return Math.min(1, 2 * tUpperTail(Math.abs(t), degreesOfFreedom));
}

/** f with P(F ≤ f) = p. */
export function fQuantile(p: number, numerator: number, denominator: number): number {
  checkProbability(p);
  checkDegreesOfFreedom(numerator);
  checkDegreesOfFreedom(denominator);
  return finiteOrThrow(fQuantileOf(p, numerator, denominator), `F quantile of ${p}`);
}

/** P(F ≥ f), as the lower tail of 1/F with the degrees of freedom exchanged. */
export function fUpperTail(f: number, numerator: number, denominator: number): number {
  checkDegreesOfFreedom(numerator);
  checkDegreesOfFreedom(denominator);
  if (f <= 0) return 1;
  if (f === Infinity) return 0;
  if (denominator === Infinity) return chiSquareUpperTail(f * numerator, numerator);
  return finiteOrThrow(fCdf(1 / f, denominator, numerator), `F upper tail of ${f}`);
}

/** x with P(χ² ≤ x) = p. */
export function chiSquareQuantile(p: number, degreesOfFreedom: number): number {
  checkProbability(p);
  checkDegreesOfFreedom(degreesOfFreedom);
  return finiteOrThrow(chiSquareQuantileOf(p, degreesOfFreedom), `χ² quantile of ${p}`);
}

/** P(χ² ≥ x): the regularized upper incomplete gamma function Q(ν/2, x/2). */
export function chiSquareUpperTail(x: number, degreesOfFreedom: number): number {
  checkDegreesOfFreedom(degreesOfFreedom);
  if (x <= 0) return 1;
  return finiteOrThrow(gammaInc(x / 2, degreesOfFreedom / 2, true, true), `χ² upper tail of ${x}`);
}

function checkProbability(p: number): void {
  if (!(p > 0 && p < 1)) throw new RangeError(`a probability lies between 0 and 1, exclusive, not ${p}`);
}

function checkDegreesOfFreedom(value: number): void {
  if (!(value > 0)) throw new RangeError(`degrees of freedom are above 0, not ${value}`);
}

function finiteOrThrow(value: number, what: string): number {
  if (!Number.isFinite(value)) throw new RangeError(`${what} is outside what can be computed`);
  return value;
}
