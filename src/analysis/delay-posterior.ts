/**
 * What all runs of a session say about the mean pipeline delay L of its clips: a Bayesian posterior with a flat prior.
 *
 *     1. readings                    → likelihood of each run, for every (σ, ρ)      marginal.ts
 *     2. runs                        → the mean of their delays, for every (τ, q)    clip-mean.ts
 *     3. what the statement of variation says of σ, ρ, τ, q → their mixture
 *
 * σ is the jitter of single frames that the rig's rates do not explain, ρ the share of frames shown twice, τ and q a delay
 * that changes from clip to clip. Unknown start phases are uniform. As L only shifts the readings, the intervals of such a
 * posterior hold the truth as often as they say when phases are drawn anew in every session, whatever L is: that is the
 * frequency which the coverage bench counts.
 *
 * Computed on a grid of L in two passes: a coarse one that finds the support and the states that matter, a fine one over
 * these. Where few of the sampled states matter, more are sampled.
 */
import { quantile } from 'd3-array';
import { changes, changesOf, meanOfClips, type Change, type ClipsAndDay } from './clip-mean.ts';
import type { Distribution } from './distribution.ts';
import type { Explanations, RunEvidence, State } from './evidence.ts';
import { likeliest } from './likeliest.ts';
import { evidenceOf, marginalLikelihood, misreadProbabilities, type Grid } from './marginal.ts';
import { readingKernel, type ReadingKernel } from './reading-kernel.ts';
import { DEFAULT_VARIATION, type Variation } from './variation.ts';
import { exp, ln } from './elementary.ts';

export interface DelayPosterior {
  readonly distribution: Distribution;
  /** Of the mean over all clips of that day, where there are several clips; one alone says no more than `distribution`. */
  readonly day?: Distribution;
  /** The same with σ, ρ, τ and q 0: what the rates alone leave open. Absent where they do not explain the readings. */
  readonly ratesOnly?: Distribution;
  /** The same with τ and q 0. Absent where the runs contradict each other. */
  readonly sameDelay?: Distribution;
  /** Posterior probability. */
  readonly jitterProbability: number;
  /** That the delay changed between these runs, by their own evidence. */
  readonly betweenRunsProbability: number;
  /** How delays change from clip to clip: what the statement says, weighed by these runs. */
  readonly clipChanges: readonly Change[];
  /** That the rates of the rig explain the stamps of every run, phases and all; 1 where they contradict at most one. */
  readonly ratesProbability: number;
  /** For each run and reading: that its stamp is nothing but a misread. */
  readonly misreads: readonly (readonly number[])[];
  /** For each run, the likelihood of L averaged over σ and ρ, in no unit. */
  readonly perRun: readonly { readonly lowMs: number; readonly stepMs: number; readonly values: readonly number[] }[];
}

export interface DelayQuestion {
  /** Explanations of each run; `times` asks for so many more states than usual. */
  readonly runs: readonly ((times: number) => Explanations)[];
  readonly frameMs: number;
  /** Each run's readings less the mean wait for a frame: about where its delay lies. */
  readonly aboutMs: readonly (readonly number[])[];
  /** How far off its delay a reading can be by phases alone. */
  readonly reachMs: number;
  readonly variation: Variation;
}

/** One size of jitter with one share of repeated frames. */
interface Frames {
  readonly jitterMs: number;
  readonly repeat: number;
  readonly probability: number;
}

const COARSE = { least: 48, most: 240, states: 10 };
const FINE = { least: 112, most: 448, states: 48, smoothStates: 16 };
/** What the fine pass may leave out, relative to the highest value. */
const NEGLIGIBLE = 1e-5;
/** Posterior probability below which the fine pass leaves a size out. */
const UNLIKELY = 4e-3;
/** Share of the prior over σ and ρ that is looked at. */
const LOOKED_AT = 0.97;
/** Effective states below which more are sampled, and by how much at most. */
const SCARCE = 24;
const MORE = [1, 6, 30];
/** Jitter, in T_d, at which states are compared: sharp enough to tell them apart, wide enough to miss none. */
const COMPARED_AT = 0.06;
/** Jitter, in T_d, above which fewer states do. */
const SMOOTH = 0.2;

