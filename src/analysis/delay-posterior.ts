/**
 * What all runs of a session say about the pipeline delay L: a Bayesian posterior with a flat prior.
 *
 *     p(L | readings) ∝ Σ_σ P(σ) Σ_τ P(τ) Π_runs [ ℓ_run(L; σ) ⊗ N(0, τ²) ]
 *
 * Unknown start phases are uniform, so ℓ_run (see `marginal.ts`) averages over them. As L only shifts the
 * readings, the intervals of such a posterior hold the truth as often as they say when phases are drawn anew
 * in every session, whatever L is: that is the frequency which the coverage bench counts.
 *
 * σ is the jitter of single frames that the rig's rates do not explain (0, or 0.4·T_d and up in steps of √2 as
 * far as the readings' spread asks for), τ a delay that changes from run to run (0, or T_d/2 to 4·T_d). The data weigh
 * them; where rates alone explain the readings, intervals stay short, and where they do not, σ and τ widen them.
 * The prior is 0.5 on σ = 0 and 0.95 on τ = 0, the rest evenly on the others: a judgement, tried on the
 * coverage bench.
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
  /** For each run, the likelihood of L averaged over σ, in no unit. */
  readonly perRun: readonly { readonly lowMs: number; readonly stepMs: number; readonly values: readonly number[] }[];
}

interface Prior {
  readonly valueMs: number;
  readonly probability: number;
}

const NO_JITTER = 0.5;
const SAME_DELAY = 0.95;
const COARSE = { count: 48, sharpStates: 48, smoothStates: 12 };
const FINE = { count: 112, sharpStates: 160, smoothStates: 40 };
/** What a pass may leave out, relative to the highest value. */
const NEGLIGIBLE = 1e-5;
/** Posterior probability below which the fine pass leaves a σ out. */
const UNLIKELY = 3e-4;

/** The posterior over L; undefined where nothing in the model can have given the readings. */
export function delayPosterior(
  runs: readonly Explanations[],
  frameMs: number,
  centresMs: readonly number[],
  reachMs: number,
): DelayPosterior | undefined {
  const betweenMs = Math.max(...centresMs) - Math.min(...centresMs);
  const lowMs = Math.min(...centresMs) - reachMs - betweenMs / 2;
  const highMs = Math.max(...centresMs) + reachMs + betweenMs / 2;
  const jitters = priorOver(
    NO_JITTER,
    scales(0.4 * frameMs, Math.max(2 * reachMs + betweenMs, 2 * frameMs), Math.SQRT2),
  );
  const offsets =
    runs.length > 1 ? priorOver(SAME_DELAY, scales(frameMs / 2, 8 * frameMs, 2)) : [{ valueMs: 0, probability: 1 }];
  const coarse = pass(
    runs,
    frameMs,
    jitters,
    offsets,
    { lowMs, stepMs: (highMs - lowMs) / (COARSE.count - 1), count: COARSE.count },
    COARSE,
  );
  if (!coarse) return undefined;
  const likely = jitters.filter((_, j) => coarse.jitterWeights[j]! > UNLIKELY);
  const fine = pass(runs, frameMs, likely, offsets, supportOf(coarse), FINE);
  if (!fine) return undefined;
  const { grid, all, ratesOnly, sameDelay, noJitter } = fine;
  const total = sumOf(all);
  return {
    distribution: distributionOn(grid, all),
    ...(sumOf(ratesOnly) > 1e-4 * total && { ratesOnly: distributionOn(grid, ratesOnly) }),
    ...(sumOf(sameDelay) > 1e-4 * total && { sameDelay: distributionOn(grid, sameDelay) }),
    jitterProbability: 1 - noJitter,
    betweenRunsProbability: 1 - sumOf(sameDelay) / total,
    perRun: fine.perRun.map((values) => ({ lowMs: grid.lowMs, stepMs: grid.stepMs, values: Array.from(values) })),
  };
}

