/**
 * What stamps of two timers in one picture say about the pipeline delay: see `evidence.ts`.
 *
 * The shown stamp says when the visible frame was captured, to within a refresh of the source; all captures of
 * a run lie on the body's grid, so that together they say it much better. The source stamp says the same of
 * the reading, and the observer's and a free-running display's ticks lie on grids of their own. Readings taken at regular
 * steps lie on a grid too, whoever took them: their own.
 */
import { intervalMs } from '../model/rate.ts';
import { freeRunningIntervalMs, type Chain } from './chain.ts';
import type { Explanations, ReadingEvidence, State } from './evidence.ts';
import { phaseCells } from './phase-cells.ts';
import { refreshAlternatives, type Refreshes } from './refreshes.ts';
import { regularStep } from './regular-step.ts';
import { speeds, type Speed } from './speeds.ts';
import { spread, type Weighted } from './spread.ts';

/** Half-width of a clock's speed error where nobody stated one: the usual limit of a crystal with its ageing and temperature. */
export const DEFAULT_TOLERANCE_PPM = 100;

/** How likely it is beforehand that the rates of a rig do not hold at all, so that phases are fresh in every reading. */
const LOOSE = 0.01;
/** How likely it is beforehand that a body exposes for so long that the digits of two refreshes blend: looked at where stamps ask for it. */
const BLENDED = 0.05;
/** Combinations of devices that are looked at, unless few of them turn out to matter. */
const COMBINATIONS = 240;
/** Readings of all combinations together: more would not fit into memory, and a clip of a thousand readings asks for them. */
const MOST_READINGS = 2_200_000;
/** A display's phases: a whole refresh in so many parts. */
const DISPLAY_PARTS = 8;
/** Ticks that neighbouring speeds may move by, as a share of the shorter interval. */
const MOVE = 1 / 10;

/** How much less a state is looked for with each stamp that contradicts it. */
const CONTRADICTED = 1e-3;

/** One device in one state, and the width of the phases that it stands for. */
export interface Ticking extends Weighted {
  /** Per reading; absent where ticks depend on the moment. */
  readonly ticksMs?: () => readonly (readonly number[])[];
  readonly widthMs: number;
  /** Of a display with its own clock. */
  readonly refreshes?: Refreshing;
}

interface Refreshing {
  readonly phaseMs: number;
  readonly stepMs: number;
}

/** A device that is not there: one state, no width. */
const ABSENT: readonly Ticking[] = [{ widthMs: 0, weight: 1, pull: 1 }];

/**
 * Stamps are unwrapped, in ms. `times` multiplies how many combinations of states are looked at. `captures` is given where
 * no body with a clock of its own captures the shown stamps.
 */
export function twoTimersEvidence(
  chain: Chain,
  stampsMs: readonly number[],
  latenciesMs: readonly number[],
  resolutionMs: number,
  times: number,
  captures: (refreshes: Refreshes) => readonly Ticking[] | undefined = () => undefined,
): Explanations {
  const shownStampsMs = latenciesMs.map((latencyMs, i) => stampsMs[i]! - latencyMs);
  const alternatives = refreshAlternatives(stampsMs, shownStampsMs, intervalMs(chain.source!.refresh), resolutionMs);
  const combinations = Math.min(COMBINATIONS * times, Math.max(COMBINATIONS, MOST_READINGS / stampsMs.length));
  const wanted = Math.ceil(combinations / alternatives.length);
  const windowMs = momentsAreKnown(chain, stampsMs) ? 0 : alternatives[0]!.lastingMs;
  const evidence = (share: number, blendedMs: number): Explanations[number] => {
    const found = alternatives.map((refreshes) => statesWith(chain, refreshes, wanted, blendedMs, captures(refreshes)));
    const states = found.flat().map((state) => ({ ...state, weight: state.weight / alternatives.length }));
    const sampled = found.some(({ length }) => length === wanted);
    const misses = states.reduce((least, { readings }) => Math.min(least, missesOf(readings)), latenciesMs.length);
    return { states, sampled, misses, windowMs, extraVarianceMs2: 0, share };
  };
  const sharp = evidence(1 - LOOSE - BLENDED, 0);
  const loose = looseEvidence(chain, latenciesMs, resolutionMs);
  if (sharp.misses === 0) return [sharp, loose];
  return [sharp, evidence(BLENDED, intervalMs(chain.source!.refresh) / 2), loose];
}

