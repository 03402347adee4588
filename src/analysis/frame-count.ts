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
 * of a second. Nor can it say whether flashes came at regular steps, which show the body's phases one after the other
 * instead of at random: a tenth of the prior lies on that.
 */
import { intervalMs, rate, rateHz, type Rate } from '../model/rate.ts';
import { longestBeat } from './beat.ts';
import { freeRunningIntervalMs, type Chain } from './chain.ts';
import type { Explanations, ReadingEvidence, RunEvidence, State } from './evidence.ts';
import { kronecker } from './kronecker.ts';

const STATES = 96;
/** Steps tried at most: shares of T_d between one flash and the next. */
const MOST_STEPS = 240;
/** Cells of the circle of starts that are told apart; with more readings than this, a cell has its share of all starts. */
const MOST_CELLS = 64;
/** Phases that one reading is averaged over where they are fresh in each. */
const FRESH = 12;
const SESSION_MS = 60_000;
/** How likely regular steps are beforehand: a judgement, no source. */
const REGULAR = 0.1;

/** Counts as milliseconds (frames × observer interval), or a sensor's own milliseconds where `counted` is false. */
export function flashEvidence(chain: Chain, latenciesMs: readonly number[], counted: boolean): Explanations {
  const observerMs = counted ? intervalMs(chain.observer!.rate) : 0;
  const displayMs = freeRunningIntervalMs(chain.display);
  const waitsMs = (k: number): number => kronecker(k, 0) * observerMs - kronecker(k, 1) * displayMs;
  const common = { windowMs: observerMs, extraVarianceMs2: 0 };
  const readingWith = (latencyMs: number, waits: readonly number[]): ReadingEvidence => ({
    xMs: waits.map((wait) => latencyMs - observerMs + wait),
    weights: waits.map(() => 1 / waits.length),
  });
  const bodyMs = intervalMs(chain.body.rate);
  const regular = counted && displayMs === 0 && latenciesMs.length > 2;
  const fresh = evenly(FRESH, observerMs, displayMs);
  const partners = [...(counted ? [chain.observer!.rate] : []), ...(displayMs > 0 ? [chain.display.refresh] : [])];
  const share = Math.max(0, ...partners.map((partner) => inStepShare(chain.body.rate, partner)));
  const found: RunEvidence[] = [
    {
      ...common,
      states: [oneState(latenciesMs.map((latencyMs) => readingWith(latencyMs, fresh)))],
      share: (1 - share) * (regular ? 1 - REGULAR : 1),
    },
  ];
  if (share > 0)
    found.push({
      ...common,
      states: Array.from({ length: STATES }, (_, k) =>
        oneState(
          latenciesMs.map((latencyMs) => readingWith(latencyMs, [waitsMs(k)])),
          STATES,
        ),
      ),
      share: share * (regular ? 1 - REGULAR : 1),
    });
  if (regular) found.push({ ...common, ...regularSteps(bodyMs, latenciesMs, observerMs), share: REGULAR });
  return found;
}

function oneState(readings: readonly ReadingEvidence[], among = 1): State {
  return { readings, boxesMs: [], weight: 1 / among };
}

/**
 * Flashes at regular steps: the wait for a capture goes on by one share α of T_d each time, from a start φ. For one α the
 * values of φ at which some wait starts again at 0 cut the circle into cells; within a cell all waits move together, and
 * so a cell is one state. What is left open of a reading is then the observer's rounding, a triangle over ±T_o.
 */
function regularSteps(
  bodyMs: number,
  latenciesMs: readonly number[],
  observerMs: number,
): Pick<RunEvidence, 'states' | 'standsMs'> {
  const wrap = (share: number): number => share - Math.floor(share);
  const middle = (latenciesMs.length - 1) / 2;
  const steps = Math.min(MOST_STEPS, Math.ceil((2 * bodyMs * latenciesMs.length) / observerMs));
  // a count is as likely as the triangle says, where others are so by T_o/T_d of what the rectangle says
  const weights = [bodyMs / observerMs];
  const states = Array.from({ length: steps }, (_, s) => {
    const shares = latenciesMs.map((_latency, i) => wrap(((s + 0.5) / steps) * (i - middle)));
    const starts = [...new Set([0, ...shares.map((share) => wrap(-share))])].sort((a, b) => a - b);
    const edges = starts.length > MOST_CELLS ? Array.from({ length: MOST_CELLS }, (_, k) => k / MOST_CELLS) : starts;
    return edges.map((from, e): State => {
      const to = edges[e + 1] ?? 1;
      return {
        readings: latenciesMs.map((latencyMs, i) => ({
          xMs: [latencyMs - wrap((from + to) / 2 + shares[i]!) * bodyMs],
          weights,
        })),
        boxesMs: [(to - from) * bodyMs],
        weight: (to - from) / steps,
      };
    });
  });
  return { states: states.flat(), standsMs: observerMs };
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
