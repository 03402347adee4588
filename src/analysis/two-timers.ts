/**
 * What stamps of two timers in one picture say about the pipeline delay: see `evidence.ts`.
 *
 * The shown stamp says when the visible frame was captured, to within a refresh of the source; all captures of
 * a run lie on the body's grid, so that together they say it much better. The source stamp says the same of
 * the reading, and the observer's and a free-running display's ticks lie on grids of their own.
 */
import { intervalMs } from '../model/rate.ts';
import { freeRunningIntervalMs, type Chain } from './chain.ts';
import type { ReadingEvidence, RunEvidence, StateEvidence } from './evidence.ts';
import { kronecker } from './kronecker.ts';
import { refreshAlternatives } from './refreshes.ts';
import { agreeingTicks, peaked, type SpeedTolerance, type TicksPerWindow } from './ticks.ts';

/** Half-width of a clock's speed error where nobody stated one: the usual limit of a crystal with its ageing and temperature. */
export const DEFAULT_TOLERANCE_PPM = 100;

/** Phases wanted of a body and of an observer, and pairs of them, in a run. */
const PHASES = 192;
const PAIRS = 160;

/** Undefined where no phases of body and observer agree with the stamps. Stamps are unwrapped, in ms. */
export function twoTimersEvidence(
  chain: Chain,
  stampsMs: readonly number[],
  latenciesMs: readonly number[],
  resolutionMs: number,
): RunEvidence | undefined {
  const { source, body, display, observer } = chain;
  const displayMs = freeRunningIntervalMs(display);
  const known = observer !== undefined || displayMs > 0;
  const tolerance = (ppm: number | undefined): SpeedTolerance => [
    speedError(ppm),
    speedError(source?.clockTolerancePpm),
  ];
  const shownStampsMs = latenciesMs.map((latencyMs, i) => stampsMs[i]! - latencyMs);
  const alternatives = refreshAlternatives(stampsMs, shownStampsMs, intervalMs(source!.refresh), resolutionMs);
  const phases = Math.ceil(PHASES / alternatives.length);
  const states: StateEvidence[] = [];

  alternatives.forEach(({ sourceMs, shownMs, lastingMs }, alternative) => {
    const captures = agreeingTicks(
      shownMs,
      lastingMs,
      intervalMs(body.rate),
      tolerance(body.clockTolerancePpm),
      phases,
      alternative,
    );
    if (!known) {
      for (const capture of captures) states.push(sourceMs.map((beginMs, i) => pairUp(capture[i]!, [beginMs], ONE)));
      return;
    }
    const frames = observer
      ? agreeingTicks(
          sourceMs,
          lastingMs,
          intervalMs(observer.rate),
          tolerance(observer.clockTolerancePpm),
          phases,
          alternative,
        )
      : [];
    if (captures.length === 0 || (observer && frames.length === 0)) return;
    const middleMs = (Math.min(...sourceMs) + Math.max(...sourceMs)) / 2;
    const first = alternative * PAIRS;
    for (let k = first; k < first + PAIRS / alternatives.length; k += 1) {
      const capture = captures[k % captures.length]!;
      const frame: TicksPerWindow | undefined = frames[Math.floor(kronecker(k, 3) * frames.length)];
      const ticking =
        displayMs > 0 ? drawTicking(middleMs, displayMs, tolerance(display.clockTolerancePpm), k) : undefined;
      states.push(
        sourceMs.map((beginMs, i) => {
          const { xMs, weights } = momentsOf(beginMs, lastingMs, frame?.[i], ticking);
          return pairUp(capture[i]!, xMs, weights);
        }),
      );
    }
  });
  const windowMs = known ? 0 : alternatives[0]!.lastingMs;
  return states.length > 0 ? { states, windowMs, extraVarianceMs2: 0, share: 1 } : undefined;
}

/**
 * The same without any grid, for stamps that contradict the rates (a misread digit, a wrong rate): every capture
 * and reading anywhere in its window. Phases that a run shares are then left out; see `estimate.ts`.
 */
export function looseEvidence(chain: Chain, latenciesMs: readonly number[], resolutionMs: number): RunEvidence {
  const sourceMs = intervalMs(chain.source!.refresh);
  const waitMs = freeRunningIntervalMs(chain.display);
  return {
    states: [latenciesMs.map((latencyMs) => ({ xMs: [latencyMs - (sourceMs + waitMs) / 2], weights: ONE }))],
    windowMs: sourceMs,
    extraVarianceMs2: (sourceMs ** 2 + waitMs ** 2) / 12 + resolutionMs ** 2 / 6,
    share: 1,
  };
}

const ONE = [1];

interface Ticking {
  readonly phaseMs: number;
  readonly stepMs: number;
}

function drawTicking(middleMs: number, nominalMs: number, tolerance: SpeedTolerance, k: number): Ticking {
  const stepMs = nominalMs / (1 + tolerance[0] * peaked(kronecker(k, 5)) + tolerance[1] * peaked(kronecker(k, 6)));
  return { phaseMs: middleMs + kronecker(k, 4) * stepMs, stepMs };
}

/**
 * The moments that count for one reading: the observer's; on a display with its own clock the begin of the
 * refresh that stood then, weighted by how long it stood while the source showed the stamp.
 */
function momentsOf(
  beginMs: number,
  lastingMs: number,
  observed: readonly number[] | undefined,
  display: Ticking | undefined,
): ReadingEvidence {
  if (!display) return { xMs: observed!, weights: observed!.map(() => 1) };
  const { phaseMs, stepMs } = display;
  const lastTick = (ms: number): number => phaseMs + Math.floor((ms - phaseMs) / stepMs) * stepMs;
  if (observed) return { xMs: observed.map(lastTick), weights: observed.map(() => 1) };
  const xMs: number[] = [];
  const weights: number[] = [];
  const endMs = beginMs + lastingMs;
  for (let tickMs = lastTick(beginMs); tickMs < endMs; tickMs += stepMs) {
    xMs.push(tickMs);
    weights.push((Math.min(endMs, tickMs + stepMs) - Math.max(beginMs, tickMs)) / lastingMs);
  }
  return { xMs, weights };
}

function pairUp(
  capturesMs: readonly number[],
  momentsMs: readonly number[],
  weights: readonly number[],
): ReadingEvidence {
  if (capturesMs.length === 1 && momentsMs.length === 1) return { xMs: [momentsMs[0]! - capturesMs[0]!], weights };
  return {
    xMs: capturesMs.flatMap((captureMs) => momentsMs.map((momentMs) => momentMs - captureMs)),
    weights: capturesMs.flatMap(() => weights),
  };
}

function speedError(ppm = DEFAULT_TOLERANCE_PPM): number {
  return ppm * 1e-6;
}
