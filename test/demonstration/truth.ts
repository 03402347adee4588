/**
 * What is true in the demonstration and written nowhere in `data/`: the laws by which the invented bodies,
 * displays and links delay a picture, and how much that varies. Tests hold the site's figures against it.
 *
 * The total of a condition, in ms, in the middle of the display (the measurand: mean age of the picture):
 *
 *     total = fixed + frames × max(T_d, T_floor) + settings + firmware   the body, half a frame interval included
 *           + share of clips that start a frame deeper × T_d
 *           + links
 *           + display (+ T_m / 2 where it free-runs)
 *
 * so a perfect fit of total against frame interval finds `fixed` plus display as its intercept and `frames` as
 * its slope. Around it vary, each from the seed or from a table here:
 *
 *     a day       what setting everything up adds to all sessions of that day
 *     a clip      a little, and whole frame intervals where the body's buffer started deeper
 *     a reading   jitter of the body's frames
 *     drift       what a body adds while it gets warm
 *
 * All numbers are invented.
 */
import type { Level } from '../../src/analysis/variation.ts';
import { seededRandom } from '../../src/analysis/random.ts';
import { intervalMs, rate } from '../../src/model/rate.ts';
import type { BodyId, PlannedSession, PlannedSettings, RigId } from './plan.ts';
import { RIGS, rateOf } from './rigs.ts';
import { seedOf } from './seed.ts';

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
  /** Half-width of what its frames jitter by, from reading to reading. */
  readonly jitterMs: number;
  /** Half-width of what a clip adds. */
  readonly clipMs: number;
  /** Share of its clips that start one frame deeper. */
  readonly deeperShare: number;
}

/** What waiting for the house reference costs the Vennick, in frame intervals. */
const GENLOCK_FRAMES = 1.1;
const VENNICK_ASSIST_MS = 15;

export const BODIES: Readonly<Record<BodyId, BodyTruth>> = {
  'vennick-q4': {
    fixedMs: 31,
    frames: 3.2,
    floorIntervalMs: 0,
    settingsMs: (settings) =>
      (settings.sync === 'genlock' ? GENLOCK_FRAMES * intervalMs(rateOf(settings)) : 0) +
      (settings.assist === 'on' ? VENNICK_ASSIST_MS : 0) +
      (settings.output === 'hd' ? 0.4 : 0),
    firmwareMs: { '1.40': 0 },
    jitterMs: 0.6,
    clipMs: 0.8,
    deeperShare: 0,
  },
  'dunmere-30': {
    fixedMs: 78,
    frames: 3.1,
    // its pipeline turns at 40 Hz at most
    floorIntervalMs: intervalMs(rate(40)),
    settingsMs: (settings) =>
      (settings.stabiliser === 'on' ? 64 : 0) +
      (Number(settings['noise-reduction']) / 3) * (settings.output === 'uhd' ? 33 : 6) +
      (settings.output === 'hd' ? -1.2 : 0),
    firmwareMs: { '5.1': 0, '5.3': 17 },
    jitterMs: 2.5,
    clipMs: 1.5,
    deeperShare: 0.06,
  },
  'skelby-dome': {
    fixedMs: 97,
    frames: 0.7,
    floorIntervalMs: 0,
    settingsMs: (settings) =>
      (settings.output === 'hd' ? 19 : 0) +
      (settings.stabiliser === 'on' ? 11 : 0) +
      (Number(settings['noise-reduction']) / 3) * 7,
    firmwareMs: { '2.0.6': 0 },
    jitterMs: 1.2,
    clipMs: 1,
    deeperShare: 0,
  },
};

/** From its input to first light in its middle, the wait for its own refresh not included. */
export const DISPLAYS_MS: Readonly<Record<RigId, number>> = { balcony: 9, pit: 20, workshop: 11.2 };

export const LINKS_MS = { 'radio-pair': 26 } as const;

/** Reproducibility: what setting everything up on a day adds to all sessions of that day. */
const DAYS_MS: Readonly<Record<string, number>> = {
  '2026-03-03': 0.3,
  '2026-03-10': 0.9,
  '2026-03-11': -1.3,
  '2026-03-12': 0.4,
  '2026-03-17': -0.7,
  '2026-03-18': 1.2,
  '2026-03-19': -0.2,
  '2026-03-20': -0.9,
  '2026-03-24': 2.1,
  '2026-03-25': -0.4,
  '2026-04-01': 0.8,
  '2026-04-02': -1.1,
  '2026-04-03': -1.6,
  '2026-04-08': 0.5,
  '2026-04-09': 0.6,
  '2026-04-14': -0.5,
};

