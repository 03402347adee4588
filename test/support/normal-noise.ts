import type { Random } from '../../src/analysis/random.ts';

/** Standard normal numbers from uniform ones (G. E. P. Box and M. E. Muller, Ann. Math. Statist. 29 (1958), 610). */
export function normalNoise(random: Random): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - random.uniform())) * Math.cos(2 * Math.PI * random.uniform());
}

/**
 * Half-width of what a share of n independent trials may differ from its expectation p by: four standard deviations.
 */
export function shareTolerance(p: number, n: number): number {
  return 4 * Math.sqrt((p * (1 - p)) / n);
}