function missesOf(readings: readonly ReadingEvidence[]): number {
  return readings.reduce((sum, { xMs }) => sum + Number(xMs.length === 0), 0);
}

function momentsAreKnown({ observer, display }: Chain, stampsMs: readonly number[]): boolean {
  return observer !== undefined || freeRunningIntervalMs(display) > 0 || regularStep(stampsMs, 1) !== undefined;
}

/** Where digits of two refreshes blend, the value read may have stood up to half of `blendedMs` before or after the capture. */
function statesWith(
  chain: Chain,
  { sourceMs, shownMs, lastingMs }: Refreshes,
  wanted: number,
  blendedMs: number,
  captured: readonly Ticking[] | undefined,
): State[] {
  const { source, body, display, observer } = chain;
  const middleMs = (Math.min(...sourceMs) + Math.max(...sourceMs)) / 2;
  const spanMs = Math.max(...sourceMs) - Math.min(...sourceMs);
  const toleranceWith = (ppm: number | undefined): number => speedError(ppm) + speedError(source?.clockTolerancePpm);
  const speedsOf = (stepMs: number, ppm: number | undefined, slips: boolean): Speed[] =>
    speeds(toleranceWith(ppm), spanMs, Math.min(stepMs, lastingMs) * MOVE, slips);
  const tickings = (
    beginsMs: readonly number[],
    stepMs: number,
    all: readonly Speed[],
    standingMs = lastingMs,
  ): Ticking[] =>
    all.flatMap(({ fast, weight }) => {
      const actualMs = stepMs / (1 + fast);
      return phaseCells(beginsMs, standingMs, actualMs, middleMs).map(({ ticksMs, widthMs, misses }): Ticking => {
        const share = (weight * widthMs) / actualMs;
        return { ticksMs: lazily(ticksMs), widthMs, weight: share, pull: share * CONTRADICTED ** misses };
      });
    });

  const bodyMs = intervalMs(body.rate);
  const bodies =
    captured ??
    tickings(
      shownMs.map((beginMs) => beginMs - blendedMs / 2),
      bodyMs,
      speedsOf(bodyMs, body.clockTolerancePpm, true),
      lastingMs + blendedMs,
    );
  const regular = observer ? undefined : regularStep(sourceMs, lastingMs * MOVE);
  const observers = observer
    ? tickings(
        sourceMs,
        intervalMs(observer.rate),
        speedsOf(intervalMs(observer.rate), observer.clockTolerancePpm, false),
      )
    : regular
      ? tickings(sourceMs, regular.stepMs, regular.speeds)
      : ABSENT;
  const displayMs = freeRunningIntervalMs(display);
  const displays =
    displayMs > 0 ? freeDisplays(displayMs, middleMs, speedsOf(displayMs, display.clockTolerancePpm, false)) : ABSENT;

  const momentsOf = lazilyOf((frame: Ticking) =>
    lazilyOf((ticking: Ticking) => {
      const framesMs = frame.ticksMs?.();
      return sourceMs.map((beginMs, i) => momentsOfReading(beginMs, lastingMs, framesMs?.[i], ticking.refreshes));
    }),
  );
  return spread([bodies, observers, displays], wanted).map(({ items, weight }): State => {
    const [capture, frame, ticking] = items as [Ticking, Ticking, Ticking];
    const capturesMs = capture.ticksMs!();
    return {
      readings: momentsOf(frame)(ticking).map((moments, i) => pairUp(capturesMs[i]!, moments)),
      boxesMs: items.flatMap(({ widthMs }) => (widthMs > 0 ? [widthMs] : [])),
      weight,
    };
  });
}

