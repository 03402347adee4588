/** What a level of variation adds to the error of a mean over `count` clips or days. */
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import type { Change } from './clip-mean.ts';
import { addIndependent, centred, fromCdf, onStep, scaled, type Distribution } from './distribution.ts';

/** Cells from the middle of a change to its end: no finer grid is needed. */
const CELLS = 160;

/**
 * `distribution`, of truth − value, plus the error of taking the mean of `count` draws of that level for the level's own
 * mean; T_d in ms. A draw above that mean leaves the truth below the value.
 */
export function withLevel(
  distribution: Distribution,
  sizes: readonly Change[],
  frameMs: number,
  count: number,
): Distribution {
  const law = meanOfDraws(sizes, frameMs, count, distribution.step);
  if (law === undefined) return distribution;
  return addIndependent(law.step > distribution.step ? onStep(distribution, law.step) : distribution, scaled(law, -1));
}

/**
 * The law of the mean of `count` draws about the level's own mean, on cells of `leastStep` or more about 0; undefined where
 * it is narrower than a quarter of one.
 */
export function meanOfDraws(
  sizes: readonly Change[],
  frameMs: number,
  count: number,
  leastStep: number,
): Distribution | undefined {
  const changes = sizes
    .filter(({ probability }) => probability > 0)
    .map(({ probability, sdMs, step }) => ({
      weight: probability,
      sdMs: sdMs / Math.sqrt(count),
      steps: binomial(count, step).map((p, k) => ({ p, atMs: (k / count - step) * frameMs })),
    }));
  const reachMs = Math.max(
    ...changes.map(
      ({ sdMs, steps }) => 5 * sdMs + Math.max(...steps.map(({ p, atMs }) => (p > 0 ? Math.abs(atMs) : 0))),
    ),
  );
  if (reachMs < leastStep / 4) return undefined;
  const cdf = (x: number): number =>
    changes.reduce(
      (sum, { weight, sdMs, steps }) =>
        sum +
        weight *
          steps.reduce((all, { p, atMs }) => all + p * (sdMs > 0 ? normalCdf(x, atMs, sdMs) : heaviside(x - atMs)), 0),
      0,
    );
  const cellMs = Math.max(leastStep, reachMs / CELLS);
  // steps rarely fall on the middles of cells
  return centred(fromCdf(cdf, reachMs + cellMs, cellMs));
}

function heaviside(x: number): number {
  return x >= 0 ? 1 : 0;
}

/** P(k of n), k = 0 … n. */
function binomial(n: number, p: number): number[] {
  let row = [1];
  for (let i = 0; i < n; i += 1) {
    row = Array.from({ length: row.length + 1 }, (_, k) => (row[k] ?? 0) * (1 - p) + (row[k - 1] ?? 0) * p);
  }
  return row;
}
