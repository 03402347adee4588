/**
 * What is true in the demonstration and written nowhere in `data/`: the laws by which the invented bodies,
 * displays and links delay a picture. Tests hold the site's figures against it.
 *
 * The total of a session, in ms, in the middle of the display (the measurand: mean age of the picture):
 *
 *     total = fixed + frames × max(T_d, T_floor) + settings + firmware   the body, half a frame interval included
 *           + links
 *           + display (+ T_m / 2 where it free-runs)
 *           + what that day added
 *
 * so a perfect fit of total against frame interval finds `fixed` plus display as its intercept and `frames` as
 * its slope. All numbers are invented. One is shaped on common practice (no source): an ordinary body takes about
 * 300, 250 and 120 ms at 24, 30 and 60 frames/s, seven to eight frame intervals each time.
 */
import { intervalMs, rate } from '../../src/model/rate.ts';
import type { BodyId, PlannedSession, PlannedSettings, RigId } from './plan.ts';
import { RIGS, rateOf } from './rigs.ts';

export interface BodyTruth {
  readonly fixedMs: number;
  /** Slope of the rate law, the half interval for which a frame stays visible included. */
  readonly frames: number;
  /** Frame intervals shorter than this help no more; 0 where there is no floor. */
  readonly floorIntervalMs: number;
  /** What the settings add. */
  readonly settingsMs: (settings: PlannedSettings) => number;
  /** What a firmware version adds to the first one tested. */
  readonly firmwareMs: Readonly<Record<string, number>>;
}

/** Extra frame intervals that embedding sound costs the Orrin: 40 % of its seven. */
const ORRIN_AUDIO_FRAMES = 2.9;

export const BODIES: Readonly<Record<BodyId, BodyTruth>> = {
  'orrin-v2': {
    fixedMs: 0,
    frames: 7.2,
    floorIntervalMs: 0,
    settingsMs: (settings) =>
      (settings['audio-out'] === 'on' ? ORRIN_AUDIO_FRAMES * intervalMs(rateOf(settings)) : 0) +
      (settings.resolution === 'hd' ? -0.5 : 0) +
      paletteMs(settings),
    firmwareMs: { '1.40': 0 },
  },
  'tamsel-6': {
    fixedMs: 58,
    frames: 2.6,
    floorIntervalMs: 0,
    settingsMs: (settings) =>
      (settings.resolution === 'uhd' ? 26 : 0) +
      (settings['audio-out'] === 'on' ? (settings.resolution === 'uhd' ? 24 : 5) : 0) +
      paletteMs(settings),
    firmwareMs: { '2.11': 0, '2.20': -21 },
  },
  'wexley-duo': {
    fixedMs: 14,
    frames: 3,
    floorIntervalMs: intervalMs(rate(60000, 1001)),
    settingsMs: (settings) => (settings.resolution === 'uhd' ? 1.5 : 0) + paletteMs(settings),
    firmwareMs: { '1.0.7': 0 },
  },
};

/** From its input to first light in its middle, the wait for its own refresh not included. */
export const DISPLAYS_MS: Readonly<Record<RigId, number>> = { balcony: 4, pit: 27, workshop: 14.1 };

export const LINKS_MS = { 'radio-pair': 38 } as const;

/** Reproducibility: what setting everything up on a day adds to all sessions of that day. */
const DAYS_MS: Readonly<Record<string, number>> = {
  '2026-03-04': 0,
  '2026-03-10': 0.6,
  '2026-03-11': -0.4,
  '2026-03-12': 0.9,
  '2026-03-17': -0.8,
  '2026-03-18': 0.3,
  '2026-03-19': 0.2,
  '2026-03-20': -0.5,
  '2026-03-24': 2.4,
  '2026-03-25': -0.3,
  '2026-04-02': 0.5,
  '2026-04-08': -0.6,
  '2026-04-09': 0.4,
  '2026-04-14': -1.9,
};

/** What a body started from cold adds at first; it dies away exponentially. */
const WARM_UP: Readonly<Record<string, { readonly firstMs: number; readonly timeConstantS: number }>> = {
  'wexley-uhd60-cold': { firstMs: 42, timeConstantS: 110 },
};

/** Clocks run fast by these, within what the rigs state (±50 ppm). */
export const CLOCKS_PPM = { source: 18, body: -7, display: 11, observer: -23 } as const;

/** Eight bits or less chroma to carry: next to nothing, on every body. */
function paletteMs(settings: PlannedSettings): number {
  return (settings['bit-depth'] === '8' ? -0.3 : 0) + (settings.chroma === '4:2:0' ? -0.2 : 0);
}

/** True total of one reading, in ms; readings are numbered from 0 within their run. */
export function trueReadingTotalMs(session: PlannedSession, runIndex: number, readingIndex: number): number {
  const body = BODIES[session.body];
  const firmwareMs = body.firmwareMs[session.firmware];
  const dayMs = DAYS_MS[session.date];
  if (firmwareMs === undefined || dayMs === undefined) {
    throw new RangeError(`${session.id}: the truth knows no firmware ${session.firmware} or no day ${session.date}`);
  }
  const { display } = RIGS[session.rig];
  const lawMs = body.fixedMs + body.frames * Math.max(intervalMs(rateOf(session.settings)), body.floorIntervalMs);
  const linksMs = (session.links ?? []).reduce((sum, link) => sum + LINKS_MS[link], 0);
  const waitMs = display.sync === 'free' ? intervalMs(display.refresh) / 2 : 0;
  return (
    lawMs +
    body.settingsMs(session.settings) +
    firmwareMs +
    linksMs +
    DISPLAYS_MS[session.rig] +
    waitMs +
    dayMs +
    warmUpMs(session, runIndex, readingIndex)
  );
}

/** True total of a session, in ms: the mean over the readings that count. */
export function trueTotalMs(session: PlannedSession): number {
  const totals = session.runs
    .flatMap((run, runIndex) => Array.from({ length: run.readings }, (_, readingIndex) => ({ runIndex, readingIndex })))
    .filter(
      ({ runIndex, readingIndex }) =>
        !session.spoiled?.some(({ run, reading }) => run === runIndex + 1 && reading === readingIndex + 1),
    )
    .map(({ runIndex, readingIndex }) => trueReadingTotalMs(session, runIndex, readingIndex));
  return totals.reduce((sum, value) => sum + value, 0) / totals.length;
}

function warmUpMs(session: PlannedSession, runIndex: number, readingIndex: number): number {
  const warmUp = WARM_UP[session.id];
  if (!warmUp) return 0;
  const earlierS = session.runs.slice(0, runIndex).reduce((sum, run) => sum + run.readings * run.spacingS, 0);
  const ageS = earlierS + (readingIndex + 1) * session.runs[runIndex]!.spacingS;
  return warmUp.firstMs * Math.exp(-ageS / warmUp.timeConstantS);
}
