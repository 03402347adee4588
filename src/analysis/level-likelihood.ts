/**
 * What the sessions of one condition say of the sizes of variation between clips and between days.
 *
 *     clip's delay = condition's + day's change + clip's change;  a change is normal, and now and then a whole T_d more
 *
 *     p(readings | sizes) = ∫ dμ Π_days ∫ dδ p(δ | day sizes) Π_clips ∫ dε p(ε | clip sizes) ℓ_clip(μ + δ + ε)
 *
 * with ℓ_clip as the session's readings give it (`runLikelihoods`) and nothing assumed of the condition's own delay μ.
 * Computed on a grid of T_d/32, so that a whole-frame step is a shift by 32 cells; a grid this coarse adds less than
 * (T_d/32)²/4 to any variance. Where a condition was measured on one day, sizes of days fall out; where it is one clip
 * alone, all do.
 */
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { NODES, listsOf, SIZES_BEFOREHAND } from './size-grid.ts';
import { exp, ln } from './elementary.ts';

/** What one clip's readings say of its delay: `exp(logLikelihood[i])` at `lowMs + i·stepMs`, up to a constant. */
export interface ClipLikelihood {
  readonly lowMs: number;
  readonly stepMs: number;
  readonly logLikelihood: readonly number[];
}

/** The clips of one condition of a body, by day. */
export interface ConditionClips {
  readonly frameMs: number;
  readonly days: readonly (readonly ClipLikelihood[])[];
}

const CELLS_PER_FRAME = 32;
/** Cells beyond what any clip's readings allow. */
const MARGIN = 6 * CELLS_PER_FRAME;
/** Where a normal change is cut, in standard deviations. */
const CUT = 4;
/** A likelihood this far below its highest counts as none. */
const NONE = -30;
const NORMAL: ReadonlyMap<number, Float64Array> = new Map(
  [...new Set(listsOf(SIZES_BEFOREHAND).flatMap((list) => list.map(({ size }) => size)))].map((size) => [
    size,
    normalCells(size * CELLS_PER_FRAME),
  ]),
);

/** Natural logarithm of p(readings | sizes) for every combination of `NODES`, up to one constant. */
export function logLikelihoodOfSizes({ frameMs, days }: ConditionClips): readonly number[] {
  const clips = days.flat();
  const cellMs = frameMs / CELLS_PER_FRAME;
  if (clips.length < 2) return NODES.map(() => 0);
  const low = Math.min(...clips.map(({ lowMs }) => Math.floor(lowMs / cellMs))) - MARGIN;
  const ends = clips.map(({ lowMs, stepMs, logLikelihood }) => lowMs + stepMs * logLikelihood.length);
  const count = Math.max(...ends.map((endMs) => Math.ceil(endMs / cellMs))) + MARGIN - low + 1;
  const onGrid = days.map((day) => day.map((clip) => regrid(clip, cellMs, low, count)));
  const [clipChanges, clipSteps, dayChanges, daySteps] = listsOf(SIZES_BEFOREHAND);

  return clipChanges.flatMap(({ size: clipChange }) => {
    const moved = onGrid.map((day) => day.map((clip) => changed(clip, clipChange)));
    return clipSteps.flatMap(({ size: clipStep }) => {
      const ofDays = moved.map((day) => scaled(product(day.map((clip) => stepped(clip, clipStep)))));
      const clipsAlone = ofDays.reduce((sum, { log }) => sum + log, 0);
      return dayChanges.flatMap(({ size: dayChange }) => {
        const shifted = days.length > 1 ? ofDays.map(({ values }) => changed(values, dayChange)) : [];
        return daySteps.map(({ size: dayStep }) => {
          const all = days.length > 1 ? product(shifted.map((values) => stepped(values, dayStep))) : ofDays[0]!.values;
          return clipsAlone + ln(Math.max(Number.MIN_VALUE, total(all)));
        });
      });
    });
  });
}

/** Masses on the common grid; each is shared between the two cells whose centres it lies between. */
function regrid(clip: ClipLikelihood, cellMs: number, low: number, count: number): Float64Array {
  const { lowMs, stepMs, logLikelihood } = clip;
  const values = new Float64Array(count);
  const highest = Math.max(...logLikelihood);
  logLikelihood.forEach((log, i) => {
    if (log - highest < NONE) return;
    const place = (lowMs + i * stepMs) / cellMs - low;
    const cell = Math.floor(place);
    const mass = exp(log - highest);
    values[cell]! += mass * (cell + 1 - place);
    values[cell + 1]! += mass * (place - cell);
  });
  const sum = total(values);
  return values.map((value) => value / sum);
}

/** The likelihood of a delay that a normal change of this size (in T_d) stands before. */
function changed(values: Float64Array, size: number): Float64Array {
  const kernel = NORMAL.get(size)!;
  if (kernel.length === 1) return values;
  const reach = (kernel.length - 1) / 2;
  const sum = new Float64Array(values.length);
  values.forEach((value, i) => {
    if (value === 0) return;
    const from = Math.max(0, reach - i);
    const to = Math.min(kernel.length, values.length + reach - i);
    for (let k = from; k < to; k += 1) sum[i + k - reach]! += value * kernel[k]!;
  });
  return sum;
}

/** The same for a change by one whole frame with this probability: seen at x, it may have come from x − T_d. */
function stepped(values: Float64Array, probability: number): Float64Array {
  if (probability === 0) return values;
  return values.map((value, i) => (1 - probability) * value + probability * (values[i + CELLS_PER_FRAME] ?? 0));
}

function product(list: readonly Float64Array[]): Float64Array {
  return list.reduce((all, values) => all.map((value, i) => value * values[i]!));
}

/** Values that sum to 1, and the logarithm of what they were divided by. */
function scaled(values: Float64Array): { readonly values: Float64Array; readonly log: number } {
  const sum = Math.max(Number.MIN_VALUE, total(values));
  return { values: values.map((value) => value / sum), log: ln(sum) };
}

function total(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** Normal masses on cells about 0, standard deviation in cells. */
function normalCells(sd: number): Float64Array {
  if (sd === 0) return Float64Array.of(1);
  const reach = Math.ceil(CUT * sd);
  const cells = Float64Array.from(
    { length: 2 * reach + 1 },
    (_, i) => normalCdf(i - reach + 0.5, 0, sd) - normalCdf(i - reach - 0.5, 0, sd),
  );
  const sum = total(cells);
  return cells.map((cell) => cell / sum);
}
