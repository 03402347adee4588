import { tQuantile } from '../../src/analysis/distributions.ts';
import { noncentralTLowerTail, noncentralTUpperTail } from '../../src/analysis/noncentral-t.ts';

/** A planned t test of a mean, or of two means of equal size and spread. */
export interface TestPlan {
  readonly kind: 'one-sample' | 'two-sample';
  readonly sided: 1 | 2;
  /** Probability of calling a difference where there is none. */
  readonly alpha: number;
  readonly standardDeviation: number;
}

const SMALLEST_SIZE = 2;
const LARGEST_SIZE = 1e7;

/**
 * Probability that a t test sees a difference: the noncentral t tail beyond the critical value.
 *
 * Degrees of freedom n − 1 (one sample) or 2n − 2 (two samples of n each); noncentrality δ·√n/σ or δ·√(n/2)/σ.
 * As R's power.t.test by default, a two-sided test counts only the tail on the difference's side; `bothTails`
 * counts the other one too (its strict = TRUE).
 * Domain: n of at least 2 (real), σ above 0. Source: R, power.t.test; NIST/SEMATECH e-Handbook 7.2.2.2.
 *
 * `powerOfT({ kind: 'two-sample', sided: 2, alpha: 0.05, standardDeviation: 1 }, 20, 1)` is 0.868952801692.
 */
export function powerOfT(plan: TestPlan, n: number, difference: number, bothTails = false): number {
  checkPlan(plan);
  if (!(n >= SMALLEST_SIZE)) throw new RangeError(`a t test needs 2 or more per group, not ${n}`);
  const samples = plan.kind === 'two-sample' ? 2 : 1;
  const degreesOfFreedom = samples * (n - 1);
  const noncentrality = (Math.abs(difference) * Math.sqrt(n / samples)) / plan.standardDeviation;
  const critical = tQuantile(1 - plan.alpha / plan.sided, degreesOfFreedom);
  const upper = noncentralTUpperTail(critical, degreesOfFreedom, noncentrality);
  const other = bothTails && plan.sided === 2 ? noncentralTLowerTail(-critical, degreesOfFreedom, noncentrality) : 0;
  return upper + other;
}

/**
 * The size (per group) at which `powerOfT` reaches the power asked for, as a real number: round it up.
 * 2 where two are already enough; undefined where the difference is 0 or needs more than ten million.
 */
export function sampleSizeOfT(plan: TestPlan, difference: number, power: number): number | undefined {
  checkPower(power, plan.alpha);
  if (difference === 0 || powerOfT(plan, LARGEST_SIZE, difference) < power) return undefined;
  return bisect((n) => powerOfT(plan, n, difference) - power, SMALLEST_SIZE, LARGEST_SIZE);
}

/** The smallest difference that n (per group) show with the power asked for. */
export function detectableDifference(plan: TestPlan, n: number, power: number): number {
  checkPower(power, plan.alpha);
  let high = plan.standardDeviation;
  while (powerOfT(plan, n, high) < power) high *= 2;
  return bisect((difference) => powerOfT(plan, n, difference) - power, 0, high);
}

/**
 * Fewest independent readings whose interval for the mean is no wider than ± half-width, their scatter taken as known
 * in advance: the smallest n with t(n − 1)·s/√n ≤ half-width.
 *
 * `readingsForHalfWidth(1, 0.5)` is 18.
 */
export function readingsForHalfWidth(standardDeviation: number, halfWidth: number, level = 0.95): number {
  if (!(standardDeviation > 0) || !(halfWidth > 0)) {
    throw new RangeError(
      `a half-width is planned from a scatter and a width above 0, not ${standardDeviation} and ${halfWidth}`,
    );
  }
  const width = (n: number): number => (tQuantile(0.5 + level / 2, n - 1) * standardDeviation) / Math.sqrt(n);
  let enough = 2;
  while (width(enough) > halfWidth) enough *= 2;
  let low = enough === 2 ? 1 : enough / 2;
  while (enough - low > 1) {
    const middle = Math.floor((low + enough) / 2);
    if (width(middle) > halfWidth) low = middle;
    else enough = middle;
  }
  return enough;
}

/** Where a rising function crosses 0, to the last bit; `low` where it is not below 0 there. */
function bisect(f: (x: number) => number, low: number, high: number): number {
  if (f(low) >= 0) return low;
  for (;;) {
    const middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) return high;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
}

function checkPlan({ standardDeviation, alpha }: TestPlan): void {
  if (!(standardDeviation > 0 && Number.isFinite(standardDeviation))) {
    throw new RangeError(`a standard deviation to plan with is above 0, not ${standardDeviation}`);
  }
  if (!(alpha > 0 && alpha < 0.5)) throw new RangeError(`alpha lies between 0 and 0.5, not ${alpha}`);
}

function checkPower(power: number, alpha: number): void {
  if (!(power > alpha && power < 1))
    throw new RangeError(`a power to plan for lies between alpha (${alpha}) and 1, not ${power}`);
}
