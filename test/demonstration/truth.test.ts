import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { freeRunningIntervalMs } from '../../src/analysis/chain.ts';
import { intervalMs, rate } from '../../src/model/rate.ts';
import type { PlannedSession, RigId } from './plan.ts';
import { chainOf, RIGS, rowShiftMs } from './rigs.ts';
import { SESSIONS } from './sessions.ts';
import { BODIES, DISPLAYS_MS, trueReadingTotalMs, trueTotalMs } from './truth.ts';
import { RESOLUTION_MS } from './write.ts';

const DATA = fileURLToPath(new URL('../../data/sessions/', import.meta.url));

/**
 * One reading's variance when all phases are equally likely, in ms²: `T_d²/12 + T_s²/6 + T_m²/12 + r²/6`
 * (derived: one uniform age of the picture, two of the timer's values, two truncations), and the jitter of the body's
 * frames. Counted observer frames have two uniform roundings to `T_o` instead of the timer's terms; an edge timed by
 * light sensors has neither.
 */
function readingVariance(session: PlannedSession): number {
  const { body, source, display, observer } = chainOf(session);
  const jitterMs2 = BODIES[session.body].jitterMs ** 2 / 3;
  const pictureMs2 = intervalMs(body.rate) ** 2 / 12 + freeRunningIntervalMs(display) ** 2 / 12 + jitterMs2;
  switch (session.method) {
    case 'two-timers':
      return pictureMs2 + intervalMs(source!.refresh) ** 2 / 6 + RESOLUTION_MS ** 2 / 6;
    case 'frame-count':
      return pictureMs2 + intervalMs(observer!.rate) ** 2 / 6;
    case 'instrument':
      return pictureMs2;
  }
}

/**
 * The greatest variance that a session's mean can have, in ms²: the readings of a run may share their phases
 * altogether (rates that lock), those of different runs are independent.
 */
function meanVarianceAtMost(session: PlannedSession, counted: ReadonlyMap<number, number>): number {
  const all = sum([...counted.values()]);
  return readingVariance(session) * sum([...counted.values()].map((n) => (n / all) ** 2));
}

/**
 * 59.94 and 60 Hz slide past each other once in 1/(60 − 60000/1001) s; other pairs of rates here do so faster, or at
 * once.
 */
const LONGEST_BEAT_S = 1001 / 60;

function isWellSpread({ runs }: PlannedSession): boolean {
  return runs.every(({ readings, spacingS }) => readings * spacingS >= LONGEST_BEAT_S);
}

/**
 * The variance of the mean where every run covers a whole beat, in ms²: that of independent readings, and per run a
 * uniform error of one step of the pattern that the observer's frames make on the refreshes it films. Both are whole
 * rates, so the steps are `1 / lcm` of the two.
 */
function wellSpreadVariance(session: PlannedSession): number {
  const { source, display, observer } = chainOf(session);
  const filmed = [source?.refresh, display.sync === 'free' ? display.refresh : undefined].filter(
    (one) => one !== undefined,
  );
  const steps =
    session.method === 'two-timers'
      ? filmed.map(({ frames }) => 1000 / leastCommonMultiple(frames, observer!.rate.frames))
      : [];
  const all = sum(session.runs.map(({ readings }) => readings)) - (session.spoiled?.length ?? 0);
  return readingVariance(session) / all + sum(steps.map((step) => step ** 2 / 12)) / session.runs.length;
}

function leastCommonMultiple(a: number, b: number): number {
  let multiple = a;
  while (multiple % b !== 0) multiple += a;
  return multiple;
}

interface Counted {
  readonly run: number;
  readonly latencyMs: number;
}

/** Read here by hand, cell by cell, so that these checks do not lean on the code they are there to check. */
function countedReadings({ id, rig, method }: PlannedSession): Counted[] {
  const [, ...rows] = readFileSync(`${DATA}${id}.csv`, 'utf8')
    .trimEnd()
    .split('\n')
    .map((row) => row.split(','));
  return rows
    .filter((cells) => cells.at(-2) === '')
    .map((cells) => {
      const run = Number(cells[0]);
      if (method === 'frame-count') return { run, latencyMs: Number(cells[1]) * intervalMs(RIGS[rig].observer.rate) };
      if (method === 'instrument') return { run, latencyMs: Number(cells[1]) };
      const differenceMs = timeMs(cells[1]!) - timeMs(cells[2]!);
      return { run, latencyMs: differenceMs < 0 ? differenceMs + RIGS[rig].wrapsAfterMs! : differenceMs };
    });
}

