/**
 * Sizes of variation body by body, each informed by the others (partial pooling).
 *
 *     common sizes m ~ beforehand;  a body's own sizes θ_b ~ K(θ | m);  readings of b ~ L_b(θ_b)
 *
 *     P(θ_b | all) ∝ L_b(θ_b) Σ_m P(m) K(θ_b | m) Π_{b′≠b} Σ_θ K(θ | m) L_b′(θ)
 *
 * Exact on the grid of `size-grid.ts`. K falls by a factor for each place that a body's size lies from the common one:
 * bodies of one bench are alike rather than equal (a judgement, no source).
 */
import { NODES, SIZES_BEFOREHAND, listsOf, weightsOf } from './size-grid.ts';
import { exp } from './elementary.ts';

/** What K falls by from one size to its neighbour in the list: by kind, as in `Node`. */
const FALLS = [0.2, 0.04, 0.2, 0.04];

export interface PooledSizes {
  /** Weight of every combination of `NODES`, for each body in the order given. */
  readonly bodies: readonly (readonly number[])[];
  /** The same for a body without sessions. */
  readonly others: readonly number[];
}

/** From every body's log-likelihood of `NODES`. */
export function poolSizes(logLikelihoods: readonly (readonly number[])[]): PooledSizes {
  const beforehand = weightsOf(SIZES_BEFOREHAND);
  const likelihoods = logLikelihoods.map((logs) => {
    const highest = Math.max(...logs);
    return logs.map((log) => exp(log - highest));
  });
  const ofCommon = likelihoods.map((likelihood) => spread(likelihood, 'common'));
  const common = (left: number | undefined): readonly number[] =>
    spread(
      normalised(
        beforehand.map((weight, m) =>
          ofCommon.reduce((product, likelihood, b) => (b === left ? product : product * likelihood[m]!), weight),
        ),
      ),
      'bodies',
    );
  return {
    bodies: likelihoods.map((likelihood, b) => {
      const fromOthers = common(b);
      return normalised(likelihood.map((value, i) => value * fromOthers[i]!));
    }),
    others: normalised(common(undefined)),
  };
}

const LENGTHS = listsOf(SIZES_BEFOREHAND).map((list) => list.length);
/** K for each kind of size: rows are common sizes, columns a body's own; rows sum to 1. */
const KERNELS = LENGTHS.map((length, kind) =>
  Array.from({ length }, (_, m) => normalised(Array.from({ length }, (_, i) => FALLS[kind]! ** Math.abs(i - m)))),
);

/** Σ_θ K(θ | m) f(θ) for every m, or Σ_m K(θ | m) f(m) for every θ: one kind of size after the other. */
function spread(values: readonly number[], to: 'common' | 'bodies'): readonly number[] {
  return KERNELS.reduce((current, kernel, kind) => {
    const stride = LENGTHS.slice(kind + 1).reduce((product, length) => product * length, 1);
    return current.map((_, i) => {
      const place = NODES[i]![kind]!;
      return kernel.reduce((sum, _row, other) => {
        const weight = to === 'common' ? kernel[place]![other]! : kernel[other]![place]!;
        return sum + weight * current[i + (other - place) * stride]!;
      }, 0);
    });
  }, values);
}

function normalised(values: readonly number[]): readonly number[] {
  const sum = values.reduce((all, value) => all + value, 0);
  return values.map((value) => value / sum);
}
