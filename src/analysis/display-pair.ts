/**
 * The delay of one display over another that shows the same picture of a running timer, from pairs of values read off
 * both at one moment. The one entry for readings without a body.
 *
 *     estimateDisplayPair(input) → PairEstimate: delay of `shown` less delay of `source`, in mid-screen; may be negative
 *
 * The picture has frames every T_p. A display that follows its input shows each for T_p from its arrival on, one with its own
 * clock from its next refresh on. Both show the very same frames, so that there is no capture with a clock of its own:
 *
 *     a pair (i, j) read at m:   i·T_p + D_source ≤ m,  j·T_p + D_shown ≤ m,  each for T_p
 *
 * Where phases are fresh in every reading, i − j is one of two neighbouring numbers and their mean is the difference; where
 * observer and picture are in step, all readings of a clip agree and leave it open by up to T_p. The posterior knows either:
 * grids, jitter, repeated frames, misreads and clips are those of `delay-posterior.ts`.
 */
import { intervalMs } from '../model/rate.ts';
import { freeRunningIntervalMs, type Chain } from './chain.ts';
import { delayPosterior, type DelayPosterior } from './delay-posterior.ts';
import { centred, halfWidthAbout, meanOf, scaled, withStandardPart, type Distribution } from './distribution.ts';
import { evenSteps } from './even-steps.ts';
import type { Explanations } from './evidence.ts';
import type { PairInput, PairPicture } from './pair-input.ts';
import { pairBudget, type PairLine } from './pair-budget.ts';
import { freePairEvidence } from './free-pair.ts';
import type { RunInput } from './session-input.ts';
import { twoTimersEvidence } from './two-timers.ts';
import { DEFAULT_VARIATION } from './variation.ts';

export interface PairEstimate {
  readonly value: number;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  readonly interval: { readonly low: number; readonly high: number; readonly level: number };
  readonly expandedUncertainty: number;
  readonly coverageFactor: number;
  readonly uncorrectedValue: number;
  readonly components: readonly (PairLine & { readonly varianceShare: number })[];
  /** Error (truth − value) of what this pair shares with nothing: of all components without `shared` together. */
  readonly error: Distribution;
  readonly ratesProbability: number;
  readonly betweenRunsProbability: number;
  /** For each run and reading: that its pair is nothing but a misread. */
  readonly misreads: readonly (readonly number[])[];
}

/** Throws a RangeError that names what is missing. */
export function estimateDisplayPair(input: PairInput): PairEstimate {
  const { source, shown, runs, resolutionMs, level = 0.95 } = input;
  if (runs.length === 0 || runs.some(({ latenciesMs }) => latenciesMs.length === 0))
    throw new RangeError('two displays are compared by at least one run, and each run by at least one reading');
  if (!(resolutionMs > 0)) throw new RangeError('two displays need the step of the last digit: give resolutionMs');
  if (runs.some(({ latenciesMs, sourceMs }) => sourceMs?.length !== latenciesMs.length))
    throw new RangeError('two displays need both values of every reading: give sourceMs');
  const waitMs = (freeRunningIntervalMs(shown) - freeRunningIntervalMs(source)) / 2;
  const { delay, sign } = posteriorOf(input);
  const uncorrectedValue = sign * meanOf(delay.distribution) + waitMs;
  const budget = pairBudget(input, delay);
  const value = uncorrectedValue + budget.correctionMs;
  const error = budget.others
    .filter(({ shared }) => shared === null)
    .reduce(withStandardPart, centred(scaled(delay.distribution, sign)));
  const whole = budget.others.filter(({ shared }) => shared !== null).reduce(withStandardPart, error);
  const expandedUncertainty = halfWidthAbout(whole, 0, level);
  const { standardUncertainty } = budget;
  return {
    value,
    standardUncertainty,
    degreesOfFreedom: budget.degreesOfFreedom,
    interval: { low: value - expandedUncertainty, high: value + expandedUncertainty, level },
    expandedUncertainty,
    coverageFactor: expandedUncertainty / standardUncertainty,
    uncorrectedValue,
    components: budget.components,
    error,
    ratesProbability: delay.ratesProbability,
    betweenRunsProbability: delay.betweenRunsProbability,
    misreads: delay.misreads,
  };
}

/** With the display that follows its input in the place of the source, where only one does: its frames stand on a grid. */
function posteriorOf(input: PairInput): { delay: DelayPosterior; sign: 1 | -1 } {
  const [sourceFree, shownFree] = [freeRunningIntervalMs(input.source), freeRunningIntervalMs(input.shown)];
  const swapped = sourceFree > 0 && shownFree === 0;
  const {
    picture,
    source,
    shown,
    observer,
    runs,
    resolutionMs,
    variation = DEFAULT_VARIATION,
  } = swapped ? turned(input) : input;
  const frameMs = intervalMs(picture.rate);
  const bothFree = sourceFree > 0 && shownFree > 0;
  const chain: Chain = {
    source: timerOf(picture),
    body: { rate: picture.rate },
    display: shown,
    ...(observer && { observer }),
  };
  const explain =
    ({ sourceMs = [], latenciesMs }: RunInput) =>
    (times: number): Explanations =>
      bothFree
        ? freePairEvidence(chain, source, sourceMs, latenciesMs, resolutionMs, times)
        : twoTimersEvidence(chain, sourceMs, latenciesMs, resolutionMs, times, ({ shownMs }) => [
            { ticksMs: () => shownMs.map((ms) => [ms]), widthMs: 0, weight: 1, pull: 1 },
          ]);
  const even = evenSteps(runs.map(({ sourceMs = [] }) => sourceMs));
  const waitMs = (freeRunningIntervalMs(shown) - freeRunningIntervalMs(source)) / 2;
  const delay = delayPosterior({
    runs: (even ? runs.map(middleOf) : runs).map(explain),
    frameMs,
    aboutMs: runs.map(({ latenciesMs }) => latenciesMs.map((ms) => ms - waitMs)),
    reachMs: 1.5 * frameMs + sourceFree + shownFree + resolutionMs,
    variation,
  });
  const misreads = even ? runs.map(({ latenciesMs }) => latenciesMs.map(() => 0)) : delay.misreads;
  return { delay: { ...delay, misreads }, sign: swapped ? -1 : 1 };
}

/** Readings at even steps may all show one phase of the picture: then they say no more than the middle one. */
function middleOf({ sourceMs = [], latenciesMs }: RunInput): RunInput {
  const order = latenciesMs.map((_, i) => i).sort((a, b) => latenciesMs[a]! - latenciesMs[b]!);
  const middle = order[Math.floor((order.length - 1) / 2)]!;
  return { latenciesMs: [latenciesMs[middle]!], sourceMs: [sourceMs[middle]!] };
}

function timerOf({ rate, clockTolerancePpm }: PairPicture) {
  return { refresh: rate, ...(clockTolerancePpm === undefined ? {} : { clockTolerancePpm }) };
}

function turned(input: PairInput): PairInput {
  return {
    ...input,
    source: input.shown,
    shown: input.source,
    runs: input.runs.map(({ latenciesMs, sourceMs = [] }) => ({
      latenciesMs: latenciesMs.map((ms) => -ms),
      sourceMs: sourceMs.map((ms, i) => ms - latenciesMs[i]!),
    })),
  };
}
