/**
 * What a run of windows says about the phase and speed of a device that ticks on its own clock.
 *
 * A body that captures every T_d, or an observer that takes a frame every T_o, has a tick in every window in
 * which a value that it recorded stood. Of all phases and of all speeds within the tolerance, tried evenly,
 * only those remain that do. All times are in ms of the source's own clock.
 */
import { kronecker } from './kronecker.ts';

/** The ticks of one phase and speed that fall in each window. */
export type TicksPerWindow = readonly (readonly number[])[];

/** Phases tried at most before giving up on more. */
const TRIED = 24_000;

/** Half-widths of a device's and of the source's speed error, as fractions. */
export type SpeedTolerance = readonly [device: number, source: number];

/**
 * Up to `wanted` phases and speeds of a device that have a tick in every window: fewer where the windows leave
 * little room, none where they contradict its rate. `series` (0, 1, 2 …) tries other phases than the other series.
 */
export function agreeingTicks(
  beginsMs: readonly number[],
  lastingMs: number,
  stepMs: number,
  tolerance: SpeedTolerance,
  wanted: number,
  series: number,
): TicksPerWindow[] {
  const found: TicksPerWindow[] = [];
  const middleMs = (Math.min(...beginsMs) + Math.max(...beginsMs)) / 2;
  const order = fromBothEnds(beginsMs.length);
  const first = series * TRIED;
  for (let k = first; k < first + TRIED && found.length < wanted; k += 1) {
    const actualMs = stepMs / (1 + tolerance[0] * peaked(kronecker(k, 1)) + tolerance[1] * peaked(kronecker(k, 2)));
    const phaseMs = middleMs + kronecker(k, 0) * actualMs;
    if (hasTickInEvery(beginsMs, order, lastingMs, phaseMs, actualMs))
      found.push(beginsMs.map((beginMs) => ticksWithin(beginMs, lastingMs, phaseMs, actualMs)));
  }
  return found;
}

/** Spreads [0, 1) over [−1, 1), densest in the middle: most clocks keep well within their tolerance, and rates meant to be locked are tried as such. */
export function peaked(share: number): number {
  return (2 * share - 1) ** 7;
}

function hasTickInEvery(
  beginsMs: readonly number[],
  order: readonly number[],
  lastingMs: number,
  phaseMs: number,
  stepMs: number,
): boolean {
  for (const i of order) {
    const steps = (beginsMs[i]! - phaseMs) / stepMs;
    if ((Math.ceil(steps) - steps) * stepMs >= lastingMs) return false;
  }
  return true;
}

function ticksWithin(beginMs: number, lastingMs: number, phaseMs: number, stepMs: number): number[] {
  const ticks: number[] = [];
  for (
    let tickMs = phaseMs + Math.ceil((beginMs - phaseMs) / stepMs) * stepMs;
    tickMs < beginMs + lastingMs;
    tickMs += stepMs
  )
    ticks.push(tickMs);
  return ticks;
}

/** Indices from both ends inwards: the far ends of a run rule out most speeds at once. */
function fromBothEnds(length: number): number[] {
  return Array.from({ length }, (_, i) => (i % 2 === 0 ? i / 2 : length - (i + 1) / 2));
}
