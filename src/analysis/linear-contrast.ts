import { combineComponents, type CombinedUncertainty } from './components.ts';
import { fsum } from 'd3-array';
import type { LeastSquaresFit } from './least-squares.ts';

/** What the scatter of a fit is judged by. */
export type FitScale =
  /** Stated uncertainties of the observations, times `birgeRatio` (1 where they explain the scatter). */
  | { readonly kind: 'stated'; readonly birgeRatio: number; readonly residualDegreesOfFreedom: number }
  /** The residuals alone, every weight known only up to one common factor. */
  | { readonly kind: 'residual'; readonly variance: number; readonly residualDegreesOfFreedom: number };

export interface ContrastEstimate extends CombinedUncertainty {
  readonly value: number;
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
 * With stated uncertainties the value is a weighted sum of independent observations: the root sum of squares of their
 * shares, degrees of freedom by Welch and Satterthwaite, times the Birge ratio (and then on the residual degrees of
 * freedom, where that ratio was estimated). With residual scale: √(variance·LᵀCL) on the residual degrees of freedom.
 */
export function estimateContrast(
  fit: LeastSquaresFit,
  contrast: readonly number[],
  observations: readonly CombinedUncertainty[],
  scale: FitScale,
): ContrastEstimate | undefined {
  if (!isEstimable(fit, contrast)) return undefined;
  const parts = fit.kept.map((column) => contrast[column] ?? 0);
  const value = fsum(parts.map((part, k) => part * (fit.coefficients[k] ?? 0)));
  if (scale.kind === 'residual') {
    const form = fsum(parts.flatMap((a, k) => parts.map((b, l) => a * b * (fit.unscaledCovariance[k]?.[l] ?? 0))));
    return {
      value,
      standardUncertainty: Math.sqrt(scale.variance * Math.max(0, form)),
      degreesOfFreedom: scale.residualDegreesOfFreedom,
    };
  }
  const shares = observations.map(({ standardUncertainty, degreesOfFreedom }, row) => ({
    standardUncertainty:
      Math.abs(fsum(parts.map((part, k) => part * (fit.influence[k]?.[row] ?? 0)))) * standardUncertainty,
    degreesOfFreedom,
  }));
  const combined = combineComponents(shares);
  const inflated = scale.birgeRatio > 1;
  return {
    value,
    standardUncertainty: combined.standardUncertainty * scale.birgeRatio,
    degreesOfFreedom: inflated ? scale.residualDegreesOfFreedom : combined.degreesOfFreedom,
  };
}
