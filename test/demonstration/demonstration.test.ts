import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { drawPng } from '../../src/pictures/draw-png.ts';
import { readBench } from '../../src/ingest/read-bench.ts';
import { intervalMs, rateKey } from '../../src/model/rate.ts';
import { DISPLAY_PAIRS, pairFront, pairReadings } from './display-pairs.ts';
import type { BodyId, PlannedSession } from './plan.ts';
import { stillSvg, swingSvg } from './pictures.ts';
import { RIGS, rateOf } from './rigs.ts';
import { SESSIONS } from './sessions.ts';
import { BODIES, CLOCKS_PPM, trueReadingTotalMs, trueTotalMs } from './truth.ts';
import { frontMatterText, readingsText } from './write.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const DATA = `${ROOT}data/`;
const BODY_IDS: readonly BodyId[] = ['dunmere-30', 'skelby-dome', 'vennick-q4'];

const conditionOf = ({ settings }: PlannedSession): string => JSON.stringify(settings);
const readingsOf = ({ runs }: PlannedSession): number => runs.reduce((sum, run) => sum + run.readings, 0);

describe('the committed sessions', () => {
  it.each(SESSIONS.map((session) => [session.id, session] as const))(
    '%s is byte for byte what the generator writes',
    (id, session) => {
      expect(readFileSync(`${DATA}sessions/${id}.csv`, 'utf8')).toBe(readingsText(session));
      expect(readFileSync(`${DATA}sessions/${id}.md`, 'utf8')).toBe(frontMatterText(session));
    },
  );

  it.each(DISPLAY_PAIRS.map((pair) => [pair.id, pair] as const))('%s too, of two displays', (id, pair) => {
    expect(readFileSync(`${DATA}display-pairs/${id}.csv`, 'utf8')).toBe(pairReadings(pair));
    expect(readFileSync(`${DATA}display-pairs/${id}.md`, 'utf8')).toBe(pairFront(pair));
  });

  it.each([
    ['one-still.png', stillSvg()],
    ['swing.png', swingSvg(0)],
  ])('the picture %s is what the generator draws', async (name, svg) => {
    const committed = readFileSync(`${ROOT}content/reports/pictures/${name}`);
    expect(committed.equals(Buffer.from(await drawPng(svg)))).toBe(true);
  });

  it('are all there are', () => {
    const planned = SESSIONS.flatMap(({ id }) => [`${id}.csv`, `${id}.md`]).sort();
    expect(readdirSync(`${DATA}sessions`).sort()).toEqual(planned);
  });
});

describe('the scenario', () => {
  it.each(BODY_IDS)('has at least six conditions of %s', (body) => {
    const conditions = new Set(SESSIONS.filter((session) => session.body === body).map(conditionOf));
    expect(conditions.size).toBeGreaterThanOrEqual(6);
  });

  it.each(BODY_IDS)('sets %s to both outputs', (body) => {
    const settings = SESSIONS.filter((session) => session.body === body).map((session) => session.settings);
    expect(new Set(settings.map(({ output }) => output))).toEqual(new Set(['hd', 'uhd']));
  });

  it.each(['stabiliser', 'noise-reduction', 'assist', 'fan', 'sync'] as const)('changes %s on some body', (setting) =>
    expect(new Set(SESSIONS.map(({ settings }) => settings[setting])).size).toBeGreaterThan(1),
  );

  it('has rates from 24000/1001 to 100', () => {
    const keys = new Set(SESSIONS.map(({ settings }) => rateKey(rateOf(settings))));
    expect([...keys].sort()).toEqual(['100', '24000/1001', '25', '30000/1001', '50', '60000/1001'].sort());
  });

  it('puts every body on both rigs, and the radio pair behind at least one', () => {
    const seen = new Set(SESSIONS.map(({ body, rig, links = [] }) => [body, rig, ...links].join(' ')));
    expect([...seen]).toEqual(expect.arrayContaining(BODY_IDS.flatMap((body) => [`${body} balcony`, `${body} pit`])));
    expect([...seen].filter((one) => one.endsWith(' pit radio-pair')).length).toBeGreaterThanOrEqual(1);
  });

  it('takes ten to thirty readings in one to four runs, everywhere', () => {
    expect(SESSIONS).toHaveLength(44);
    for (const session of SESSIONS) {
      expect(readingsOf(session), session.id).toBeGreaterThanOrEqual(10);
      expect(readingsOf(session), session.id).toBeLessThanOrEqual(30);
      expect(session.runs.length, session.id).toBeGreaterThanOrEqual(1);
      expect(session.runs.length, session.id).toBeLessThanOrEqual(4);
    }
  });

  it('excludes some readings with a reason, cuts one session short, and uses all three methods', () => {
    const excluded = SESSIONS.flatMap(({ spoiled = [] }) => spoiled);
    expect(excluded.length).toBeGreaterThanOrEqual(2);
    for (const { exclude, note } of excluded) expect(exclude && note).not.toBe('');
    expect(SESSIONS.filter(({ cutShort }) => cutShort?.includes('temperature'))).toHaveLength(1);
    expect(new Set(SESSIONS.map(({ method }) => method))).toEqual(new Set(['two-timers', 'frame-count', 'instrument']));
  });

  it('repeats seven conditions on other days, one on three, and changes the firmware between two sessions alike in all else', () => {
    const daysOf = Object.values(
      Object.groupBy(SESSIONS, (one) => JSON.stringify([one.body, one.firmware, one.rig, one.links, one.settings])),
    ).map((alike = []) => new Set(alike.map(({ date }) => date)).size);
    expect(daysOf.filter((days) => days > 1)).toHaveLength(7);
    expect(Math.max(...daysOf)).toBe(3);
    const firmware = SESSIONS.filter(({ id }) => id === 'dunmere-uhd25-a' || id === 'dunmere-uhd25-fw53');
    expect(new Set(firmware.map(conditionOf)).size).toBe(1);
    expect(firmware.map((session) => session.firmware)).toEqual(['5.1', '5.3']);
  });

  it('varies at every level: readings, clips by parts of a frame and by whole frames, and days', () => {
    for (const body of Object.values(BODIES)) expect(Math.min(body.jitterMs, body.clipMs)).toBeGreaterThan(0);
    const at = (id: string, run: number): number =>
      trueReadingTotalMs(SESSIONS.find((session) => session.id === id)!, run, 0);
    // at 50 frames a second
    expect(Math.abs(at('dunmere-uhd50-steady', 1) - at('dunmere-uhd50-steady', 0) - 2 * 20)).toBeLessThan(2 * 1.5);
    const days = SESSIONS.map((session) => trueTotalMs(session, 'day') - trueTotalMs(session, 'condition'));
    expect(new Set(days.map((ms) => ms.toFixed(6))).size).toBeGreaterThan(10);
    expect(Math.max(...days.map(Math.abs))).toBeLessThan(4);
  });

  it('leaves one misread in, which is typed as if it were right', () => {
    const misread = SESSIONS.filter((session) => session.misread !== undefined);
    expect(misread.map(({ id }) => id)).toEqual(['skelby-uhd25-a']);
    const { run, reading, shownError } = misread[0]!.misread!;
    const rows = (session: PlannedSession): string[] =>
      readingsText(session)
        .split('\n')
        .filter((row) => row.startsWith(`${run},`));
    const { misread: _misread, ...right } = misread[0]!;
    const shownMs = (row = ''): number => Math.round(1000 * Number(row.split(',')[2]?.split(':')[1]));
    const [typed, true_] = [rows(misread[0]!)[reading - 1], rows(right)[reading - 1]];
    expect(shownMs(typed) - shownMs(true_)).toBe(shownError);
    expect(typed).toMatch(/,,$/);
  });

  it('lets the tablet pass its hundred seconds within a reading', () => {
    const rows = readingsText(SESSIONS.find(({ id }) => id === 'dunmere-pit-uhd60')!)
      .split('\n')
      .slice(1, -1);
    const straddling = rows
      .map((row) => row.split(',').slice(1, 3).map(Number))
      .filter(([source, shown]) => source! < shown!);
    expect(straddling).toHaveLength(1);
  });
});