/** The posterior over L. */
export function delayPosterior(question: DelayQuestion): DelayPosterior {
  const { frameMs, variation } = question;
  const misread = variation.reading.misread.reduce((sum, { size, weight }) => sum + size * weight, 0);
  const all = framesOf(variation, frameMs);
  const kernels = new Kernels(frameMs, Math.max(misread, 1e-4));
  const wide = coarseGrid(question);
  const ranked = question.runs.map((explain) => rank(explain, kernels, wide, frameMs));
  const first = likelihoods(
    ranked.map((run) => thinned(run, COARSE.states)),
    all,
    kernels,
    wide,
    frameMs,
    COARSE.states,
  );
  const weights = posteriorOf(first, all);
  const likely = all.filter((_, j) => weights[j]! > UNLIKELY);
  const grid = fineGrid(first, weights, wide, frameMs);
  const sharp = ranked.map((run) => thinned(run, FINE.states));
  const fine = likelihoods(sharp, likely, kernels, grid, frameMs, FINE.smoothStates);
  return combine(question, sharp, fine, likely, kernels, grid);
}

function combine(
  { runs, frameMs, variation }: DelayQuestion,
  explained: readonly Explanations[],
  tables: readonly Table[],
  frames: readonly Frames[],
  kernels: Kernels,
  grid: Grid,
): DelayPosterior {
  const weights = posteriorOf(tables, frames);
  const perRun = runs.map((_, r) => mixture(tables, weights, r, grid));
  const same = new Float64Array(grid.count);
  const rates = new Float64Array(grid.count);
  tables.forEach(({ runs: clips }, j) => {
    const product = new Float64Array(grid.count).fill(weights[j]!);
    for (const clip of clips) for (let l = 0; l < grid.count; l += 1) product[l]! *= clip[l]!;
    addScaled(same, product, 1);
    if (steady(frames[j]!)) addScaled(rates, product, 1);
  });
  const total = new Float64Array(grid.count);
  const means = changesOf(variation.clip, frameMs).map((change) => ({
    change,
    mean: runs.length > 1 && changes(change) ? meanOfClips(perRun, change, frameMs, grid) : unchangedOn(same),
  }));
  const evidence = means.map(({ change, mean }): Change => {
    addScaled(total, mean.clips, change.probability);
    return { ...change, probability: change.probability * sumOf(mean.clips) };
  });
  const found = sumOf(total);
  const clipChanges = evidence.map((change) => ({ ...change, probability: change.probability / found }));
  const disagreement = runs.length > 1 ? disagreementOf(means, sumOf(same)) : 0;
  const best = weights.indexOf(Math.max(...weights));
  const misreads = explained.map((explanations) =>
    misreadsOf(explanations, kernels.of(frames[best]!, explanations[0]!, grid), grid),
  );
  return {
    distribution: distributionOn(grid, total),
    ...(runs.length > 1 && { day: dayOn(grid, means) }),
    ...(sumOf(rates) > 1e-4 * sumOf(same) && { ratesOnly: distributionOn(grid, rates) }),
    ...(disagreement < 1 - 1e-4 && { sameDelay: distributionOn(grid, same) }),
    jitterProbability: 1 - frames.reduce((sum, one, j) => sum + (steady(one) ? weights[j]! : 0), 0),
    betweenRunsProbability: disagreement,
    clipChanges,
    ratesProbability: Math.min(
      ...tables[best]!.firstShares.map((share, r) => ((explained[r]![0]!.misses ?? 0) > 1 ? share : 1)),
    ),
    misreads,
    perRun: perRun.map((values) => ({ lowMs: grid.lowMs, stepMs: grid.stepMs, values: Array.from(values) })),
  };
}

/**
 * Probability that the delay changed between these runs, whatever is stated of the bench: their own evidence for the stated
 * changes against none, at the odds that the default gives it.
 */
function disagreementOf(means: readonly Mean[], unchanged: number): number {
  const changing = means.filter(({ change }) => changes(change));
  const stated = changing.reduce((sum, { change }) => sum + change.probability, 0);
  if (stated === 0) return 0;
  const changed = changing.reduce((sum, { change, mean }) => sum + change.probability * sumOf(mean.clips), 0) / stated;
  const usual = changesOf(DEFAULT_VARIATION.clip, 1).reduce(
    (sum, one) => sum + (changes(one) ? one.probability : 0),
    0,
  );
  return (usual * changed) / (usual * changed + (1 - usual) * unchanged);
}

interface Mean {
  readonly change: Change;
  readonly mean: ClipsAndDay;
}

function unchangedOn(same: Float64Array): ClipsAndDay {
  return { clips: same, day: same, before: 0 };
}

/** The day's mean over all sizes of change, without ends that hold next to nothing. */
function dayOn({ lowMs, stepMs }: Grid, means: readonly Mean[]): Distribution {
  const before = Math.max(...means.map(({ mean }) => mean.before));
  const after = Math.max(...means.map(({ mean }) => mean.day.length - mean.before));
  const values = new Float64Array(before + after);
  for (const { change, mean } of means) addScaled(values.subarray(before - mean.before), mean.day, change.probability);
  const limit = NEGLIGIBLE * 1e-3 * maxOf(values);
  const from = values.findIndex((value) => value > limit);
  const kept = values.subarray(from, values.findLastIndex((value) => value > limit) + 1);
  return distributionOn({ lowMs: lowMs + (from - before) * stepMs, stepMs, count: kept.length }, kept);
}

