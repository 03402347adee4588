/**
 * What frame counts and light-sensor readings say about the pipeline delay: see `evidence.ts`.
 *
 * A flash at f comes to light at g = f + A, with A = L + wait for the end of a capture (uniform over T_d, as
 * flashes come at any moment) + wait W for a refresh, where the display has its own clock. A light sensor reads
 * A itself. Counted on an observer's grid of step T_o, with g at γ after its last tick, A lies within
 * [(c − 1)·T_o + γ, c·T_o + γ).
 *
 * The file has no times, so it cannot say whether γ and W stay as they are through a run (rates in step) or
 * run through all values. How likely the first is beforehand follows from the beat of the rates with the
 * body's: 1/2 for one of a minute, as a session lasts about that long, and next to nothing for a fraction
 * of a second.
 */
import { intervalMs, rate, rateHz, type Rate } from '../model/rate.ts';
import { longestBeat } from './beat.ts';
import { freeRunningIntervalMs, type Chain } from './chain.ts';
import type { Explanations, StateEvidence } from './evidence.ts';
import { kronecker } from './kronecker.ts';

const STATES = 96;
/** Phases that one reading is averaged over where they are fresh in each. */
const FRESH = 12;
const SESSION_MS = 60_000;

/** Counts as milliseconds (frames × observer interval), or a sensor's own milliseconds where `counted` is false. */
export function flashEvidence(chain: Chain, latenciesMs: readonly number[], counted: boolean): Explanations {
  const observerMs = counted ? intervalMs(chain.observer!.rate) : 0;
  const displayMs = freeRunningIntervalMs(chain.display);
  const waitsMs = (k: number): number => kronecker(k, 0) * observerMs - kronecker(k, 1) * displayMs;
  const stateWith = (waits: readonly number[]): StateEvidence =>
    latenciesMs.map((latencyMs) => ({
      xMs: waits.map((wait) => latencyMs - observerMs + wait),
      weights: waits.map(() => 1 / waits.length),
    }));
  const partners = [...(counted ? [chain.observer!.rate] : []), ...(displayMs > 0 ? [chain.display.refresh] : [])];
  const share = Math.max(0, ...partners.map((partner) => inStepShare(chain.body.rate, partner)));
  const common = { windowMs: observerMs, extraVarianceMs2: 0 };
  const fresh = { ...common, states: [stateWith(evenly(FRESH, observerMs, displayMs))], share: 1 - share };
  if (share === 0) return [fresh];
  return [{ ...common, states: Array.from({ length: STATES }, (_, k) => stateWith([waitsMs(k)])), share }, fresh];
}

/** γ − W for phases spread evenly over both intervals; one 0 where there is neither. */
function evenly(count: number, observerMs: number, displayMs: number): number[] {
  if (observerMs === 0 && displayMs === 0) return [0];
  // 5 and 12 have no divisor in common: each coordinate takes every one of its twelve places once
  return Array.from(
    { length: count },
    (_, k) => ((k + 0.5) / count) * observerMs - ((((5 * k) % count) + 0.5) / count) * displayMs,
  );
}

/** Only whole multiples keep one phase for all frames of the body; other ratios run through several. */
function inStepShare(body: Rate, partner: Rate): number {
  const multiple = Math.max(1, Math.round(rateHz(partner) / rateHz(body)));
  const { periodMs } = longestBeat(rate(multiple * body.frames, body.seconds), partner, 1);
  return periodMs === Infinity ? 1 : periodMs / (periodMs + SESSION_MS);
}
