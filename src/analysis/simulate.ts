/**
 * One run of readings as a chain with a known pipeline delay would give them: a seeded simulation.
 *
 * Time runs in ms from the start of the run. Every device keeps its own clock, off by the ppm given, and
 * starts at a phase drawn once for the run:
 *
 *     source     refreshes every T_s and then shows its clock, cut to the resolution r
 *     body       ends a capture every T_d; the digits read in a frame are those shown at that end
 *     pipeline   L from the end of a capture to first light in mid-screen (links included)
 *     display    follows its input, or picks up the newest frame every T_m; draws row by row
 *     observer   exposes a frame every T_o, and reads its sensor row by row
 *
 * Where digits overlap within an exposure the newest are read, on the source and on the display alike.
 */
import { intervalMs, type Rate } from '../model/rate.ts';
import { freeRunningIntervalMs, type Chain } from './chain.ts';
import type { Random } from './random.ts';

/** What the simulation knows and an analysis does not. */
export interface Truth {
  /** From the end of a frame's capture to its first light in the middle of the display. */
  readonly pipelineMs: number;
  /** By how much each clock runs fast; 0 where absent. A display that follows its input has no clock. */
  readonly clockPpm?: {
    readonly source?: number;
    readonly body?: number;
    readonly display?: number;
    readonly observer?: number;
  };
  /** Half-width of a delay added to L, drawn uniformly and afresh for every reading; 0 where absent. */
  readonly jitterMs?: number;
}

export interface Sampling {
  readonly readings: number;
  /** Mean time from one reading to the next. */
  readonly spacingMs: number;
  /** Half-width of the uniform scatter of that time, as a share of it: 0.5 is ±50 %; 0.5 where absent. */
  readonly spacingScatter?: number;
  /** What the source timer shows when the run starts; 0 where absent. */
  readonly startMs?: number;
}

/** Stamps as read: each is the value shown, cut to the resolution. */
export interface Stamp {
  readonly sourceMs: number;
  readonly shownMs: number;
}

/** One run with two timers in one picture. `resolutionMs` is the step of the timer's last digit. */
export function simulateTwoTimers(
  chain: Chain,
  truth: Truth,
  sampling: Sampling,
  resolutionMs: number,
  random: Random,
): Stamp[] {
  if (!chain.source) throw new RangeError('two timers need a source timer: give chain.source');
  const source = clock(intervalMs(chain.source.refresh), truth.clockPpm?.source, random);
  const devices = startDevices(chain, truth, random);
  const startMs = sampling.startMs ?? 0;
  const sourceSpeed = 1 + (truth.clockPpm?.source ?? 0) * 1e-6;
  const valueAt = (timeMs: number): number => cut(startMs + source.lastTick(timeMs) * sourceSpeed, resolutionMs);
  const readoutMs = chain.observer?.readoutMs ?? 0;

  return observingMoments(sampling, devices.observer, random).map((momentMs) => {
    const jitterMs = drawJitter(truth, random);
    const sourceSeenMs = momentMs + readoutMs * (chain.observer?.sourceRow ?? 0.5);
    const displaySeenMs = momentMs + readoutMs * (chain.observer?.displayRow ?? 0.5);
    const litMs = displaySeenMs - devices.drawnAfterMs;
    const pickedUpMs = devices.display ? devices.display.lastTick(litMs) : litMs;
    const capturedMs = devices.body.lastTick(pickedUpMs - truth.pipelineMs - jitterMs);
    return { sourceMs: valueAt(sourceSeenMs), shownMs: valueAt(capturedMs) };
  });
}

/** One run of flashes, each counted in observer frames from the flash itself to its light on the display. */
export function simulateFrameCounts(chain: Chain, truth: Truth, sampling: Sampling, random: Random): number[] {
  if (!chain.observer) throw new RangeError('frame counts need an observer: give chain.observer');
  const devices = startDevices(chain, truth, random);
  const observer = devices.observer!;
  const readoutMs = chain.observer.readoutMs ?? 0;

  return observingMoments(sampling, undefined, random).map((flashMs) => {
    const capturedMs = devices.body.nextTick(flashMs);
    const readyMs = capturedMs + truth.pipelineMs + drawJitter(truth, random);
    const shownMs = (devices.display ? devices.display.nextTick(readyMs) : readyMs) + devices.drawnAfterMs;
    const flashFrame = observer.nextIndex(flashMs - readoutMs * (chain.observer?.sourceRow ?? 0.5));
    const shownFrame = observer.nextIndex(shownMs - readoutMs * (chain.observer?.displayRow ?? 0.5));
    return shownFrame - flashFrame;
  });
}

