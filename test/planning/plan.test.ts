import { describe, expect, it } from 'vitest';
import { comparableConditions } from '../../src/planning/comparable-conditions.ts';
import { describeDesign, describeLadder, describePlan } from '../../src/planning/plan-text.ts';
import { newSessionId } from '../../src/planning/planned-session.ts';
import { renderNewBody } from '../../src/planning/render-body.ts';
import { renderNewSession } from '../../src/planning/render-session.ts';
import { shuffle } from '../../src/planning/schedule.ts';
import { rate } from '../../src/model/rate.ts';
import { bench, session } from '../support/small-bench.ts';

const in24 = { rate: '24', resolution: 'uhd', 'audio-out': 'off' };
const in25 = { ...in24, rate: '25' };
const plan = {
  runs: 3,
  readings: 8,
  spacingMs: 2400,
  reached: true,
  halfWidthMs: 4.61,
  floorMs: 1.2,
  speaksOf: 'clips',
} as const;

describe('conditions for a new body', () => {
  const sessions = [
    session('a', in24),
    session('b', in25),
    session('c', in24, { body: 'brae' }),
    session('d', in24, { body: 'brae', links: ['air'] }),
    session('e', { ...in25, resolution: 'hd' }, { body: 'brae' }),
  ];
  const whole = bench(sessions);
  const [rig] = whole.rigs;
  const conditions = (body: string, most = 9) =>
    (rig ? comparableConditions(whole, rig, body, most) : []).map(({ settings, bodies }) => [
      settings['rate'],
      settings['resolution'],
      bodies,
    ]);

  it('are those that most bodies share, first; then in bench order', () => {
    expect(conditions('fenn')).toEqual([
      ['24', 'uhd', 2],
      ['25', 'uhd', 1],
      ['25', 'hd', 1],
    ]);
    expect(conditions('fenn', 1)).toEqual([['24', 'uhd', 2]]);
  });

  it('leave out what the body has been measured in', () => {
    expect(conditions('brae')).toEqual([['25', 'uhd', 1]]);
  });
});

it('an id says what is not usual, and takes the next letter that is free', () => {
  const whole = bench([session('fenn-24-a', in24), session('b', in25)]);
  expect(newSessionId('fenn', { settings: in24, rate: rate(24) }, whole, new Set())).toBe('fenn-24-b');
  expect(
    newSessionId(
      'fenn',
      { settings: { ...in25, resolution: 'hd', 'audio-out': 'on' }, rate: rate(25) },
      whole,
      new Set(),
    ),
  ).toBe('fenn-25-resolution-hd-audio-out-on-a');
  const letters = Array.from(
    { length: 28 },
    (_, n) => `fenn-25-${n < 26 ? String.fromCharCode(97 + n) : `a${String.fromCharCode(71 + n)}`}`,
  );
  expect(newSessionId('fenn', { settings: in25, rate: rate(25) }, whole, new Set(letters.slice(0, 26)))).toBe(
    'fenn-25-aa',
  );
});

describe('a schedule', () => {
  const items = Array.from({ length: 12 }, (_, n) => n);
  it('holds every item once, in an order of its seed', () => {
    expect([...shuffle(items, 1)].sort((a, b) => a - b)).toEqual(items);
    expect(shuffle(items, 1)).toEqual(shuffle(items, 1));
    expect(shuffle(items, 1)).not.toEqual(shuffle(items, 2));
    expect(shuffle(items, 1)).not.toEqual(items);
  });

  it('puts each item first about as often as any other', () => {
    const first = Array.from({ length: 1200 }, (_, seed) => shuffle([0, 1, 2], seed)[0]);
    // binomial, 400 ± 16: six standard deviations
    for (const item of [0, 1, 2]) expect(Math.abs(first.filter((one) => one === item).length - 400)).toBeLessThan(98);
  });
});

describe('what is written for a session still to be measured', () => {
  const { front, readings } = renderNewSession({
    id: 'fenn-24-a',
    body: 'fenn',
    rig: 'attic',
    method: 'two-timers',
    condition: { settings: in24, rate: rate(24) },
    plan,
    position: 1,
    of: 2,
  });

  it('says in comments alone what to do, so that a page has none of it', () => {
    const [, inside = '', after = ''] = front.split(/^---$/m);
    expect(inside).toContain('# Session 1 of 2, in an order drawn at random. Plan: 3 clips of 8 readings each');
    expect(after.trim()).toBe('');
    expect(readings).toBe('run,source,shown,exclude,note\n');
  });

  it('is the same for a body', () => {
    const text = renderNewBody({ name: 'Fenn', maker: 'Fenn', model: '3', readout: undefined, invented: true });
    expect(text.split(/^---$/m)[2]?.trim()).toBe('');
  });
});