interface Pass {
  readonly grid: Grid;
  readonly all: Float64Array;
  readonly ratesOnly: Float64Array;
  readonly sameDelay: Float64Array;
  readonly noJitter: number;
  /** Posterior probability of each σ. */
  readonly jitterWeights: readonly number[];
  /** For each run, its likelihood averaged over σ. */
  readonly perRun: readonly Float64Array[];
}

function pass(
  runs: readonly Explanations[],
  frameMs: number,
  jitters: readonly Prior[],
  offsets: readonly Prior[],
  grid: Grid,
  counts: { sharpStates: number; smoothStates: number },
): Pass | undefined {
  const tables = jitters.map(({ valueMs }) =>
    likelihoods(runs, frameMs, valueMs, grid, valueMs === 0 ? counts.sharpStates : counts.smoothStates),
  );
  const best = Math.max(...tables.map((table) => table?.log ?? -Infinity));
  if (best === -Infinity) return undefined;
  const [all, ratesOnly, sameDelay] = [
    new Float64Array(grid.count),
    new Float64Array(grid.count),
    new Float64Array(grid.count),
  ];
  const perRun = runs.map(() => new Float64Array(grid.count));
  const jitterSums = jitters.map((jitter, j) => {
    const table = tables[j];
    const weight = table ? jitter.probability * Math.exp(table.log - best) : 0;
    if (!table || weight < 1e-9) return 0;
    let sum = 0;
    table.runs.forEach((values, r) => addScaled(perRun[r]!, values, weight));
    for (const offset of offsets) {
      const product = new Float64Array(grid.count).fill(weight * offset.probability);
      for (const values of table.runs) multiply(product, blurred(values, offset.valueMs / grid.stepMs));
      addScaled(all, product, 1);
      if (offset.valueMs === 0) addScaled(sameDelay, product, 1);
      if (offset.valueMs === 0 && jitter.valueMs === 0) addScaled(ratesOnly, product, 1);
      sum += sumOf(product);
    }
    return sum;
  });
  const total = sumOf(all);
  if (total === 0) return undefined;
  const jitterWeights = jitterSums.map((sum) => sum / total);
  const noJitter = jitters[0]!.valueMs === 0 ? jitterWeights[0]! : 0;
  return { grid, all, ratesOnly, sameDelay, noJitter, jitterWeights, perRun };
}

/** Each run's likelihood for one σ, scaled to a highest value of 1, and the logarithm of the scales; undefined where a run rules σ out. */
function likelihoods(
  runs: readonly Explanations[],
  frameMs: number,
  jitterMs: number,
  grid: Grid,
  states: number,
): { runs: Float64Array[]; log: number } | undefined {
  const scaled: Float64Array[] = [];
  let log = 0;
  const kernels = new Map<string, Kernel>();
  for (const explanations of runs) {
    const parts = explanations.map((run) => {
      const sigma = Math.sqrt(jitterMs ** 2 + run.extraVarianceMs2);
      const key = `${run.windowMs} ${sigma}`;
      const kernel =
        kernels.get(key) ?? tabulateVisibility({ frameMs, windowMs: run.windowMs, jitterMs: sigma }, grid.stepMs);
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
  const weights = Float64Array.from(
    values,
    (_, d) => Math.exp(-((d / sigma) ** 2) / 2) / (sigma * Math.sqrt(2 * Math.PI)),
  );
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    if (value < 1e-9) continue;
    for (let k = 0; k < values.length; k += 1) result[k]! += value * weights[Math.abs(k - i)]!;
  }
  return result;
}

function priorOver(zero: number, others: readonly number[]): Prior[] {
  return [
    { valueMs: 0, probability: zero },
    ...others.map((valueMs) => ({ valueMs, probability: (1 - zero) / others.length })),
  ];
}

/** first, first·ratio, first·ratio² … below a limit. */
function scales(first: number, below: number, ratio: number): number[] {
  const values: number[] = [];
  for (let scale = first; scale < below; scale *= ratio) values.push(scale);
  return values;
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
