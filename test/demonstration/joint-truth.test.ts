/** Whether what the site says of several sessions together recovers the truth of the demonstration. */
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { compileRegister } from '../../src/site/compile.ts';
import { pOutside } from '../../src/register/comparisons/p-outside.ts';
import type { Figure, Register } from '../../src/register/register.ts';
import { readBench } from '../../src/ingest/read-bench.ts';
import { DISPLAY_PAIRS, TABLET_MS } from './display-pairs.ts';
import type { BodyId, PlannedSession, RigId } from './plan.ts';
import { SESSIONS } from './sessions.ts';
import { BODIES, bodyMs, displayMs, DISPLAYS_MS, LINKS_MS, trueTotalMs } from './truth.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
let register: Register;

beforeAll(async () => {
  register = compileRegister(await readBench({ root: ROOT, dataDir: 'data', contentDir: 'content' }));
}, 120_000);

const figure = (id: string): Figure => {
  const found = register.figures.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no figure ${id}`);
  return found;
};

/**
 * In its own interval, twice as wide: of intervals at 95 %, 1 in 20 misses, and one so wide about 1 in 10 000 (normal).
 */
function expectNear(found: Figure, truth: number): void {
  const { low = Number.NaN, high = Number.NaN } = found.interval ?? {};
  expect(high).toBeGreaterThan(low);
  expect(Math.abs(found.value - truth), `${found.id}: ${found.text}, truth ${truth.toFixed(2)}`).toBeLessThanOrEqual(
    high - low,
  );
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

const DISPLAY_OF: Readonly<Record<RigId, string>> = {
  balcony: 'stage-screen',
  pit: 'pit-monitor',
  workshop: 'bench-panel',
};

/** Of the display that a total was carried to. */
function delayOf({ display, delay }: Figure['of']): number {
  if (display === undefined) return Number.parseFloat(delay ?? '');
  const [rig] = Object.entries(DISPLAY_OF).find(([, id]) => id === display) ?? [];
  return rig === undefined ? TABLET_MS : displayMs(rig as RigId);
}

describe('rate laws', () => {
  const STAGE_MS = DISPLAYS_MS.balcony;
  // Fixed part: the body's own, what its settings add whatever the rate, and the display. Frames: those settings that
  // cost frames too.
  it.each([
    ['vennick-q4/1.40/balcony/uhd-off-0-off-auto-free', 31 + STAGE_MS, 3.2],
    ['vennick-q4/1.40/balcony/uhd-off-0-off-auto-genlock', 31 + STAGE_MS, 3.2 + 1.1],
    ['dunmere-30/5.1/balcony/uhd-off-0-off-auto-free', 78 + STAGE_MS, 3.1 + 0.06],
    ['skelby-dome/2.0.6/balcony/uhd-off-0-off-auto-free', 97 + STAGE_MS, 0.7],
    ['skelby-dome/2.0.6/balcony/hd-off-0-off-auto-free', 97 + 19 + STAGE_MS, 0.7],
  ])('%s', (name, fixedMs, frames) => {
    expectNear(figure(`rate-law-fixed/${name}`), fixedMs);
    expectNear(figure(`rate-law-frames/${name}`), frames);
  });

  it('find the floor of the Dunmere, its place, and none on another body', () => {
    const name = 'dunmere-30/5.1/balcony/uhd-off-0-off-auto-free';
    const { fixedMs, frames, floorIntervalMs } = BODIES['dunmere-30'];
    // the floor speaks of the clips that were read: what their days, and one clip that began a frame deeper, added to
    // them
    const onFloor = SESSIONS.filter(
      ({ body, rig, settings }) =>
        body === 'dunmere-30' &&
        rig === 'balcony' &&
        settings.output === 'uhd' &&
        settings.stabiliser === 'off' &&
        settings['noise-reduction'] === '0' &&
        ['50', '59.94'].includes(settings.rate),
    );
    expect(onFloor.length).toBeGreaterThan(2);
    const added = onFloor.map((session) => trueTotalMs(session, 'clips') - trueTotalMs(session, 'condition'));
    expectNear(
      figure(`rate-law-floor/${name}`),
      fixedMs + frames * floorIntervalMs + displayMs('balcony') + mean(added),
    );
    expectNear(figure(`rate-law-break/${name}`), floorIntervalMs);
    expect(figure(`rate-law-floor-test/${name}`).value).toBeLessThan(0.05);
    expect(register.figures.filter(({ kind }) => kind === 'rate-law-floor')).toHaveLength(1);
  });
});

describe('the chain', () => {
  it('the radio pair', () => expectNear(figure('element/link/radio-pair'), LINKS_MS['radio-pair']));

  it.each(Object.entries(DISPLAY_OF) as [RigId, string][])(
    'the display of the %s, through the one that is stated',
    (rig, display) => expectNear(figure(`element/display/${display}`), displayMs(rig)),
  );

  it('the pit monitor against the stage screen, through nothing stated', () =>
    expectNear(figure('element/display/pit-monitor/than/stage-screen'), displayMs('pit') - displayMs('balcony')));

  it.each(DISPLAY_PAIRS.map(({ id, differenceMs }) => [id, differenceMs] as const))(
    'two displays side by side, %s',
    (id, differenceMs) => expectNear(figure(`display-difference/${id}`), differenceMs),
  );

  it('the screen of the tablet, which only mirrored', () =>
    expectNear(figure('element/display/tablet-screen'), TABLET_MS));

  it.each(Object.keys(BODIES) as BodyId[])('the lowest total of the %s, carried to every display', (body) => {
    const carried = register.figures.filter(({ id }) => id.startsWith(`carried/${body}/on/`));
    expect(carried.length).toBeGreaterThan(1);
    for (const found of carried) {
      const session = SESSIONS.find((one) => conditionOf(one) === found.of['condition']);
      if (session === undefined) throw new Error(`no session of ${found.of['condition']}`);
      expectNear(found, bodyMs(session) + delayOf(found.of));
    }
  });

  it('what the new firmware of the Dunmere adds, though each was measured in front of a display of its own', () => {
    const found = register.figures.filter(({ kind }) => kind === 'carried-difference');
    expect(found.map(({ of }) => of['body'])).toEqual(['dunmere-30']);
    const { firmwareMs } = BODIES['dunmere-30'];
    for (const one of found) expectNear(one, (firmwareMs['5.3'] ?? NaN) - (firmwareMs['5.1'] ?? NaN));
    expect(register.figures.find(({ kind }) => kind === 'carried-verdict')?.verdict?.word).toBe('slower');
  });

  it('limits hold the truth, every one of them', () => {
    const truthOf = new Map<string, number[]>([
      ...(Object.entries(DISPLAY_OF) as [RigId, string][]).map(
        ([rig, display]) => [`display/${display}`, [displayMs(rig)]] as [string, number[]],
      ),
      ['link/radio-pair', [LINKS_MS['radio-pair']]],
      ['display/tablet-screen', [TABLET_MS]],
    ]);
    for (const session of SESSIONS) {
      const element = `body/${conditionOf(session)}`;
      // Limits come from sessions: those of a body hold for it as it was in the clips of that day.
      const heldMs = trueTotalMs(session) - trueTotalMs(session, 'condition');
      truthOf.set(element, [...(truthOf.get(element) ?? []), bodyMs(session) + heldMs]);
    }
    const brackets = register.figures.filter(({ kind }) => kind === 'bracket');
    expect(brackets.length).toBeGreaterThan(30);
    for (const { id, limits, text } of brackets) {
      const truths = truthOf.get(id.slice('bracket/'.length)) ?? [];
      expect(truths.length, id).toBeGreaterThan(0);
      for (const truth of truths)
        expect(
          truth >= (limits?.low ?? Infinity) && truth <= (limits?.high ?? -Infinity),
          `${id}: ${truth.toFixed(1)}, ${text}`,
        ).toBe(true);
    }
  });

  it('leaves nothing untold, because one display is stated; the screen of the tablet could be told better', () => {
    const found = register.findings.filter(({ rule }) => rule.startsWith('chain-'));
    expect(found.map(({ rule }) => rule)).toEqual(['chain-next-session']);
    expect(found[0]?.message).toMatch(
      /put Tablet screen and \w+ \w+ side by side|put \w+ \w+ and Tablet screen side by side/,
    );
  });
});

describe('days', () => {
  it.each([
    ['vennick-q4/1.40/balcony/uhd-25-off-0-off-auto-free', /^vennick-uhd25-[abc]$/],
    ['vennick-q4/1.40/balcony/uhd-59.94-off-0-off-auto-free', /^vennick-uhd60-[ab]$/],
    ['dunmere-30/5.1/balcony/uhd-25-off-0-off-auto-free', /^dunmere-uhd25-[ab]$/],
    ['dunmere-30/5.1/balcony/uhd-25-on-0-off-auto-free', /^dunmere-uhd25-steady(?:-b)?$/],
    ['dunmere-30/5.1/balcony/uhd-59.94-off-0-off-auto-free', /^dunmere-uhd60-[ab]$/],
    ['skelby-dome/2.0.6/balcony/uhd-50-off-0-off-auto-free', /^skelby-uhd50-[ab]$/],
    ['skelby-dome/2.0.6/balcony/uhd-59.94-off-0-off-auto-free', /^skelby-uhd60-[ab]$/],
  ])('that repeat %s', (name, ids) => {
    const days = SESSIONS.filter(({ id }) => ids.test(id));
    expectNear(
      figure(`repeat-mean/${name}`),
      days.reduce((sum, session) => sum + trueTotalMs(session), 0) / days.length,
    );
    const { low = 0, high = 0 } = figure(`repeat-next/${name}`).interval ?? {};
    for (const session of days)
      expect(trueTotalMs(session) > low && trueTotalMs(session) < high, session.id).toBe(true);
  });

  it('the firmware of the Dunmere', () =>
    expectNear(
      figure('firmware-change/dunmere-30/balcony/uhd-25-off-0-off-auto-free/5.1/5.3'),
      BODIES['dunmere-30'].firmwareMs['5.3']!,
    ));
});

function conditionOf({ body, firmware, settings }: PlannedSession): string {
  const order: readonly (keyof PlannedSession['settings'])[] = [
    'output',
    'rate',
    'stabiliser',
    'noise-reduction',
    'assist',
    'fan',
    'sync',
  ];
  return `${body satisfies BodyId}/${firmware}/${order.map((key) => settings[key]).join('-')}`;
}

describe('what is printed as a value and a half-width', () => {
  it('has the value in the middle of its interval', () => {
    const plusMinus = register.figures.filter(({ text, interval }) => interval !== undefined && text.includes('±'));
    expect(plusMinus.length).toBeGreaterThan(300);
    const offCentre = plusMinus.filter(({ value, interval }) => {
      const { low, high } = interval ?? { low: Number.NaN, high: Number.NaN };
      return !(Math.abs(value - (low + high) / 2) <= 0.1 * (high - low));
    });
    expect(offCentre.map(({ id, text }) => `${id}: ${text}`)).toEqual([]);
  });

  it.each(['effect', 'interaction', 'difference', 'rate-law-fixed', 'rate-law-frames', 'element'])(
    'is judged by the distribution that its interval is from: %s',
    (kind) => {
      const found = register.figures.filter((one) => one.kind === kind && (one.standardUncertainty ?? 0) > 0);
      expect(found.length).toBeGreaterThan(2);
      for (const one of found) {
        const { low = Number.NaN, high = Number.NaN } = one.interval ?? {};
        // 2.5 % lie beyond either end, and a p has two sides
        expect(pOutside(one, { low, high: Infinity }, { figure }), one.id).toBeCloseTo(0.05, 3);
        expect(pOutside(one, { low: -Infinity, high }, { figure }), one.id).toBeCloseTo(0.05, 3);
      }
    },
  );
});
