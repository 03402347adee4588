/**
 * The likelihood of the pipeline delay from one run, averaged over the states of the devices:
 *
 *     ℓ(L) = mean over states of Π over readings of Σ over pairs of weight · K(x − L)
 *
 * This is the innermost loop of the analysis; see `evidence.ts` for x and `visibility.ts` for K.
 */
import type { RunEvidence, StateEvidence } from './evidence.ts';
import type { Kernel } from './visibility.ts';

export interface Grid {
  readonly lowMs: number;
  readonly stepMs: number;
  readonly count: number;
}

export interface Likelihood {
  /** On the grid, relative. */
  readonly values: Float64Array;
  /** To be added to the logarithm of every value. */
  readonly log: number;
}

/** At most `maxStates` of the run's states are used, evenly chosen. */
export function marginalLikelihood(run: RunEvidence, kernel: Kernel, grid: Grid, maxStates: number): Likelihood {
  const used = Math.min(maxStates, run.states.length);
  const values = new Float64Array(grid.count);
  const scratch = { product: new Float64Array(grid.count), sum: new Float64Array(grid.count) };
  for (let s = 0; s < used; s += 1)
    addState(values, run.states[Math.floor(((s + 0.5) * run.states.length) / used)]!, kernel, grid, scratch);
  for (let l = 0; l < grid.count; l += 1) values[l]! /= used;
  return { values, log: run.states[0]!.length * kernel.logPeak };
}

/** Adds one state's product; only the stretch [from, to) of the grid on which it is not yet zero is looked at. */
function addState(
  total: Float64Array,
  state: StateEvidence,
  kernel: Kernel,
  grid: Grid,
  { product, sum }: { product: Float64Array; sum: Float64Array },
): void {
  const table = kernel.values;
  const last = table.length - 1;
  let [from, to] = [0, grid.count];
  product.fill(1);
  for (const { xMs, weights } of state) {
    if (xMs.length !== 1) sum.fill(0, from, to);
    for (let c = 0; c < xMs.length; c += 1) {
      // where x − L falls in the table, for the first L of the grid; each later L is one entry on
      const place = (kernel.highMs - xMs[c]! + grid.lowMs) / grid.stepMs;
      const entry = Math.floor(place);
      const next = (place - entry) * weights[c]!;
      const here = weights[c]! - next;
      const start = Math.max(from, -entry);
      const end = Math.min(to, last - entry);
      if (xMs.length === 1) {
        [from, to] = [start, end];
        for (let l = start; l < end; l += 1) product[l]! *= here * table[entry + l]! + next * table[entry + l + 1]!;
      } else {
        for (let l = start; l < end; l += 1) sum[l]! += here * table[entry + l]! + next * table[entry + l + 1]!;
      }
    }
    if (xMs.length !== 1) for (let l = from; l < to; l += 1) product[l]! *= sum[l]!;
    while (from < to && product[from] === 0) from += 1;
    while (from < to && product[to - 1] === 0) to -= 1;
    if (from >= to) return;
  }
  for (let l = from; l < to; l += 1) total[l]! += product[l]!;
}
