import { fsum } from 'd3-array';
import { Matrix, QrDecomposition, solve } from 'ml-matrix';
import { hypot } from './elementary.ts';

/** A column that the columns before it already determine: column = Σ coefficient · kept column. */
export interface AliasedColumn {
  readonly column: number;
  readonly combination: readonly { readonly column: number; readonly coefficient: number }[];
}

export interface LeastSquaresFit {
  /** Columns with a coefficient, in order. */
  readonly kept: readonly number[];
  readonly aliased: readonly AliasedColumn[];
  /** By position in `kept`. */
  readonly coefficients: readonly number[];
  /** (XᵀWX)⁻¹ of the kept columns, by position in `kept`. */
  readonly unscaledCovariance: readonly (readonly number[])[];
  /** Weighted sum of squares that each kept column explains beyond those before it, by position in `kept`. */
  readonly sequentialSquares: readonly number[];
  readonly fitted: readonly number[];
  readonly residuals: readonly number[];
  /** Σ w·residual² */
  readonly residualSumOfSquares: number;
  readonly residualDegreesOfFreedom: number;
  /** By position in `kept`: coefficient = Σ influence[row]·y[row]. */
  readonly influence: readonly (readonly number[])[];
}

/** Share of a column's length below which what is left of it counts as nothing (R's lm uses the same). */
const RANK_TOLERANCE = 1e-7;

/**
 * Weighted linear least squares: the coefficients that make Σ w·(y − Xb)² smallest.
 *
 * Columns are taken in their order; one that is, to 1e-7 of its length, a combination of those before it gets no
 * coefficient and is reported with that combination, so that nothing is estimated that the data do not hold.
 * Solved by the QR decomposition of √w·X. Where column 0 is constant, y is centred first, which keeps the digits of
 * small effects on large values.
 *
 * Domain: finite X and y, as many weights as rows, each above 0 (1 where left out). Throws a RangeError otherwise.
 * Accuracy: 12 digits on NIST StRD Norris, NoInt1 and SiRstv.
 * Source: G. H. Golub and C. F. Van Loan, Matrix Computations, 5.3; R, lm and alias.
 */
export function fitLeastSquares(
  columns: readonly (readonly number[])[],
  y: readonly number[],
  weights: readonly number[] = y.map(() => 1),
): LeastSquaresFit {
  checkShapes(columns, y, weights);
  const roots = weights.map(Math.sqrt);
  const weighted = columns.map((column) => column.map((value, i) => value * (roots[i] ?? 0)));
  const kept = independentColumns(weighted);
  if (kept.length === 0) throw new RangeError('least squares need a column that is not all zero');

  const { orthogonalMatrix: q, upperTriangularMatrix: r } = new QrDecomposition(
    matrixOf(kept.map((j) => weighted[j] ?? [])),
  );
  const inverse = solve(r, Matrix.eye(kept.length));
  const first = columns[0] ?? [];
  const constant = kept[0] === 0 && first.every((value) => value === first[0]) ? (first[0] ?? 0) : 0;
  const centre = constant === 0 ? 0 : fsum(y.map((value, i) => value * (weights[i] ?? 0))) / fsum(weights);
  const target = y.map((value, i) => (value - centre) * (roots[i] ?? 0));

  const project = (vector: readonly number[]): number[] =>
    kept.map((_, k) => fsum(vector.map((value, i) => value * q.get(i, k))));
  const backSubstitute = (effects: readonly number[]): number[] =>
    kept.map((_, k) => fsum(effects.map((effect, l) => inverse.get(k, l) * effect)));

  const effects = project(target);
  const centred = backSubstitute(effects);
  const centredFit = y.map((_, i) => fsum(kept.map((j, k) => (columns[j]?.[i] ?? 0) * (centred[k] ?? 0))));
  const residuals = y.map((value, i) => value - centre - (centredFit[i] ?? 0));
  const keptSet = new Set(kept);
  return {
    kept,
    aliased: columns.flatMap((_, column) =>
      keptSet.has(column)
        ? []
        : [{ column, combination: combinationOf(backSubstitute(project(weighted[column] ?? [])), kept) }],
    ),
    coefficients: centred.map((value, k) => (k === 0 && constant !== 0 ? value + centre / constant : value)),
    unscaledCovariance: inverse.mmul(inverse.transpose()).to2DArray(),
    // what centring took out lies along the constant, so it belongs to the first effect alone
    sequentialSquares: effects.map(
      (effect, k) => (k === 0 ? effect + centre * fsum(roots.map((root, i) => root * q.get(i, 0))) : effect) ** 2,
    ),
    fitted: centredFit.map((value) => value + centre),
    residuals,
    residualSumOfSquares: fsum(residuals.map((residual, i) => (weights[i] ?? 0) * residual ** 2)),
    residualDegreesOfFreedom: y.length - kept.length,
    influence: kept.map((_, k) =>
      y.map((_, i) => fsum(kept.map((_, l) => inverse.get(k, l) * q.get(i, l))) * (roots[i] ?? 0)),
    ),
  };
}

/** Indices of the columns that are no combination of those before them: Gram–Schmidt, each column projected twice. */
function independentColumns(columns: readonly (readonly number[])[]): number[] {
  const basis: (readonly number[])[] = [];
  const kept: number[] = [];
  columns.forEach((column, j) => {
    const length = hypot(...column);
    if (length === 0 || basis.length === column.length) return;
    let rest = column;
    for (let pass = 0; pass < 2; pass += 1) {
      for (const direction of basis) {
        const along = fsum(rest.map((value, i) => value * (direction[i] ?? 0)));
        rest = rest.map((value, i) => value - along * (direction[i] ?? 0));
      }
    }
    const left = hypot(...rest);
    if (left <= RANK_TOLERANCE * length) return;
    basis.push(rest.map((value) => value / left));
    kept.push(j);
  });
  return kept;
}

function combinationOf(coefficients: readonly number[], kept: readonly number[]): AliasedColumn['combination'] {
  const largest = Math.max(...coefficients.map(Math.abs));
  return coefficients.flatMap((coefficient, k) =>
    Math.abs(coefficient) > RANK_TOLERANCE * largest ? [{ column: kept[k] ?? 0, coefficient }] : [],
  );
}

function matrixOf(columns: readonly (readonly number[])[]): Matrix {
  return new Matrix(columns.map((column) => [...column])).transpose();
}

function checkShapes(columns: readonly (readonly number[])[], y: readonly number[], weights: readonly number[]): void {
  if (y.length === 0) throw new RangeError('least squares need at least one observation');
  if (weights.length !== y.length || columns.some((column) => column.length !== y.length)) {
    throw new RangeError(
      `${y.length} observations need as many weights (${weights.length}) and rows (${columns.map((c) => c.length).join(', ')})`,
    );
  }
  if (!weights.every((w) => w > 0 && Number.isFinite(w))) throw new RangeError('every weight is finite and above 0');
  if (!y.every(Number.isFinite) || !columns.every((column) => column.every(Number.isFinite))) {
    throw new RangeError('least squares need finite numbers');
  }
}
