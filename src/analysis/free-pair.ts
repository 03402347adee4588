/**
 * What pairs say where both displays refresh on their own clocks: see `display-pair.ts` and `evidence.ts`.
 *
 * In a state, each display has a phase and a speed. The one read as source shows frame i from its first refresh in
 * [i·T_p, (i+1)·T_p) until the last such refresh has ended: the moment of the reading lies in that. The other has then begun
 * a refresh r; x = r − j·T_p. How long the source showed frame i counts as well: what is shown for long is read often.
 */
import { intervalMs } from '../model/rate.ts';
import { freeRunningIntervalMs, type Chain, type ChainDisplay } from './chain.ts';
import type { Explanations, ReadingEvidence, RunEvidence, State } from './evidence.ts';
import { refreshAlternatives, type Refreshes } from './refreshes.ts';
import { speeds } from './speeds.ts';
import { spread, type Weighted } from './spread.ts';
import { DEFAULT_TOLERANCE_PPM } from './two-timers.ts';

/** Phases of the display read as source, of the other, and of the observer: a whole interval in so many parts. */
const PARTS = { source: 12, shown: 8, observer: 6 };
const COMBINATIONS = 240;
const MOVE = 1 / 10;
/** How likely it is beforehand that phases are fresh in every reading. */
const LOOSE = 0.02;

interface Grid extends Weighted {
  readonly phaseMs: number;
  readonly stepMs: number;
  readonly widthMs: number;
}

export function freePairEvidence(
  { source: timer, observer, display }: Chain,
  source: ChainDisplay,
  stampsMs: readonly number[],
  latenciesMs: readonly number[],
  resolutionMs: number,
  times: number,
): Explanations {
  const frameMs = intervalMs(timer!.refresh);
  const [sourceStep, shownStep] = [freeRunningIntervalMs(source), freeRunningIntervalMs(display)];
  const shownStampsMs = latenciesMs.map((ms, i) => stampsMs[i]! - ms);
  const alternatives = refreshAlternatives(stampsMs, shownStampsMs, frameMs, resolutionMs);
  const wanted = Math.ceil((COMBINATIONS * times) / alternatives.length);
  const middleMs = (Math.min(...stampsMs) + Math.max(...stampsMs)) / 2;
  const spanMs = Math.max(...stampsMs) - Math.min(...stampsMs);
  const gridsOf = (nominalMs: number, ppm: number | undefined, parts: number): Grid[] => {
    const tolerance = ((ppm ?? DEFAULT_TOLERANCE_PPM) + (timer!.clockTolerancePpm ?? DEFAULT_TOLERANCE_PPM)) * 1e-6;
    return speeds(tolerance, spanMs, Math.min(nominalMs, frameMs) * MOVE, false).flatMap(({ fast, weight }) =>
      Array.from({ length: parts }, (_, part): Grid => {
        const stepMs = nominalMs / (1 + fast);
        const share = weight / parts;
        const phaseMs = middleMs + ((part + 0.5) / parts) * stepMs;
        return { phaseMs, stepMs, widthMs: stepMs / parts, weight: share, pull: share };
      }),
    );
  };
  const none: readonly Grid[] = [{ phaseMs: 0, stepMs: 0, widthMs: 0, weight: 1, pull: 1 }];
  const lists = [
    gridsOf(sourceStep, source.clockTolerancePpm, PARTS.source),
    gridsOf(shownStep, display.clockTolerancePpm, PARTS.shown),
    observer ? gridsOf(intervalMs(observer.rate), observer.clockTolerancePpm, PARTS.observer) : none,
  ];
  const found = alternatives.map((refreshes) =>
    spread(lists, wanted).map(({ items, weight }): State => {
      const [own, other, eye] = items as [Grid, Grid, Grid];
      return {
        readings: refreshes.sourceMs.map((_, i) => readingOf(refreshes, i, own, other, eye, frameMs)),
        boxesMs: [other.widthMs],
        weight: weight / alternatives.length,
      };
    }),
  );
  const fresh: RunEvidence = {
    states: [
      {
        readings: latenciesMs.map((ms) => ({ xMs: [ms - shownStep / 2 - frameMs / 2 + sourceStep / 2], weights: [1] })),
        boxesMs: [],
        weight: 1,
      },
    ],
    windowMs: frameMs,
    extraVarianceMs2: (sourceStep ** 2 + shownStep ** 2) / 12 + resolutionMs ** 2 / 6,
    share: LOOSE,
  };
  const misses = found
    .flat()
    .reduce(
      (least, { readings }) => Math.min(least, readings.filter(({ xMs }) => xMs.length === 0).length),
      latenciesMs.length,
    );
  return [
    {
      states: found.flat(),
      sampled: found.some(({ length }) => length === wanted),
      misses,
      windowMs: 0,
      extraVarianceMs2: 0,
      share: 1 - LOOSE,
    },
    fresh,
  ];
}

/** Weights are moments over a frame of the picture. */
function readingOf(
  { sourceMs, shownMs, lastingMs }: Refreshes,
  i: number,
  own: Grid,
  other: Grid,
  eye: Grid,
  frameMs: number,
): ReadingEvidence {
  const beginMs = sourceMs[i]!;
  const slackMs = own.widthMs / 2;
  const first = own.phaseMs + Math.ceil((beginMs - slackMs - own.phaseMs) / own.stepMs) * own.stepMs;
  const [xMs, weights]: [number[], number[]] = [[], []];
  if (first >= beginMs + lastingMs + slackMs) return { xMs, weights };
  const last = own.phaseMs + Math.floor((beginMs + lastingMs + slackMs - own.phaseMs) / own.stepMs) * own.stepMs;
  const endMs = Math.max(first, last) + own.stepMs;
  const lastTick = (ms: number): number =>
    other.phaseMs + Math.floor((ms - other.phaseMs) / other.stepMs) * other.stepMs;
  const add = (tickMs: number, lengthMs: number): void => {
    xMs.push(tickMs - shownMs[i]!);
    weights.push(lengthMs / frameMs);
  };
  if (eye.stepMs > 0) {
    const half = eye.widthMs / 2;
    const firstSeen = eye.phaseMs + Math.ceil((first - half - eye.phaseMs) / eye.stepMs) * eye.stepMs;
    for (let m = firstSeen; m < endMs + half; m += eye.stepMs) add(lastTick(m), eye.stepMs);
  } else
    for (let tick = lastTick(first); tick < endMs; tick += other.stepMs)
      add(tick, Math.min(endMs, tick + other.stepMs) - Math.max(first, tick));
  return { xMs, weights };
}
