/**
 * Whether further readings of the same clip or a new clip narrow the interval more: sessions like the one under way are
 * simulated on its rig, with the readings taken so far, and go on once in each way, for the same work.
 */
import { RESTART_WORK } from './plan.ts';
import { advisedSpacingMs, simulateRun, type Setup } from './precision.ts';
import { seededRandom } from './random.ts';
import type { RunInput, SessionInput } from './session-input.ts';

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

/** The sessions of one trial, to be estimated and averaged over several; `counts` are the readings of each clip so far. */
export function continueSession(
  setup: Setup,
  counts: readonly number[],
  trial: number,
): Readonly<Record<keyof NextReading, SessionInput>> {
  const last = counts.at(-1) ?? 0;
  if (!(last > 0)) throw new RangeError('to say what the next reading buys takes a reading in the last clip');
  const random = seededRandom(1 + trial);
  const spacingMs = advisedSpacingMs(setup, Math.max(...counts));
  const clip = (readings: number): RunInput =>
    simulateRun(setup, { runs: 1, readings, spacingMs }, PIPELINE_MS, random);
  const earlier = counts.slice(0, -1).map(clip);
  const whole = clip(last + furtherReadings(last));
  const fresh = clip(last);
  const session = (...runs: readonly RunInput[]): SessionInput => ({ ...setup, runs: [...earlier, ...runs] });
  return {
    nowMs: session(firstOf(whole, last)),
    sameClipMs: session(whole),
    newClipMs: session(firstOf(whole, last), fresh),
  };
}

/** As much work as a new clip of `readings`. */
export function furtherReadings(readings: number): number {
  return readings + RESTART_WORK;
}

function firstOf({ latenciesMs, sourceMs }: RunInput, readings: number): RunInput {
  return {
    latenciesMs: latenciesMs.slice(0, readings),
    ...(sourceMs === undefined ? {} : { sourceMs: sourceMs.slice(0, readings) }),
  };
}