function misreadsOf(explanations: Explanations, kernel: ReadingKernel, grid: Grid): number[] {
  const run = thinned(explanations, FINE.smoothStates)[0]!;
  return misreadProbabilities(run, kernel, grid);
}

function steady({ jitterMs, repeat }: Frames): boolean {
  return jitterMs === 0 && repeat === 0;
}

function framesOf({ reading }: Variation, frameMs: number): Frames[] {
  const all = reading.jitter.flatMap((jitter) =>
    reading.repeat.map((repeat) => ({
      jitterMs: jitter.size * frameMs,
      repeat: repeat.size,
      probability: jitter.weight * repeat.weight,
    })),
  );
  return likeliest(all, LOOKED_AT);
}

/** Kernels by what they depend on: one is used for many states and runs. */
class Kernels {
  private readonly known = new Map<string, ReadingKernel>();
  private readonly frameMs: number;
  private readonly misread: number;

  constructor(frameMs: number, misread: number) {
    this.frameMs = frameMs;
    this.misread = misread;
  }

  of(
    { jitterMs, repeat }: Pick<Frames, 'jitterMs' | 'repeat'>,
    { windowMs, extraVarianceMs2, standsMs = this.frameMs }: RunEvidence,
    { stepMs }: Grid,
  ): ReadingKernel {
    const sigma = Math.sqrt(jitterMs ** 2 + extraVarianceMs2);
    const key = `${windowMs} ${standsMs} ${sigma} ${repeat} ${stepMs}`;
    const found = this.known.get(key);
    if (found) return found;
    const { frameMs, misread } = this;
    const made = readingKernel({ frameMs, standsMs, windowMs, jitterMs: sigma, repeat, misread }, stepMs);
    this.known.set(key, made);
    return made;
  }
}

/** Over all readings of all runs, but for those far outside their own run. */
function coarseGrid({ aboutMs, reachMs, frameMs }: DelayQuestion): Grid {
  const bounds = aboutMs.map((readings): [number, number] => {
    const sorted = [...readings].sort((a, b) => a - b);
    const [least, most] = [sorted[0]!, sorted.at(-1)!];
    if (sorted.length < 4) return [least, most];
    const [lower, upper] = [quantile(sorted, 0.25)!, quantile(sorted, 0.75)!];
    const far = reachMs + 2 * (upper - lower);
    return [Math.max(least, lower - far), Math.min(most, upper + far)];
  });
  const lowMs = Math.min(...bounds.map(([low]) => low)) - reachMs;
  const highMs = Math.max(...bounds.map(([, high]) => high)) + reachMs;
  const count = clamp(Math.ceil((highMs - lowMs) / (frameMs / 8)), COARSE.least, COARSE.most);
  return { lowMs, stepMs: (highMs - lowMs) / (count - 1), count };
}

/** All that is not negligible, in the result and in every run, in steps that resolve the result. */
function fineGrid(tables: readonly Table[], weights: readonly number[], wide: Grid, frameMs: number): Grid {
  const runs = tables[0]!.runs.map((_, r) => mixture(tables, weights, r, wide));
  let [from, to] = [wide.count - 1, 0];
  for (const values of runs) {
    const limit = NEGLIGIBLE * maxOf(values);
    values.forEach((value, l) => {
      if (value <= limit) return;
      from = Math.min(from, l);
      to = Math.max(to, l);
    });
  }
  const narrowest = Math.min(...runs.map((values) => Math.sqrt(varianceOnCells(values)))) * wide.stepMs;
  // a cell and a half more at each end: the support may end anywhere between two points of the coarse grid
  const lowMs = wide.lowMs + (from - 1.5) * wide.stepMs;
  const widthMs = (to - from + 3) * wide.stepMs;
  const stepMs = Math.min(narrowest / 4 / Math.sqrt(runs.length), frameMs / 16);
  const count = clamp(Math.ceil(widthMs / stepMs), FINE.least, FINE.most);
  return { lowMs, stepMs: widthMs / (count - 1), count };
}

