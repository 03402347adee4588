/**
 * The mean delay of a session's clips, where each clip may have a delay of its own, and the delay of their day:
 *
 *     L_clip = μ + c + T_d·B,    c ~ N(0, τ²),  B one with probability q (a buffer that starts one frame deeper)
 *     p(mean of L_clip | readings) ∝ Σ over (τ, q) of prior · ∫ dμ p(mean | μ) Π_clips ∫ ℓ_clip(L)·h(L − μ) dL
 *     p(μ + q·T_d | readings) ∝ Σ over (τ, q) of prior · Π_clips ∫ ℓ_clip(L)·h(L − μ) dL
 *
 * with h the law of c + T_d·B and a flat prior over μ. Given μ, clips are independent; the mean of their delays is then
 * taken as normal with the moments that it has. μ + q·T_d is the mean over all clips of that day: clips that agree tell
 * that none of them, or all, started deeper. One size of change is as likely as the statement of variation says.
 */
import { likeliest } from './likeliest.ts';
import type { Grid } from './marginal.ts';
import { fastNormalCdf } from './normal-table.ts';
import type { LevelVariation } from './variation.ts';
import { exp } from './elementary.ts';

export interface Change {
  readonly sdMs: number;
  readonly step: number;
  readonly probability: number;
}

/** Share of the prior that is looked at: rare pairs of sizes cost as much as the others. */
const LOOKED_AT = 0.95;
const TAIL = 4;

/** The sizes of a statement in pairs, in ms; the first is the one without any change. */
export function changesOf({ change, step }: LevelVariation, frameMs: number): Change[] {
  const pairs = change.flatMap((a) =>
    step.map((b) => ({ sdMs: a.size * frameMs, step: b.size, probability: a.weight * b.weight })),
  );
  return likeliest(pairs, LOOKED_AT).sort((a, b) => Number(changes(a)) - Number(changes(b)));
}

export function changes({ sdMs, step }: Change): boolean {
  return sdMs > 0 || (step > 0 && step < 1);
}

export interface ClipsAndDay {
  /** The law of the clips' mean on the grid; its sum is the evidence for the change. */
  readonly clips: Float64Array;
  /** The law of their day's mean, in cells of the grid of which the first lies `before` cells before its first. */
  readonly day: Float64Array;
  readonly before: number;
}

/** `clips`: each one's likelihood, summing to 1. */
export function meanOfClips(
  clips: readonly Float64Array[],
  { sdMs, step }: Change,
  frameMs: number,
  grid: Grid,
): ClipsAndDay {
  const law = lawOf(sdMs / grid.stepMs, step, Math.round(frameMs / grid.stepMs));
  const supports = clips.map(supportOf);
  // a smooth law needs no finer steps of μ than a third of its own width
  const stride = Math.max(1, Math.floor(sdMs / grid.stepMs / 3));
  const values = new Float64Array(grid.count);
  const toDay = (step * frameMs) / grid.stepMs;
  const before = law.to + stride;
  const day = new Float64Array(before + grid.count - law.from + Math.ceil(toDay) + stride + 1);
  for (let mu = -law.to; mu < grid.count - law.from; mu += stride) {
    let [weight, mean, variance] = [stride, 0, 0];
    for (let r = 0; r < clips.length && weight > 1e-30; r += 1) {
      const { sum, first, second } = moments(clips[r]!, supports[r]!, law, mu);
      weight *= sum;
      if (sum === 0) break;
      mean += first / sum / clips.length;
      variance += Math.max(0, second / sum - (first / sum) ** 2) / clips.length ** 2;
    }
    if (weight <= 1e-30) continue;
    addNormal(values, weight, mean, variance);
    addTriangle(day, weight, before + mu + toDay, stride);
  }
  return { clips: values, day, before };
}

/** A mass about a place, falling to none a stride away on either side: masses a stride apart are even in between. */
function addTriangle(values: Float64Array, weight: number, at: number, stride: number): void {
  for (let l = Math.ceil(at - stride); l < at + stride; l += 1)
    values[l]! += (weight * (1 - Math.abs(l - at) / stride)) / stride;
}

/** A change in whole cells: `shares[d − from]` is the probability of d. */
interface Law {
  readonly from: number;
  readonly to: number;
  readonly shares: Float64Array;
  /** Where no change lies between: without it and a whole frame on. */
  readonly only: readonly number[] | undefined;
}

function lawOf(sd: number, step: number, frame: number): Law {
  const reach = Math.ceil(TAIL * sd);
  const steps = [
    { at: 0, probability: 1 - step },
    { at: frame, probability: step },
  ].filter(({ probability }) => probability > 0);
  const from = steps[0]!.at - reach;
  const to = steps.at(-1)!.at + reach;
  const shares = new Float64Array(to - from + 1);
  for (const { at, probability } of steps)
    for (let d = -reach; d <= reach; d += 1)
      shares[at + d - from]! +=
        probability * (sd > 0 ? fastNormalCdf((d + 0.5) / sd) - fastNormalCdf((d - 0.5) / sd) : 1);
  return { from, to, shares, only: sd > 0 ? undefined : steps.map(({ at }) => at) };
}

/** First and last cell that matter. */
function supportOf(values: Float64Array): readonly [from: number, to: number] {
  const limit = 1e-7 * values.reduce((top, value) => Math.max(top, value), 0);
  return [values.findIndex((value) => value > limit), values.findLastIndex((value) => value > limit)];
}

/** Moments of one clip's delay, in cells, given μ. */
function moments(
  clip: Float64Array,
  [first, last]: readonly [number, number],
  { from, to, shares, only }: Law,
  mu: number,
): { sum: number; first: number; second: number } {
  const found = { sum: 0, first: 0, second: 0 };
  const add = (l: number): void => {
    const mass = shares[l - mu - from]! * clip[l]!;
    found.sum += mass;
    found.first += mass * l;
    found.second += mass * l * l;
  };
  if (only) {
    for (const d of only) if (mu + d >= first && mu + d <= last) add(mu + d);
    return found;
  }
  const end = Math.min(last, mu + to);
  for (let l = Math.max(first, mu + from); l <= end; l += 1) add(l);
  return found;
}

/** A normal law in cells; less than a cell wide it is shared between the two nearest. */
function addNormal(values: Float64Array, weight: number, mean: number, variance: number): void {
  const add = (l: number, mass: number): void => {
    if (l >= 0 && l < values.length) values[l]! += mass;
  };
  if (variance < 0.2) {
    const cell = Math.floor(mean);
    add(cell, weight * (cell + 1 - mean));
    add(cell + 1, weight * (mean - cell));
    return;
  }
  const sd = Math.sqrt(variance);
  const [from, to] = [Math.floor(mean - TAIL * sd), Math.ceil(mean + TAIL * sd)];
  let sum = 0;
  for (let l = from; l <= to; l += 1) sum += exp(-((l - mean) ** 2) / (2 * variance));
  for (let l = from; l <= to; l += 1) add(l, (weight * exp(-((l - mean) ** 2) / (2 * variance))) / sum);
}