/** Clips that started deeper by this many frame intervals: as many as that body's share makes likely. */
const DEEPER: Readonly<Record<string, readonly number[]>> = {
  'dunmere-uhd50-steady': [0, 2, 0],
  'dunmere-uhd60-b': [0, 0, 1],
};

/** What a body adds from switching on: it climbs towards `finallyMs` exponentially. */
const DRIFTS: Readonly<Record<string, { readonly finallyMs: number; readonly timeConstantS: number }>> = {
  'skelby-pit-uhd60-quiet': { finallyMs: 34, timeConstantS: 150 },
};

/** Clocks run fast by these, within what the rigs state (±50 ppm). */
export const CLOCKS_PPM = { source: -21, body: 13, display: -6, observer: 27 } as const;

/** The body by itself in the condition of a session, in ms: on the mean over all days and clips. */
export function bodyMs({ body: id, settings, firmware, ...session }: PlannedSession): number {
  const body = BODIES[id];
  const firmwareMs = body.firmwareMs[firmware];
  if (firmwareMs === undefined) throw new RangeError(`${session.id}: the truth knows no firmware ${firmware}`);
  const frameMs = intervalMs(rateOf(settings));
  const lawMs = body.fixedMs + body.frames * Math.max(frameMs, body.floorIntervalMs);
  return lawMs + body.settingsMs(settings) + firmwareMs + body.deeperShare * frameMs;
}

/** The display on the mean, its own wait for a refresh included. */
export function displayMs(rig: RigId): number {
  const { display } = RIGS[rig];
  return DISPLAYS_MS[rig] + (display.sync === 'free' ? intervalMs(display.refresh) / 2 : 0);
}

/** True total of one reading but for its jitter, in ms; runs and readings are numbered from 0. */
export function trueReadingTotalMs(session: PlannedSession, runIndex: number, readingIndex: number): number {
  return conditionMs(session) + dayMs(session) + clipMs(session, runIndex) + driftMs(session, runIndex, readingIndex);
}

/**
 * True total of a session, in ms, at the level of which a figure speaks: the mean over the readings of its own clips
 * that count, its day over all clips, or its condition over all days and clips.
 */
export function trueTotalMs(session: PlannedSession, of: Level = 'clips'): number {
  const ofReadings = session.runs.flatMap((run, runIndex) =>
    Array.from({ length: run.readings }, (_, readingIndex) => ({
      counts: !session.spoiled?.some((one) => one.run === runIndex + 1 && one.reading === readingIndex + 1),
      clipMs: clipMs(session, runIndex),
      driftMs: driftMs(session, runIndex, readingIndex),
    })),
  );
  const counted = ofReadings.filter(({ counts }) => counts);
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  return (
    conditionMs(session) +
    mean(counted.map((reading) => reading.driftMs)) +
    (of === 'condition' ? 0 : dayMs(session)) +
    (of === 'clips' ? mean(counted.map((reading) => reading.clipMs)) : 0)
  );
}

function conditionMs(session: PlannedSession): number {
  const linksMs = (session.links ?? []).reduce((sum, link) => sum + LINKS_MS[link], 0);
  return bodyMs(session) + linksMs + displayMs(session.rig);
}

function dayMs({ id, date }: PlannedSession): number {
  const ms = DAYS_MS[date];
  if (ms === undefined) throw new RangeError(`${id}: the truth knows no day ${date}`);
  return ms;
}

/** What a clip adds, less what all clips of that body add on the mean. */
function clipMs({ id, body: name, settings }: PlannedSession, runIndex: number): number {
  const body = BODIES[name];
  const deeper = (DEEPER[id]?.[runIndex] ?? 0) - body.deeperShare;
  return (
    seededRandom(seedOf(`${id}/clip`, runIndex)).between(-body.clipMs, body.clipMs) +
    deeper * intervalMs(rateOf(settings))
  );
}

function driftMs(session: PlannedSession, runIndex: number, readingIndex: number): number {
  const drift = DRIFTS[session.id];
  if (!drift) return 0;
  const earlierS = session.runs.slice(0, runIndex).reduce((sum, run) => sum + run.readings * run.spacingS, 0);
  const ageS = earlierS + (readingIndex + 1) * session.runs[runIndex]!.spacingS;
  return drift.finallyMs * (1 - Math.exp(-ageS / drift.timeConstantS));
}
