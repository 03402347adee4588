/**
 * What all runs of a session say about the pipeline delay L: a Bayesian posterior with a flat prior.
 *
 *     p(L | readings) ∝ Σ_σ P(σ) Σ_τ P(τ) Π_runs [ ℓ_run(L; σ) ⊗ N(0, τ²) ]
 *
 * Unknown start phases are uniform, so ℓ_run (see `marginal.ts`) averages over them. As L only shifts the
 * readings, the intervals of such a posterior hold the truth as often as they say when phases are drawn anew
 * in every session, whatever L is: that is the frequency which the coverage bench counts.
 *
 * σ is the jitter of single frames that the rig's rates do not explain (0, or T_d/3 doubled as often as the
 * readings' spread asks for), τ a delay that changes from run to run (0, or T_d/2 to 4·T_d). The data weigh
 * them; where rates alone explain the readings, intervals stay short, and where they do not, σ and τ widen them.
 * Half of the prior is on σ = 0 and nine tenths on τ = 0: a judgement, tried on the coverage bench.
 *
 * Computed on a grid of L in two passes: a coarse one that finds the support, a fine one over it.
 */
import type { Distribution } from './distribution.ts';
import type { Explanations } from './evidence.ts';
import { marginalLikelihood, type Grid } from './marginal.ts';
import { tabulateVisibility, type Kernel } from './visibility.ts';

export interface DelayPosterior {
  readonly distribution: Distribution;
  /** The same with σ = 0 and τ = 0: what the rates alone leave open. Absent where they do not explain the readings. */
  readonly ratesOnly?: Distribution;
  /** The same with τ = 0. Absent where the runs contradict each other. */
  readonly sameDelay?: Distribution;
  /** Posterior probabilities. */
  readonly jitterProbability: number;
  readonly betweenRunsProbability: number;
}

interface Prior {
  readonly valueMs: number;
  readonly probability: number;
}

const NO_JITTER = 0.5;
const SAME_DELAY = 0.9;
const COARSE = { count: 48, sharpStates: 48, smoothStates: 12 };
const FINE = { count: 112, sharpStates: 160, smoothStates: 32 };
/** What a pass may leave out, relative to the highest value. */
const NEGLIGIBLE = 1e-5;

/** The posterior over L; undefined where nothing in the model can have given the readings. */
export function delayPosterior(runs: readonly Explanations[], frameMs: number, centresMs: readonly number[], reachMs: number): DelayPosterior | undefined {
  const betweenMs = Math.max(...centresMs) - Math.min(...centresMs);
  const lowMs = Math.min(...centresMs) - reachMs - betweenMs / 2;
  const highMs = Math.max(...centresMs) + reachMs + betweenMs / 2;
  const jitters = priorOver(NO_JITTER, doubling(frameMs / 3, Math.max(2 * reachMs + betweenMs, 2 * frameMs)));
  const offsets = runs.length > 1 ? priorOver(SAME_DELAY, doubling(frameMs / 2, 8 * frameMs)) : [{ valueMs: 0, probability: 1 }];
  const coarse = pass(runs, frameMs, jitters, offsets, { lowMs, stepMs: (highMs - lowMs) / (COARSE.count - 1), count: COARSE.count }, COARSE);
  if (!coarse) return undefined;
  const fine = pass(runs, frameMs, jitters, offsets, supportOf(coarse), FINE);
  if (!fine) return undefined;
  const { grid, all, ratesOnly, sameDelay, noJitter } = fine;
  const total = sumOf(all);
  return {
    distribution: distributionOn(grid, all),
    ...(sumOf(ratesOnly) > 1e-4 * total && { ratesOnly: distributionOn(grid, ratesOnly) }),
    ...(sumOf(sameDelay) > 1e-4 * total && { sameDelay: distributionOn(grid, sameDelay) }),
    jitterProbability: 1 - noJitter / total,
    betweenRunsProbability: 1 - sumOf(sameDelay) / total,
  };
}

interface Pass {
  readonly grid: Grid;
  readonly all: Float64Array;
  readonly ratesOnly: Float64Array;
  readonly sameDelay: Float64Array;
  readonly noJitter: number;
  /** For each run, its likelihood averaged over σ. */
  readonly perRun: readonly Float64Array[];
}

