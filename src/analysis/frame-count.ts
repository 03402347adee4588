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
const SESSION_MS = 60_000;

/** Counts as milliseconds (frames × observer interval), or a sensor's own milliseconds where `counted` is false. */
export function flashEvidence(chain: Chain, latenciesMs: readonly number[], counted: boolean): Explanations {
  const observerMs = counted ? intervalMs(chain.observer!.rate) : 0;
  const displayMs = freeRunningIntervalMs(chain.display);
  const stateWith = (waitsMs: number): StateEvidence => latenciesMs.map((latencyMs) => ({ xMs: [latencyMs - observerMs + waitsMs], weights: [1] }));
  const inStep = Array.from({ length: STATES }, (_, k) => stateWith(kronecker(k, 0) * observerMs - kronecker(k, 1) * displayMs));
  const partners = [...(counted ? [chain.observer!.rate] : []), ...(displayMs > 0 ? [chain.display.refresh] : [])];
  const share = Math.max(0, ...partners.map((partner) => inStepShare(chain.body.rate, partner)));
  const anyPhase = { states: [stateWith((observerMs - displayMs) / 2)], windowMs: observerMs, extraVarianceMs2: (observerMs ** 2 + displayMs ** 2) / 12, share: 1 - share };
  return share > 0 ? [{ states: inStep, windowMs: observerMs, extraVarianceMs2: 0, share }, anyPhase] : [anyPhase];
}

/** Only whole multiples keep one phase for all frames of the body; other ratios run through several. */
function inStepShare(body: Rate, partner: Rate): number {
  const multiple = Math.max(1, Math.round(rateHz(partner) / rateHz(body)));
  const { periodMs } = longestBeat(rate(multiple * body.frames, body.seconds), partner, 1);
  return periodMs === Infinity ? 1 : periodMs / (periodMs + SESSION_MS);
}
