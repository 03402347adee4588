/**
 * The likelihood of the pipeline delay from one run, averaged over the states of the devices:
 *
 *     ℓ(L) = Σ over states of weight · box ⊗ Π over readings of [ floor + Σ over pairs of weight · K(x − L) ]
 *
 * This is the innermost loop of the analysis; see `evidence.ts` for x and boxes, `reading-kernel.ts` for K and the floor.
 */
import type { ReadingEvidence, RunEvidence, State } from './evidence.ts';
import type { ReadingKernel } from './reading-kernel.ts';
import { exp, ln } from './elementary.ts';

export interface Grid {
  readonly lowMs: number;
  readonly stepMs: number;
  readonly count: number;
}

export interface Likelihood {
  /** On the grid, relative. */
  readonly values: Float64Array;
  /** To be added to the logarithm of every value; −Infinity where all are 0. */
  readonly log: number;
}

/** Products of so many readings stay within the range of numbers; then they are scaled. */
const SCALED_AFTER = 32;

export function marginalLikelihood({ states }: RunEvidence, kernel: ReadingKernel, grid: Grid): Likelihood {
  const values = new Float64Array(grid.count);
  const scratch = scratchOn(grid);
  let log = -Infinity;
  for (const state of states) {
    const stateLog = productOf(state, kernel, grid, scratch) + ln(state.weight);
    if (stateLog === -Infinity) continue;
    for (const widthMs of state.boxesMs) average(scratch, widthMs / grid.stepMs);
    if (stateLog > log) {
      const factor = exp(log - stateLog);
      for (let l = 0; l < grid.count; l += 1) values[l]! *= factor;
      log = stateLog;
    }
    const factor = exp(stateLog - log);
    for (let l = 0; l < grid.count; l += 1) values[l]! += factor * scratch.product[l]!;
  }
  return { values, log };
}

/** Logarithm of what each state says in all, weight included: what it counts for among the others. */
export function evidenceOf(states: readonly State[], kernel: ReadingKernel, grid: Grid): Float64Array {
  const scratch = scratchOn(grid);
  return Float64Array.from(states, (state) => {
    const log = productOf(state, kernel, grid, scratch) + ln(state.weight);
    let sum = 0;
    for (let l = 0; l < grid.count; l += 1) sum += scratch.product[l]!;
    return log + ln(sum);
  });
}

/** For each reading, the posterior probability that its stamp is nothing but a misread. */
export function misreadProbabilities({ states }: RunEvidence, kernel: ReadingKernel, grid: Grid): number[] {
  const logs = evidenceOf(states, kernel, grid);
  const most = logs.reduce((top, log) => Math.max(top, log), -Infinity);
  const scratch = scratchOn(grid);
  const readings = states[0]?.readings.length ?? 0;
  const misread = new Float64Array(readings);
  let total = 0;
  states.forEach((state, s) => {
    const weight = exp(logs[s]! - most);
    if (weight < 1e-3) return;
    productOf(state, kernel, grid, scratch);
    const product = Float64Array.from(scratch.product);
    const sum = product.reduce((all, value) => all + value, 0);
    total += weight;
    for (let i = 0; i < readings; i += 1) {
      factorOf(state, i, kernel, grid, scratch.sum);
      let share = 0;
      for (let l = 0; l < grid.count; l += 1) share += (product[l]! * kernel.floor) / scratch.sum[l]!;
      misread[i]! += (weight * share) / sum;
    }
  });
  return Array.from(misread, (value) => value / total);
}

interface Scratch {
  readonly product: Float64Array;
  readonly sum: Float64Array;
  readonly averaged: Float64Array;
}

function scratchOn({ count }: Grid): Scratch {
  return { product: new Float64Array(count), sum: new Float64Array(count), averaged: new Float64Array(count) };
}

/** Fills the product of all readings, scaled, and returns the logarithm of the scale. */
function productOf(state: State, kernel: ReadingKernel, grid: Grid, { product, sum }: Scratch): number {
  product.fill(1);
  let log = 0;
  const { readings } = state;
  for (let i = 0; i < readings.length; i += 1) {
    const { xMs } = readings[i]!;
    if (xMs.length === 0) {
      log += ln(kernel.floor);
    } else if (xMs.length === 1) {
      multiplyByOne(product, readings[i]!, kernel, grid);
    } else {
      factorOf(state, i, kernel, grid, sum);
      for (let l = 0; l < grid.count; l += 1) product[l]! *= sum[l]!;
    }
    if (i % SCALED_AFTER === SCALED_AFTER - 1 || i === readings.length - 1) {
      let peak = 0;
      for (let l = 0; l < grid.count; l += 1) if (product[l]! > peak) peak = product[l]!;
      if (!(peak > 0)) return -Infinity;
      for (let l = 0; l < grid.count; l += 1) product[l]! /= peak;
      log += ln(peak);
    }
  }
  return log;
}

/** What one reading says: the floor, and K wherever it is not zero. */
function factorOf({ readings }: State, i: number, kernel: ReadingKernel, grid: Grid, sum: Float64Array): void {
  const { xMs, weights } = readings[i]!;
  const table = kernel.values;
  const last = table.length - 1;
  sum.fill(kernel.floor);
  for (let c = 0; c < xMs.length; c += 1) {
    // where x − L falls in the table, for the first L of the grid; each later L is one entry on
    const place = (kernel.highMs - xMs[c]! + grid.lowMs) / grid.stepMs;
    const entry = Math.floor(place);
    const next = (place - entry) * weights[c]!;
    const here = weights[c]! - next;
    const start = Math.max(0, -entry);
    const end = Math.min(grid.count, last - entry);
    for (let l = start; l < end; l += 1) sum[l]! += here * table[entry + l]! + next * table[entry + l + 1]!;
  }
}

/** The product times what a reading with one pair says, as `factorOf` has it, without a pass of its own over the grid. */
function multiplyByOne(
  product: Float64Array,
  { xMs, weights }: ReadingEvidence,
  { values: table, highMs, floor }: ReadingKernel,
  { lowMs, stepMs, count }: Grid,
): void {
  const place = (highMs - xMs[0]! + lowMs) / stepMs;
  const entry = Math.floor(place);
  const next = (place - entry) * weights[0]!;
  const here = weights[0]! - next;
  const start = Math.min(count, Math.max(0, -entry));
  const end = Math.max(start, Math.min(count, table.length - 1 - entry));
  for (let l = 0; l < start; l += 1) product[l]! *= floor;
  for (let l = start; l < end; l += 1) product[l]! *= floor + (here * table[entry + l]! + next * table[entry + l + 1]!);
  for (let l = end; l < count; l += 1) product[l]! *= floor;
}

/** Moving average over a box of `cells`, in place; beyond the ends there is nothing. */
function average({ product, sum, averaged }: Scratch, cells: number): void {
  if (cells < 0.05) return;
  const count = product.length;
  // sum[l]: all below cell l
  let all = 0;
  for (let l = 0; l < count; l += 1) {
    sum[l] = all;
    all += product[l]!;
  }
  for (let l = 0; l < count; l += 1) {
    const from = l + 0.5 - cells / 2;
    const to = l + 0.5 + cells / 2;
    const first = Math.floor(from);
    const last = Math.floor(to);
    const above = last >= count ? all : sum[last]! + product[last]! * (to - last);
    const below = first < 0 ? 0 : sum[first]! + product[first]! * (from - first);
    averaged[l] = (above - below) / cells;
  }
  product.set(averaged);
}
