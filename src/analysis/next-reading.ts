/**
 * Whether further readings of the same clip or a new clip narrow the interval more: sessions like the one under way are
 * simulated on its rig, with the readings taken so far, and go on once in each way, for the same work.
 */
import { RESTART_WORK } from './plan.ts';
import { advisedSpacingMs, simulateRun, type Setup } from './precision.ts';
import { estimateSession } from './estimate.ts';
import { seededRandom } from './random.ts';
import type { RunInput } from './session-input.ts';

/** Half-widths U of the interval, in ms. */
export interface NextReading {
  readonly nowMs: number;
  /** After as many further readings of the last clip as the new one takes work. */
  readonly sameClipMs: number;
  /** After a new clip of as many readings as the last one has. */
  readonly newClipMs: number;
}

/** Enough to tell the two ways apart: each trial goes on in both from the same readings. */
export const NEXT_READING_TRIALS = 6;
const PIPELINE_MS = 150;

/** One trial; `counts` are the readings of each clip so far, one at least. Average several. */
export function tryNextReading(setup: Setup, counts: readonly number[], trial: number): NextReading {
  const last = counts.at(-1) ?? 0;
  if (!(last > 0)) throw new RangeError('to say what the next reading buys takes a reading in the last clip');
  const random = seededRandom(1 + trial);
  const more = furtherReadings(last);
  const spacingMs = advisedSpacingMs(setup, Math.max(...counts));
  const clip = (readings: number): RunInput =>
    simulateRun(setup, { runs: 1, readings, spacingMs }, PIPELINE_MS, random);
  const earlier = counts.slice(0, -1).map(clip);
  const whole = clip(last + more);
  const fresh = clip(last);
  const halfWidthMs = (...runs: readonly RunInput[]): number =>
    estimateSession({ ...setup, runs: [...earlier, ...runs] }).expandedUncertainty;
  return {
    nowMs: halfWidthMs(firstOf(whole, last)),
    sameClipMs: halfWidthMs(whole),
    newClipMs: halfWidthMs(firstOf(whole, last), fresh),
  };
}

/** As much work as a new clip of `readings`. */
export function furtherReadings(readings: number): number {
  return readings + RESTART_WORK;
}

export function averageNext(trials: readonly NextReading[]): NextReading {
  const mean = (of: (trial: NextReading) => number): number =>
    trials.reduce((sum, trial) => sum + of(trial), 0) / trials.length;
  return {
    nowMs: mean(({ nowMs }) => nowMs),
    sameClipMs: mean(({ sameClipMs }) => sameClipMs),
    newClipMs: mean(({ newClipMs }) => newClipMs),
  };
}

function firstOf({ latenciesMs, sourceMs }: RunInput, readings: number): RunInput {
  return {
    latenciesMs: latenciesMs.slice(0, readings),
    ...(sourceMs === undefined ? {} : { sourceMs: sourceMs.slice(0, readings) }),
  };
}
