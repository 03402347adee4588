import { chiSquareUpperTail } from './distributions.ts';

export interface Consistency {
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** P(χ² ≥ chiSquare) where the stated uncertainties explain the scatter. */
  readonly p: number;
  /** √(χ²/ν), the Birge ratio of the observed scatter to the stated one. */
  readonly ratio: number;
  /** The factor to apply to the uncertainties: the ratio where p is below 0.05, otherwise 1. Never below 1. */
  readonly inflation: number;
}

/** Level at which scatter counts as more than the stated uncertainties explain. */
export const INCONSISTENT_BELOW = 0.05;

/**
 * Do stated uncertainties explain the scatter of residuals? χ² = Σ(residual/u)² on ν degrees of freedom.
 *
 * Uncertainties are widened by the Birge ratio only where χ² says that they are too small (p below 0.05); widening at
 * every ratio above 1 would make honest intervals too long half of the time, and narrowing would claim what nobody measured.
 * undefined where there are no degrees of freedom to judge by.
 * Source: R. T. Birge, Phys. Rev. 40 (1932), 207 (from memory); common practice in the adjustment of constants.
 */
export function judgeConsistency(chiSquare: number, degreesOfFreedom: number): Consistency | undefined {
  if (degreesOfFreedom < 1) return undefined;
  const p = chiSquareUpperTail(chiSquare, degreesOfFreedom);
  const ratio = Math.sqrt(chiSquare / degreesOfFreedom);
  return { chiSquare, degreesOfFreedom, p, ratio, inflation: p < INCONSISTENT_BELOW ? Math.max(1, ratio) : 1 };
}