describe('the bench as the site reads it', () => {
  const bench = readBench({ root: ROOT, dataDir: 'data', contentDir: 'content' });

  it('has every body, rig, session, method note and report, all marked as invented', async () => {
    const { bodies, displays, links, rigs, sessions, methods, reports } = await bench;
    expect(bodies.map(({ id }) => id)).toEqual(BODY_IDS);
    expect([displays, links, rigs, sessions, methods, reports].map((list) => list.length)).toEqual([
      4,
      1,
      3,
      SESSIONS.length,
      5,
      2,
    ]);
    for (const { id, invented } of [...bodies, ...displays, ...links, ...rigs]) expect(invented, id).toBe(true);
  });

  it.each(SESSIONS.map((session) => [session.id, session] as const))(
    'finds in %s what was planned',
    async (id, planned) => {
      const session = (await bench).sessions.find((one) => one.id === id)!;
      expect(session.settings).toEqual(planned.settings);
      expect(session.links).toEqual(planned.links ?? []);
      expect(session.cutShort).toBe(planned.cutShort);
      expect(session.readings).toHaveLength(readingsOf(planned));
      expect(session.readings.filter(({ excluded }) => excluded !== undefined)).toHaveLength(
        planned.spoiled?.length ?? 0,
      );
    },
  );

  it.each(Object.keys(RIGS) as (keyof typeof RIGS)[])('states the rig %s as the simulation took it', async (id) => {
    const truth = RIGS[id];
    const { rigs, displays } = await bench;
    const { sourceTimer, observer, display: displayId, digitsRow } = rigs.find((rig) => rig.id === id)!;
    const { refresh, sync, scanOutMs } = displays.find((display) => display.id === displayId)!;
    const { name: _name, ...observerStated } = observer!;
    expect({
      source: sourceTimer && { refresh: sourceTimer.refresh, clockTolerancePpm: sourceTimer.clockTolerancePpm },
      wrapsAfterMs: sourceTimer?.wrapsAfterMs,
      display: { refresh, sync, scanOutMs, digitsRow },
      observer: observerStated,
    }).toEqual({
      source: truth.source,
      wrapsAfterMs: truth.wrapsAfterMs,
      display: truth.display,
      observer: truth.observer,
    });
    expect(truth.observer.readoutMs, 'a sensor is read within its frame').toBeLessThanOrEqual(
      intervalMs(truth.observer.rate),
    );
    for (const ppm of Object.values(CLOCKS_PPM))
      expect(Math.abs(ppm)).toBeLessThanOrEqual(truth.observer.clockTolerancePpm!);
  });
});
