import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { freeRunningIntervalMs } from '../../src/analysis/chain.ts';
import { intervalMs, rate } from '../../src/model/rate.ts';
import type { PlannedSession, RigId } from './plan.ts';
import { chainOf, RIGS, rowShiftMs } from './rigs.ts';
import { SESSIONS } from './sessions.ts';
import { BODIES, DISPLAYS_MS, trueTotalMs } from './truth.ts';
import { RESOLUTION_MS } from './write.ts';

const DATA = fileURLToPath(new URL('../../data/sessions/', import.meta.url));

/**
 * One reading's variance when all phases are equally likely, in ms²: `T_d²/12 + T_s²/6 + T_m²/12 + r²/6`
 * (derived: one uniform age of the picture, two of the timer's values, two truncations). Counted observer
 * frames have two uniform roundings to `T_o` instead of the timer's terms; an edge timed by light sensors has neither.
 */
function readingVariance(session: PlannedSession): number {
  const { body, source, display, observer } = chainOf(session);
  const pictureMs2 = intervalMs(body.rate) ** 2 / 12 + freeRunningIntervalMs(display) ** 2 / 12;
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

/** 59.94 and 60 Hz slide past each other once in 1/(60 − 60000/1001) s; other pairs of rates here do so faster, or at once. */
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
  const meanMs = sum(readings.map(({ latencyMs }) => latencyMs)) / readings.length;
  return {
    errorMs: meanMs - rowShiftMs(session) - trueTotalMs(session),
    variance: meanVarianceAtMost(session, counted),
  };
}

describe('the plain mean of the counted readings, less what the rig shifts, is near the truth', () => {
  // Four standard deviations: a normal error would lie outside in 1 session of 16 000, one with bounded terms more rarely.
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
  it.each([
    ['orrin-uhd24-a', 300],
    ['orrin-uhd30-a', 250],
    ['orrin-uhd60-a', 120],
  ])('%s lies near %d ms (common practice, no source)', (id, usualMs) => {
    expect(Math.abs(trueTotalMs(planned(id)) - usualMs)).toBeLessThan(10);
  });

  it.each([
    ['orrin-uhd24-audio', 'orrin-uhd24-a'],
    ['orrin-uhd60-audio', 'orrin-uhd60-a'],
  ])('embedded audio adds 30 to 50 per cent to the Orrin: %s against %s', (on, off) => {
    const share = trueTotalMs(planned(on)) / trueTotalMs(planned(off)) - 1;
    expect(share).toBeGreaterThan(0.3);
    expect(share).toBeLessThan(0.5);
  });

  it('embedded audio adds nothing to the Wexley, and more to the Tamsel in UHD than in HD', () => {
    const added = (on: string, off: string): number => trueTotalMs(planned(on)) - trueTotalMs(planned(off));
    expect(added('wexley-hd60-audio', 'wexley-hd60-a')).toBeCloseTo(0, 9);
    expect(added('tamsel-uhd25-audio', 'tamsel-uhd25-a')).toBeGreaterThan(
      4 * added('tamsel-hd25-audio', 'tamsel-hd25-a'),
    );
  });

  it('the Wexley is no faster at 120000/1001 than at 60000/1001', () => {
    expect(trueTotalMs(planned('wexley-hd120-a'))).toBeCloseTo(trueTotalMs(planned('wexley-hd60-a')), 9);
  });

  it('the radio pair adds the same behind either body', () => {
    for (const body of ['orrin', 'wexley']) {
      expect(trueTotalMs(planned(`${body}-pit-uhd60-radio`)) - trueTotalMs(planned(`${body}-pit-uhd60`))).toBeCloseTo(
        38,
        9,
      );
    }
  });

  it('no body is faster than its physics: half a frame interval remains beyond display and pipeline', () => {
    for (const { fixedMs, frames, floorIntervalMs } of Object.values(BODIES)) {
      const fastestMs = intervalMs(rate(120000, 1001));
      expect(fixedMs + frames * Math.max(fastestMs, floorIntervalMs)).toBeGreaterThan(fastestMs / 2);
    }
    for (const displayMs of Object.values(DISPLAYS_MS)) expect(displayMs).toBeGreaterThanOrEqual(0);
  });
});