/**
 * The same without any grid, for stamps that contradict the rates (a wrong rate, a timer that shows something else): every
 * capture and reading anywhere in its window.
 */
function looseEvidence(chain: Chain, latenciesMs: readonly number[], resolutionMs: number): Explanations[number] {
  const sourceMs = intervalMs(chain.source!.refresh);
  const waitMs = freeRunningIntervalMs(chain.display);
  const readings = latenciesMs.map((latencyMs) => ({ xMs: [latencyMs - (sourceMs + waitMs) / 2], weights: ONE }));
  // of all captures only a share T_s/T_d falls into a window of T_s
  const share = Math.min(1, (sourceMs + resolutionMs) / intervalMs(chain.body.rate));
  return {
    states: [{ readings, boxesMs: [], weight: share ** latenciesMs.length }],
    windowMs: sourceMs,
    extraVarianceMs2: (sourceMs ** 2 + waitMs ** 2) / 12 + resolutionMs ** 2 / 6,
    share: LOOSE,
  };
}

const ONE = [1];

function freeDisplays(nominalMs: number, middleMs: number, all: readonly Speed[]): Ticking[] {
  return all.flatMap(({ fast, weight }) =>
    Array.from({ length: DISPLAY_PARTS }, (_, part): Ticking => {
      const stepMs = nominalMs / (1 + fast);
      return {
        refreshes: { stepMs, phaseMs: middleMs + ((part + 0.5) / DISPLAY_PARTS) * stepMs },
        widthMs: stepMs / DISPLAY_PARTS,
        weight: weight / DISPLAY_PARTS,
        pull: weight / DISPLAY_PARTS,
      };
    }),
  );
}

/**
 * The moments that count for one reading: the observer's, or any in the window (K knows its width where nothing ticks); on
 * a display with its own clock the begin of the refresh that stood then, weighted by how long it stood while the source
 * showed the stamp.
 */
function momentsOfReading(
  beginMs: number,
  lastingMs: number,
  observed: readonly number[] | undefined,
  display: Refreshing | undefined,
): ReadingEvidence {
  if (!display) {
    if (!observed) return { xMs: [beginMs], weights: ONE };
    return { xMs: observed, weights: observed.map(() => 1 / observed.length) };
  }
  const { phaseMs, stepMs } = display;
  const lastTick = (ms: number): number => phaseMs + Math.floor((ms - phaseMs) / stepMs) * stepMs;
  if (observed) return { xMs: observed.map(lastTick), weights: observed.map(() => 1 / observed.length) };
  const xMs: number[] = [];
  const weights: number[] = [];
  const endMs = beginMs + lastingMs;
  for (let tickMs = lastTick(beginMs); tickMs < endMs; tickMs += stepMs) {
    xMs.push(tickMs);
    weights.push((Math.min(endMs, tickMs + stepMs) - Math.max(beginMs, tickMs)) / lastingMs);
  }
  return { xMs, weights };
}

function pairUp(capturesMs: readonly number[], { xMs, weights }: ReadingEvidence): ReadingEvidence {
  if (capturesMs.length === 1 && xMs.length === 1) return { xMs: [xMs[0]! - capturesMs[0]!], weights };
  const pairs: { xMs: number[]; weights: number[] } = { xMs: [], weights: [] };
  for (const captureMs of capturesMs)
    for (let moment = 0; moment < xMs.length; moment += 1) {
      pairs.xMs.push(xMs[moment]! - captureMs);
      pairs.weights.push(weights[moment]!);
    }
  return pairs;
}

/** Worked out when it is first asked for: one state of a device stands in many combinations. */
function lazily<T>(compute: () => T): () => T {
  let value: T | undefined;
  return () => (value ??= compute());
}

/** The same, for each of several things. */
function lazilyOf<Key, T>(compute: (key: Key) => T): (key: Key) => T {
  const known = new Map<Key, T>();
  return (key) => {
    const value = known.get(key) ?? compute(key);
    known.set(key, value);
    return value;
  };
}

function speedError(ppm = DEFAULT_TOLERANCE_PPM): number {
  return ppm * 1e-6;
}
