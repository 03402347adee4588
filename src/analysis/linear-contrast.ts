import { fsum } from 'd3-array';
import { tUpperTail } from './distributions.ts';
import type { UncertainValue } from './error-tail.ts';
import type { LeastSquaresFit } from './least-squares.ts';
import { combineErrors, type LinearError } from './linear-error.ts';
import { propagate } from './propagate.ts';
import { withUnknownScale } from './unknown-scale.ts';

/** What the scatter of a fit is judged by. */
export type FitScale =
  /** Stated errors of the observations, times `birgeRatio` (1 where they explain the scatter). */
  | StatedScale
  /** The residuals alone, every weight known only up to one common factor. */
  | { readonly kind: 'residual'; readonly variance: number; readonly residualDegreesOfFreedom: number };

export interface StatedScale {
  readonly kind: 'stated';
  readonly birgeRatio: number;
  readonly residualDegreesOfFreedom: number;
}

/** An observation as a fit weighs it: with 1/u² of what it shares with no other, and with all of its error. */
export interface Weighed {
  readonly standardUncertainty: number;
  readonly error: LinearError;
}

/** Does a combination of all columns have one value whatever the undetermined coefficients are? */
export function isEstimable(fit: Pick<LeastSquaresFit, 'aliased'>, contrast: readonly number[]): boolean {
  const size = Math.max(...contrast.map(Math.abs), 1);
  return fit.aliased.every(({ column, combination }) => {
    const implied = fsum(combination.map((part) => part.coefficient * (contrast[part.column] ?? 0)));
    return Math.abs((contrast[column] ?? 0) - implied) <= 1e-7 * size;
  });
}

/**
 * Value and uncertainty of Σ contrast[column]·coefficient[column]; undefined where it is not estimable.
 *
 * With stated errors the value is a sum of the observations at fixed weights, and its error the same sum of theirs, shared
 * ones once; where they do not explain the scatter, up to a factor that the scatter tells. With residual scale:
 * √(variance·LᵀCL) and Student's t on the residual degrees of freedom.
 */
export function estimateContrast(
  fit: LeastSquaresFit,
  contrast: readonly number[],
  observations: readonly Pick<Weighed, 'error'>[],
  scale: FitScale,
): UncertainValue | undefined {
  if (!isEstimable(fit, contrast)) return undefined;
  const parts = fit.kept.map((column) => contrast[column] ?? 0);
  const value = fsum(parts.map((part, k) => part * (fit.coefficients[k] ?? 0)));
  if (scale.kind === 'residual') {
    const form = fsum(parts.flatMap((a, k) => parts.map((b, l) => a * b * (fit.unscaledCovariance[k]?.[l] ?? 0))));
    const standardUncertainty = Math.sqrt(scale.variance * Math.max(0, form));
    return {
      value,
      standardUncertainty,
      errorTail: (x) => tUpperTail(x / standardUncertainty, scale.residualDegreesOfFreedom),
    };
  }
  const error = combineErrors(sharesOf(fit, contrast).map((share, row) => [share, observations[row]!.error]));
  return scaled(propagate(value, error), scale);
}

/** The weight of every observation in Σ contrast[column]·coefficient[column]. */
export function sharesOf(
  { kept, influence }: Pick<LeastSquaresFit, 'kept' | 'influence'>,
  contrast: readonly number[],
): readonly number[] {
  const parts = kept.map((column) => contrast[column] ?? 0);
  return (influence[0] ?? []).map((_, row) => fsum(parts.map((part, k) => part * (influence[k]?.[row] ?? 0))));
}

/** Widened where the stated errors do not explain the scatter of what they are the errors of. */
export function scaled(value: UncertainValue, { birgeRatio, residualDegreesOfFreedom }: StatedScale): UncertainValue {
  if (birgeRatio === 1) return value;
  return withUnknownScale(value, {
    chiSquare: birgeRatio ** 2 * residualDegreesOfFreedom,
    degreesOfFreedom: residualDegreesOfFreedom,
  });
}