function pass(runs: readonly Explanations[], frameMs: number, jitters: readonly Prior[], offsets: readonly Prior[], grid: Grid, counts: { sharpStates: number; smoothStates: number }): Pass | undefined {
  const tables = jitters.map(({ valueMs }) => likelihoods(runs, frameMs, valueMs, grid, valueMs === 0 ? counts.sharpStates : counts.smoothStates));
  const best = Math.max(...tables.map((table) => table?.log ?? -Infinity));
  if (best === -Infinity) return undefined;
  const [all, ratesOnly, sameDelay] = [new Float64Array(grid.count), new Float64Array(grid.count), new Float64Array(grid.count)];
  const perRun = runs.map(() => new Float64Array(grid.count));
  let noJitter = 0;
  jitters.forEach((jitter, j) => {
    const table = tables[j];
    if (!table) return;
    const weight = jitter.probability * Math.exp(table.log - best);
    if (weight < 1e-9) return;
    table.runs.forEach((values, r) => addScaled(perRun[r]!, values, weight));
    for (const offset of offsets) {
      const product = new Float64Array(grid.count).fill(weight * offset.probability);
      for (const values of table.runs) multiply(product, blurred(values, offset.valueMs / grid.stepMs));
      addScaled(all, product, 1);
      if (offset.valueMs === 0) addScaled(sameDelay, product, 1);
      if (offset.valueMs === 0 && jitter.valueMs === 0) addScaled(ratesOnly, product, 1);
      if (jitter.valueMs === 0) noJitter += sumOf(product);
    }
  });
  return sumOf(all) > 0 ? { grid, all, ratesOnly, sameDelay, noJitter, perRun } : undefined;
}

/** Each run's likelihood for one σ, scaled to a highest value of 1, and the logarithm of the scales; undefined where a run rules σ out. */
function likelihoods(runs: readonly Explanations[], frameMs: number, jitterMs: number, grid: Grid, states: number): { runs: Float64Array[]; log: number } | undefined {
  const scaled: Float64Array[] = [];
  let log = 0;
  const kernels = new Map<string, Kernel>();
  for (const explanations of runs) {
    const parts = explanations.map((run) => {
      const sigma = Math.sqrt(jitterMs ** 2 + run.extraVarianceMs2);
      const key = `${run.windowMs} ${sigma}`;
      const kernel = kernels.get(key) ?? tabulateVisibility({ frameMs, windowMs: run.windowMs, jitterMs: sigma }, grid.stepMs);
      kernels.set(key, kernel);
      return marginalLikelihood(run, kernel, grid, states);
    });
    const highest = Math.max(...parts.map((part) => part.log));
    const values = new Float64Array(grid.count);
    parts.forEach((part, i) => addScaled(values, part.values, Math.exp(part.log - highest) * explanations[i]!.share));
    const peak = values.reduce((top, value) => Math.max(top, value), 0);
    if (peak === 0) return undefined;
    scaled.push(values.map((value) => value / peak));
    log += highest + Math.log(peak);
  }
  return { runs: scaled, log };
}

/** A grid over all that is not negligible, in the result and in every run. */
function supportOf({ grid, all, perRun }: Pass): Grid {
  let [from, to] = [grid.count - 1, 0];
  for (const values of [all, ...perRun]) {
    const limit = NEGLIGIBLE * values.reduce((top, value) => Math.max(top, value), 0);
    values.forEach((value, l) => {
      if (value <= limit) return;
      from = Math.min(from, l);
      to = Math.max(to, l);
    });
  }
  // a cell and a half more at each end: the support may end anywhere between two points of the coarse grid
  const lowMs = grid.lowMs + (from - 1.5) * grid.stepMs;
  return { lowMs, stepMs: ((to - from + 3) * grid.stepMs) / (FINE.count - 1), count: FINE.count };
}

/** Convolution with a normal distribution of the given standard deviation, in cells. */
function blurred(values: Float64Array, sigma: number): Float64Array {
  if (sigma === 0) return values;
  const result = new Float64Array(values.length);
  const weights = Float64Array.from(values, (_, d) => Math.exp(-((d / sigma) ** 2) / 2) / (sigma * Math.sqrt(2 * Math.PI)));
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    if (value < 1e-9) continue;
    for (let k = 0; k < values.length; k += 1) result[k]! += value * weights[Math.abs(k - i)]!;
  }
  return result;
}

function priorOver(zero: number, others: readonly number[]): Prior[] {
  return [{ valueMs: 0, probability: zero }, ...others.map((valueMs) => ({ valueMs, probability: (1 - zero) / others.length }))];
}

function doubling(first: number, below: number): number[] {
  const scales: number[] = [];
  for (let scale = first; scale < below; scale *= 2) scales.push(scale);
  return scales;
}

function distributionOn({ lowMs, stepMs }: Grid, values: Float64Array): Distribution {
  const total = sumOf(values);
  return { low: lowMs, step: stepMs, masses: Array.from(values, (value) => value / total) };
}

function addScaled(to: Float64Array, values: Float64Array, factor: number): void {
  for (let l = 0; l < to.length; l += 1) to[l]! += factor * values[l]!;
}

function multiply(to: Float64Array, values: Float64Array): void {
  for (let l = 0; l < to.length; l += 1) to[l]! *= values[l]!;
}

function sumOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}