/** States of a run in the order of what they count for, weights as they are; more are sampled where few of them count. */
function rank(explain: (times: number) => Explanations, kernels: Kernels, grid: Grid, frameMs: number): Explanations {
  let ranked: Explanations = [];
  for (const times of MORE) {
    const explanations = explain(times);
    let scarce = false;
    ranked = explanations.map((run) => {
      if (run.states.length === 1) return run;
      const kernel = kernels.of({ jitterMs: COMPARED_AT * frameMs, repeat: 0 }, run, grid);
      const logs = evidenceOf(run.states, kernel, grid);
      const order = Array.from(logs.keys()).sort((a, b) => logs[b]! - logs[a]!);
      const most = logs[order[0]!]!;
      let [sum, squares] = [0, 0];
      const shares = order.map((s) => exp(logs[s]! - most));
      for (const share of shares) {
        sum += share;
        squares += share * share;
      }
      if (sum ** 2 / squares < SCARCE && run.sampled) scarce = true;
      return { ...run, states: order.map((s) => run.states[s]!), shares: shares.map((share) => share / sum) };
    });
    if (!scarce) break;
  }
  return ranked;
}

/** At most `most` states: those that count for next to nothing are left out, of many the rest is drawn evenly. */
function thinned(explanations: Explanations, most: number): Explanations {
  return explanations.map((run) => {
    const { states, shares } = run;
    if (!shares || states.length <= 1) return run;
    let used = 0;
    for (let sum = 0; used < states.length && sum < 1 - NEGLIGIBLE * 10; used += 1) sum += shares[used]!;
    if (used <= most) return { ...run, states: states.slice(0, used), shares: shares.slice(0, used) };
    // the heaviest as they are, of the rest every so many for all of them
    const kept = Math.floor(most / 2);
    const every = (used - kept) / (most - kept);
    const chosen: State[] = states.slice(0, kept);
    const chosenShares = shares.slice(0, kept);
    for (let k = 0; k < most - kept; k += 1) {
      const s = kept + Math.floor((k + 0.5) * every);
      chosen.push({ ...states[s]!, weight: states[s]!.weight * every });
      chosenShares.push(shares[s]! * every);
    }
    return { ...run, states: chosen, shares: chosenShares };
  });
}

/** Each run's likelihood for one size, scaled to a sum of 1, and the logarithm of the evidence of all. */
interface Table {
  readonly runs: readonly Float64Array[];
  readonly log: number;
  /** For each run, how much of its likelihood comes from the first explanation. */
  readonly firstShares: readonly number[];
}

function likelihoods(
  explained: readonly Explanations[],
  all: readonly Frames[],
  kernels: Kernels,
  grid: Grid,
  frameMs: number,
  smoothStates: number,
): Table[] {
  const fewer = explained.map((run) => thinned(run, smoothStates));
  return all.map((frames) => {
    let log = 0;
    const firstShares: number[] = [];
    const runs = (frames.jitterMs > SMOOTH * frameMs ? fewer : explained).map((explanations) => {
      const parts = explanations.map((run) => marginalLikelihood(run, kernels.of(frames, run, grid), grid));
      const highest = parts.reduce((top, part) => Math.max(top, part.log), -Infinity);
      const values = new Float64Array(grid.count);
      parts.forEach((part, i) => {
        if (part.log > -Infinity) addScaled(values, part.values, exp(part.log - highest) * explanations[i]!.share);
        if (i === 0) firstShares.push(sumOf(values));
      });
      const sum = sumOf(values);
      firstShares[firstShares.length - 1]! /= sum;
      log += highest + ln(sum * grid.stepMs);
      return values.map((value) => value / sum);
    });
    return { runs, log, firstShares };
  });
}

function posteriorOf(tables: readonly Table[], frames: readonly Frames[]): number[] {
  const best = tables.reduce((top, { log }) => Math.max(top, log), -Infinity);
  const weights = tables.map(({ log }, j) => frames[j]!.probability * exp(log - best));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

function mixture(tables: readonly Table[], weights: readonly number[], r: number, grid: Grid): Float64Array {
  const values = new Float64Array(grid.count);
  tables.forEach(({ runs }, j) => addScaled(values, runs[r]!, weights[j]!));
  return values;
}

function varianceOnCells(values: Float64Array): number {
  let [sum, first, second] = [0, 0, 0];
  values.forEach((value, l) => {
    sum += value;
    first += value * l;
    second += value * l * l;
  });
  return Math.max(0.1, second / sum - (first / sum) ** 2);
}

function distributionOn({ lowMs, stepMs }: Grid, values: Float64Array): Distribution {
  const total = sumOf(values);
  return { low: lowMs, step: stepMs, masses: Array.from(values, (value) => value / total) };
}

function addScaled(to: Float64Array, values: Float64Array, factor: number): void {
  for (let l = 0; l < values.length; l += 1) to[l]! += factor * values[l]!;
}

function sumOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function maxOf(values: Float64Array): number {
  return values.reduce((top, value) => Math.max(top, value), 0);
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