function timeMs(text: string): number {
  return text.split(':').reduce((total, part) => total * 60 + Number(part), 0) * 1000;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function check(session: PlannedSession): { errorMs: number; variance: number } {
  const readings = countedReadings(session);
  const counted = new Map<number, number>();
  for (const { run } of readings) counted.set(run, (counted.get(run) ?? 0) + 1);
  const misreadMs = -(session.misread?.shownError ?? 0);
  const meanMs = (sum(readings.map(({ latencyMs }) => latencyMs)) - misreadMs) / readings.length;
  return {
    errorMs: meanMs - rowShiftMs(session) - trueTotalMs(session),
    variance: meanVarianceAtMost(session, counted),
  };
}

describe('the plain mean of the counted readings, less what the rig and a misread shift, is near the truth', () => {
  // Four standard deviations: a normal error would lie outside in 1 session of 16 000, one with bounded terms more
  // rarely.
  it.each(SESSIONS.map((session) => [session.id, session] as const))('in %s', (_id, session) => {
    const { errorMs, variance } = check(session);
    const boundMs = 4 * Math.sqrt(variance);
    expect(boundMs).toBeGreaterThan(0);
    expect(Math.abs(errorMs), `error ${errorMs.toFixed(2)} ms, bound ${boundMs.toFixed(2)} ms`).toBeLessThanOrEqual(
      boundMs,
    );
  });

  it.each(Object.keys(RIGS) as RigId[])(
    'in the well-spread sessions of rig %s together, where phases average out',
    (rig) => {
      const sessions = SESSIONS.filter((session) => session.rig === rig && isWellSpread(session));
      const errorMs = sum(sessions.map((session) => check(session).errorMs)) / sessions.length;
      const boundMs = (4 * Math.sqrt(sum(sessions.map(wellSpreadVariance)))) / sessions.length;
      expect(sessions.length).toBeGreaterThanOrEqual(2);
      expect(boundMs).toBeLessThan(5);
      expect(Math.abs(errorMs), `error ${errorMs.toFixed(2)} ms, bound ${boundMs.toFixed(2)} ms`).toBeLessThanOrEqual(
        boundMs,
      );
    },
  );
});

const planned = (id: string): PlannedSession => SESSIONS.find((session) => session.id === id)!;

describe('the truth has the structure that an analysis should find', () => {
  const trueMs = (id: string): number => trueTotalMs(planned(id), 'condition');

  it('the order of the bodies turns with the frame rate', () => {
    expect(trueMs('skelby-uhd25-a')).toBeLessThan(trueMs('vennick-uhd25-a') - 20);
    expect(trueMs('vennick-uhd60-a')).toBeLessThan(trueMs('skelby-uhd60-a') - 20);
    expect(trueMs('dunmere-uhd60-a')).toBeGreaterThan(trueMs('skelby-uhd60-a') + 20);
  });

  it('the Skelby depends on its frame rate by less than a frame, the Vennick by more than three', () => {
    const perMs = (slow: string, fast: string): number =>
      (trueMs(slow) - trueMs(fast)) /
      (intervalMs(chainOf(planned(slow)).body.rate) - intervalMs(chainOf(planned(fast)).body.rate));
    expect(perMs('skelby-uhd25-a', 'skelby-uhd60-a')).toBeCloseTo(0.7, 9);
    expect(perMs('vennick-uhd25-a', 'vennick-uhd60-a')).toBeCloseTo(3.2, 9);
  });

  it('the Dunmere gains next to nothing from 50 to 59.94, and much from 25 to 50', () => {
    expect(trueMs('dunmere-uhd50-a') - trueMs('dunmere-uhd60-a')).toBeLessThan(0.5);
    expect(trueMs('dunmere-uhd25-a') - trueMs('dunmere-uhd50-a')).toBeGreaterThan(40);
  });

  it('genlock costs the Vennick more than a frame, and noise reduction costs the Dunmere more in UHD than in HD', () => {
    expect(trueMs('vennick-uhd25-genlock') - trueMs('vennick-uhd25-a')).toBeCloseTo(1.1 * 40, 9);
    expect(trueMs('dunmere-uhd25-nr') - trueMs('dunmere-uhd25-a')).toBeGreaterThan(
      4 * (trueMs('dunmere-hd25-nr') - trueMs('dunmere-hd25-a')),
    );
  });

  it('scaling down makes the Skelby slower, and its quiet fan by itself does not', () => {
    expect(trueMs('skelby-hd50-a') - trueMs('skelby-uhd50-a')).toBeCloseTo(19, 9);
    expect(trueMs('skelby-uhd50-quiet')).toBeCloseTo(trueMs('skelby-uhd50-a'), 9);
    const [first, last] = [
      trueReadingTotalMs(planned('skelby-pit-uhd60-quiet'), 0, 0),
      trueReadingTotalMs(planned('skelby-pit-uhd60-quiet'), 1, 11),
    ];
    expect(last - first).toBeGreaterThan(20);
  });

  it.each(['vennick', 'skelby'])('the radio pair adds the same behind the %s', (body) =>
    expect(trueMs(`${body}-pit-uhd60-radio`) - trueMs(`${body}-pit-uhd60`)).toBeCloseTo(26, 9),
  );

  it('no body is faster than its physics: half a frame interval remains beyond display and pipeline', () => {
    for (const { fixedMs, frames, floorIntervalMs } of Object.values(BODIES)) {
      const fastestMs = intervalMs(rate(100));
      expect(fixedMs + frames * Math.max(fastestMs, floorIntervalMs)).toBeGreaterThan(fastestMs / 2);
    }
    for (const ms of Object.values(DISPLAYS_MS)) expect(ms).toBeGreaterThanOrEqual(0);
  });
});