describe('words of a plan', () => {
  it('show what more and less gives, and mark what to take', () => {
    const rung = (runs: number, readings_: number, halfWidthMs: number) => ({
      ...plan,
      runs,
      readings: readings_,
      halfWidthMs,
    });
    const rungs = [rung(4, 3, 12.34), rung(4, 8, 7), rung(8, 20, 6.9)];
    const ladder = { rungs, recommended: rungs[1] ?? plan, isEnough: true };
    expect(describeLadder(ladder)).toEqual([
      'Readings in all, and the half-width of the 95 % interval that they give, for the clips that are read:',
      '   12  ± 12 ms   4 clips of 3 readings each, at least 2.4 s apart',
      '→  32  ± 7.0 ms  4 clips of 8 readings each, at least 2.4 s apart',
      '  160  ± 6.9 ms  8 clips of 20 readings each, at least 2.4 s apart',
      'The arrow marks what is planned: the next step narrows the interval by less than a tenth. What the rig itself leaves open is a standard uncertainty of 1.2 ms; measure its rows, readout and scan-out to narrow it.',
    ]);
    expect(describeLadder({ ...ladder, isEnough: false }).at(-1)).toMatch(/about an evening’s work; more narrows/);
  });

  it('ask for another day where that is worth more than as many readings more on one', () => {
    const rung = (readings_: number, halfWidthMs: number, twoDaysMs: number) =>
      ({ ...plan, runs: 4, readings: readings_, floorMs: 0.1, speaksOf: 'condition', halfWidthMs, twoDaysMs }) as const;
    const rungs = [rung(5, 8, 5.7), rung(8, 7, 5), rung(10, 6.6, 4.7)];
    const ladder = { rungs, recommended: rung(5, 8, 5.7), isEnough: true };
    expect(describeLadder({ ...ladder, recommended: rungs[0] ?? plan })).toEqual([
      'Readings in all, and the half-width of the 95 % interval that they give, for the condition on any day; then with as many on another day:',
      '→ 20  ± 8.0 ms  ± 5.7 ms  4 clips of 5 readings each, at least 2.4 s apart',
      '  32  ± 7.0 ms  ± 5.0 ms  4 clips of 8 readings each, at least 2.4 s apart',
      '  40  ± 6.6 ms  ± 4.7 ms  4 clips of 10 readings each, at least 2.4 s apart',
      'The arrow marks what is planned: the next step narrows the interval by less than a tenth. What is left is mostly how days differ.',
      'Another day is worth more than more clips: as many again then give ± 5.7 ms, 40 readings on one day ± 6.6 ms. Plan the second session with --repeat.',
    ]);
    const steady = [rung(5, 8, 7.9), rung(10, 5, 4.9)];
    expect(describeLadder({ ...ladder, rungs: steady, recommended: steady[0] ?? plan }).at(-1)).toBe(
      'More clips are worth more than another day: 40 readings on one day give ± 5.0 ms.',
    );
    expect(describePlan(rung(5, 8, 5.7), { kind: 'half-width', halfWidthMs: 9 })).toEqual([
      'Expected half-width of the 95 % interval, for the condition on any day: 8.0 ms; of two such sessions on different days, 5.7 ms.',
    ]);
  });

  it('say what to do', () => {
    expect(describeDesign(plan)).toBe('3 clips of 8 readings each, at least 2.4 s apart');
    expect(describeDesign({ ...plan, runs: 1, readings: 1 })).toBe('one clip of 1 reading, at least 2.4 s apart');
  });

  it('say what it gives, and what stands in the way where that is less than wanted', () => {
    const wanted = { kind: 'half-width', halfWidthMs: 5 } as const;
    expect(describePlan(plan, wanted)).toEqual([
      'Expected half-width of the 95 % interval, for the clips that are read: 4.6 ms.',
    ]);
    expect(describePlan({ ...plan, reached: false }, wanted)[1]).toBe(
      'No plan tried gets to 5 ms: this is the best of them. What the rig itself leaves open is a standard uncertainty of 1.2 ms; measure its rows, readout and scan-out to narrow it.',
    );
    expect(describePlan({ ...plan, power: 0.874 }, { kind: 'difference', differenceMs: 10, power: 0.8 })[1]).toBe(
      'A difference of 10 ms between two such sessions is seen in 87 % of cases.',
    );
  });
});
