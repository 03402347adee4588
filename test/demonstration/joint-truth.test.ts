/** Whether what the site says of several sessions together recovers the truth of the demonstration. */
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { compileRegister } from '../../src/site/compile.ts';
import type { Figure, Register } from '../../src/register/register.ts';
import { readBench } from '../../src/ingest/read-bench.ts';
import { intervalMs } from '../../src/model/rate.ts';
import type { BodyId, PlannedSession, RigId } from './plan.ts';
import { RIGS, rateOf } from './rigs.ts';
import { SESSIONS } from './sessions.ts';
import { BODIES, DISPLAYS_MS, LINKS_MS, trueTotalMs } from './truth.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
let register: Register;

beforeAll(async () => {
  register = compileRegister(await readBench({ root: ROOT, dataDir: 'data', contentDir: 'content' }));
});

const figure = (id: string): Figure => {
  const found = register.figures.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no figure ${id}`);
  return found;
};

/** In its own interval, twice as wide: of intervals at 95 %, 1 in 20 misses, and one so wide about 1 in 10 000 (normal). */
function expectNear(found: Figure, truth: number): void {
  const { low = Number.NaN, high = Number.NaN } = found.interval ?? {};
  expect(high).toBeGreaterThan(low);
  expect(Math.abs(found.value - truth), `${found.id}: ${found.text}, truth ${truth.toFixed(2)}`).toBeLessThanOrEqual(
    high - low,
  );
}

/** The display on the mean, its own wait for a refresh included. */
function displayMs(rig: RigId): number {
  const { display } = RIGS[rig];
  return DISPLAYS_MS[rig] + (display.sync === 'free' ? intervalMs(display.refresh) / 2 : 0);
}

const DISPLAY_OF: Readonly<Record<RigId, string>> = {
  balcony: 'stage-screen',
  pit: 'pit-monitor',
  workshop: 'bench-panel',
};

describe('rate laws', () => {
  // Fixed part: the body's own, what the resolution adds, and the display.
  it.each([
    ['orrin-v2/1.40/balcony/uhd-10-4:2:2-off-off', 0 + 4, 7.2],
    ['orrin-v2/1.40/balcony/uhd-10-4:2:2-on-off', 0 + 4, 7.2 + 2.9],
    ['tamsel-6/2.11/balcony/uhd-10-4:2:2-off-off', 58 + 26 + 4, 2.6],
    ['tamsel-6/2.11/balcony/hd-10-4:2:2-off-off', 58 + 4, 2.6],
    ['wexley-duo/1.0.7/balcony/uhd-10-4:2:2-off-off', 14 + 1.5 + 4, 3],
    ['wexley-duo/1.0.7/balcony/hd-10-4:2:2-off-off', 14 + 4, 3],
  ])('%s', (name, fixedMs, frames) => {
    expectNear(figure(`rate-law-fixed/${name}`), fixedMs);
    expectNear(figure(`rate-law-frames/${name}`), frames);
  });

  it('find the floor of the Wexley, its place, and none on another body', () => {
    const name = 'wexley-duo/1.0.7/balcony/hd-10-4:2:2-off-off';
    const { fixedMs, frames, floorIntervalMs } = BODIES['wexley-duo'];
    expectNear(figure(`rate-law-floor/${name}`), fixedMs + frames * floorIntervalMs + displayMs('balcony'));
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

  it('limits hold the truth, every one of them', () => {
    const truthOf = new Map<string, number[]>([
      ...(Object.entries(DISPLAY_OF) as [RigId, string][]).map(
        ([rig, display]) => [`display/${display}`, [displayMs(rig)]] as [string, number[]],
      ),
      ['link/radio-pair', [LINKS_MS['radio-pair']]],
    ]);
    for (const session of SESSIONS) {
      const element = `body/${conditionOf(session)}`;
      truthOf.set(element, [...(truthOf.get(element) ?? []), bodyMs(session)]);
    }
    const brackets = register.figures.filter(({ kind }) => kind === 'bracket');
    expect(brackets.length).toBeGreaterThan(30);
    for (const { id, limits, text } of brackets) {
      const truths = truthOf.get(id.slice('bracket/'.length)) ?? [];
      expect(truths.length, id).toBeGreaterThan(0);
      // A day adds a little to all sessions of that day, in the demonstration 2.4 ms at most; a body from cold is a session of its own.
      for (const truth of truths)
        expect(
          truth >= (limits?.low ?? Infinity) && truth <= (limits?.high ?? -Infinity),
          `${id}: ${truth.toFixed(1)}, ${text}`,
        ).toBe(true);
    }
  });

  it('leaves nothing untold, because one display is stated', () =>
    expect(register.findings.filter(({ rule }) => rule.startsWith('chain-'))).toEqual([]));
});

describe('days', () => {
  it('three days of the Orrin', () => {
    const days = SESSIONS.filter(({ id }) => /^orrin-uhd24-[abc]$/.test(id));
    const truth = days.reduce((sum, session) => sum + trueTotalMs(session), 0) / days.length;
    const name = 'orrin-v2/1.40/balcony/uhd-23.976-10-4:2:2-off-off';
    expectNear(figure(`repeat-mean/${name}`), truth);
    const { low = 0, high = 0 } = figure(`repeat-next/${name}`).interval ?? {};
    for (const session of days)
      expect(trueTotalMs(session) > low && trueTotalMs(session) < high, session.id).toBe(true);
  });

  it('the firmware of the Tamsel', () => {
    const truth = (id: string): number => trueTotalMs(SESSIONS.find((session) => session.id === id)!);
    expectNear(
      figure('firmware-change/tamsel-6/balcony/uhd-25-10-4:2:2-off-off/2.11/2.20'),
      truth('tamsel-uhd25-fw220') - truth('tamsel-uhd25-a'),
    );
  });
});

function conditionOf({ body, firmware, settings }: PlannedSession): string {
  const order: readonly (keyof PlannedSession['settings'])[] = [
    'resolution',
    'rate',
    'bit-depth',
    'chroma',
    'audio-out',
    'recording',
  ];
  return `${body satisfies BodyId}/${firmware}/${order.map((key) => settings[key]).join('-')}`;
}

/** The body by itself, as its law has it; the day, the display and the links left out. */
function bodyMs({ body, settings, firmware }: PlannedSession): number {
  const { fixedMs, frames, floorIntervalMs, settingsMs, firmwareMs } = BODIES[body];
  return (
    fixedMs +
    frames * Math.max(intervalMs(rateOf(settings)), floorIntervalMs) +
    settingsMs(settings) +
    (firmwareMs[firmware] ?? Number.NaN)
  );
}