/** Two displays that show one picture; a refresh of 0 where a display follows its input. */
interface TwoDisplays {
  readonly pictureRate: Rate;
  readonly sourceRefreshMs: number;
  readonly shownRefreshMs: number;
  readonly observerRate: Rate | undefined;
  readonly resolutionMs: number;
}

/** One run of readings off two displays that are so long behind the picture that both are sent. */
export function simulateDisplayPair(
  { pictureRate, sourceRefreshMs, shownRefreshMs, observerRate, resolutionMs }: TwoDisplays,
  delays: { readonly sourceMs: number; readonly shownMs: number },
  sampling: Sampling,
  random: Random,
): Stamp[] {
  const picture = clock(intervalMs(pictureRate), 0, random);
  const [source, shown] = [sourceRefreshMs, shownRefreshMs].map((refreshMs) =>
    refreshMs > 0 ? clock(refreshMs, 0, random) : undefined,
  );
  const observer = observerRate && clock(intervalMs(observerRate), 0, random);
  const digitsOn = (display: Clock | undefined, momentMs: number, delayMs: number): number =>
    cut(picture.lastTick((display?.lastTick(momentMs) ?? momentMs) - delayMs), resolutionMs);
  return observingMoments(sampling, observer, random).map((momentMs) => ({
    sourceMs: digitsOn(source, momentMs, delays.sourceMs),
    shownMs: digitsOn(shown, momentMs, delays.shownMs),
  }));
}

interface Clock {
  /** The last moment at or before `timeMs` at which the device ticked. */
  readonly lastTick: (timeMs: number) => number;
  /** The first moment at or after it. */
  readonly nextTick: (timeMs: number) => number;
  /** The number of that tick. */
  readonly nextIndex: (timeMs: number) => number;
}

interface Devices {
  readonly body: Clock;
  /** Absent where the display follows its input. */
  readonly display?: Clock;
  /** Absent where nobody described it: readings may then fall at any moment. */
  readonly observer?: Clock;
  /** From the middle row of a refresh to the row of the digits; negative above the middle. */
  readonly drawnAfterMs: number;
}

function startDevices(chain: Chain, truth: Truth, random: Random): Devices {
  const displayMs = freeRunningIntervalMs(chain.display);
  return {
    body: clock(intervalMs(chain.body.rate), truth.clockPpm?.body, random),
    ...(displayMs > 0 && { display: clock(displayMs, truth.clockPpm?.display, random) }),
    ...(chain.observer && { observer: clock(intervalMs(chain.observer.rate), truth.clockPpm?.observer, random) }),
    drawnAfterMs: (chain.display.scanOutMs ?? 0) * ((chain.display.digitsRow ?? 0.5) - 0.5),
  };
}

/** A clock that ticks every `nominalMs` by its own reckoning, from a phase drawn here. */
function clock(nominalMs: number, fastPpm = 0, random: Random): Clock {
  const stepMs = nominalMs / (1 + fastPpm * 1e-6);
  const phaseMs = random.uniform() * stepMs;
  const nextIndex = (timeMs: number): number => Math.ceil((timeMs - phaseMs) / stepMs);
  return {
    lastTick: (timeMs) => phaseMs + Math.floor((timeMs - phaseMs) / stepMs) * stepMs,
    nextTick: (timeMs) => phaseMs + nextIndex(timeMs) * stepMs,
    nextIndex,
  };
}

/** When readings are taken: spaced with scatter, on the observer's frames where it is known. */
function observingMoments(sampling: Sampling, observer: Clock | undefined, random: Random): number[] {
  const { readings, spacingMs, spacingScatter = 0.5 } = sampling;
  let timeMs = random.uniform() * spacingMs;
  return Array.from({ length: readings }, () => {
    timeMs += spacingMs * random.between(1 - spacingScatter, 1 + spacingScatter);
    return observer ? observer.nextTick(timeMs) : timeMs;
  });
}

function drawJitter({ jitterMs = 0 }: Truth, random: Random): number {
  return jitterMs * random.between(-1, 1);
}

/** Cuts to a multiple of the step, as digits on a screen are; the small allowance keeps 0.3 / 0.1 at 3. */
function cut(valueMs: number, stepMs: number): number {
  return Math.floor(valueMs / stepMs + 1e-9) * stepMs;
}
