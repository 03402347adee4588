import { describe, expect, it } from 'vitest';
import { compileCarried } from '../../../src/register/carried/carried-figures.ts';
import { display } from '../../support/displays.ts';
import { compilationOf, figureOf, given, settings, type GivenTotal } from '../../support/joint-bench.ts';

const HALL = display('hall', 'Hall');
const STATED = display('hall', 'Hall', { valueMs: 14, standardUncertaintyMs: 0.5, source: 'A light sensor' });
const STAGE = display('stage', 'Stage');

const LOUD = settings('60', { 'audio-out': 'on' });
const on = (id: string, body: string, screen: string, value: number, more: Partial<Parameters<typeof given>[4]> = {}) =>
  given(id, '60', value, 1, { body, display: screen, ...more });

/** Alba in front of the hall's display, Brae in front of the stage's; with sound on, Alba in front of both. */
const APART = [on('a-hall', 'alba-one', 'hall', 120), on('b-stage', 'brae', 'stage', 90)];
const JOINT = [
  on('a-hall-loud', 'alba-one', 'hall', 130, { settings: LOUD }),
  on('a-stage-loud', 'alba-one', 'stage', 155, { settings: LOUD }),
];
const carry = (totals: readonly GivenTotal[], hall = HALL) =>
  compileCarried(compilationOf(totals, { displays: [hall, STAGE] }));

const CONDITION = 'uhd-60-off';
const DIFFERENCE = `carried-difference/${CONDITION}/alba-one/than/brae`;
const VERDICT = `carried-verdict/${CONDITION}/alba-one/than/brae`;
/** 97.5 % point of the normal distribution, as tables print it. */
const K = 1.959964;

describe('two bodies that never stood in front of one display', () => {
  const { figures, findings } = carry([...APART, ...JOINT]);

  it('are compared by way of the body that stood in front of both: 120 − 90 + (155 − 130), each ± 1', () => {
    const { value, standardUncertainty, interval } = figureOf(figures, DIFFERENCE);
    expect(value).toBeCloseTo(55, 9);
    expect(standardUncertainty).toBeCloseTo(2, 9);
    expect(interval?.low).toBeCloseTo(55 - 2 * K, 5);
    expect(interval?.high).toBeCloseTo(55 + 2 * K, 5);
  });

  it('the verdict says so in words, and where the two stood', () => {
    const { text, verdict, inWords } = figureOf(figures, VERDICT);
    expect(text).toBe('slower by 55.0 ± 3.9 ms');
    expect(verdict).toMatchObject({ word: 'slower', family: `carried-${CONDITION}`, familySize: 1 });
    expect(verdict?.marginMs).toBeCloseTo(1000 / 120, 9);
    expect(inWords).toContain('in front of Hall, the other in front of Stage, and never both through one chain');
    expect(figureOf(figures, `family/carried-${CONDITION}`).value).toBe(1);
    expect(findings).toEqual([]);
  });

  it('names every file that it rests on', () =>
    expect(figureOf(figures, VERDICT).sources.map((source) => source.file)).toEqual(
      ['a-hall', 'b-stage', 'a-hall-loud', 'a-stage-loud'].map((id) => `data/sessions/${id}.csv`),
    ));

  it('the same within half a frame is said where it is shown: 120 − 145 + 25', () =>
    expect(
      figureOf(
        carry([on('a-hall', 'alba-one', 'hall', 120), on('b-stage', 'brae', 'stage', 145), ...JOINT]).figures,
        VERDICT,
      ).text,
    ).toBe('the same within ± 8.3 ms'));

  it('what is too close to call says how many further runs would settle it, as far as these two sessions can', () => {
    const unsure = (value: number) => [
      given('a-hall', '60', 120, 10, { body: 'alba-one', display: 'hall' }),
      given('b-stage', '60', value, 10, { body: 'brae', display: 'stage' }),
      ...JOINT,
    ];
    // 120 − 125 + 25 = 20; seen in 80 % of cases where 20/u is z(0.975) + z(0.8) = 1.959964 + 0.841621 (normal
    // quantiles), u² = 2·10²/(1 + m) + 1 + 1 with m further runs to the one of each: 1 + m = 4.09
    expect(figureOf(carry(unsure(125)).figures, VERDICT).text).toBe(
      'too close to call (about 4 further runs on each side would settle it)',
    );
  });

  it('an error that all sessions of a rig have alike cancels', () =>
    expect(
      figureOf(carry([...APART, ...JOINT].map((one) => ({ ...one, shared: 5 }))).figures, DIFFERENCE)
        .standardUncertainty,
    ).toBeCloseTo(2, 9));

  it('no total on a chosen display is given while nothing is stated: any amount could move from display to body', () =>
    expect(figures.filter(({ id }) => id.endsWith('/on/5-ms'))).toEqual([]));
});

describe('the lowest total of a body', () => {
  const { figures } = carry([...APART, ...JOINT], STATED);

  it('on another display: 120 + (155 − 130), whatever either takes', () => {
    const found = figureOf(figures, 'carried/alba-one/on/stage');
    expect(found.value).toBeCloseTo(145, 9);
    expect(found.standardUncertainty).toBeCloseTo(Math.sqrt(3), 9);
  });

  it('on a display of 5 ms: 120 − 14 + 5, uncertain by the reading and by the statement', () => {
    const found = figureOf(figures, 'carried/alba-one/on/5-ms');
    expect(found.value).toBeCloseTo(111, 9);
    expect(found.standardUncertainty).toBeCloseTo(Math.hypot(1, 0.5), 9);
    expect(found.interval?.high).toBeCloseTo(111 + K * Math.hypot(1, 0.5), 5);
    expect(found.text).toBe('111.0 ± 2.2 ms');
  });

  it('is not carried to a display in front of which it was measured', () =>
    expect(figures.map(({ id }) => id)).not.toContain('carried/alba-one/on/hall'));

  it('keeps what the rig does to every total alike', () =>
    expect(
      figureOf(
        carry(
          [...APART, ...JOINT].map((one) => ({ ...one, shared: 5 })),
          STATED,
        ).figures,
        'carried/alba-one/on/stage',
      ).standardUncertainty,
    ).toBeCloseTo(Math.sqrt(3 + 25), 9));

  it('in the condition in which bodies are compared, each on the chosen display', () =>
    expect(figureOf(figures, `carried/brae/${CONDITION}/on/5-ms`).value).toBeCloseTo(90 - (14 + 25) + 5, 9));
});

it('nothing is carried where no path of sessions joins the displays, and the finding says what would', () => {
  const { figures, findings } = carry(APART);
  expect(figures).toEqual([]);
  expect(findings).toMatchObject([{ rule: 'carried-not-joined', severity: 'note' }]);
  expect(findings[0]?.message).toContain('Alba One (in front of Hall) and Brae (in front of Stage)');
  expect(findings[0]?.hint).toContain('side by side');
});

it('bodies with a chain in common are left as they were compared', () => {
  const { figures } = carry([...APART, ...JOINT, on('b-hall', 'brae', 'hall', 80)]);
  expect(figures.map(({ kind }) => kind)).not.toContain('carried-difference');
});

it('firmware makes two bodies of one', () => {
  const { figures } = carry([
    on('old', 'alba-one', 'hall', 120, { firmware: '1' }),
    on('new', 'alba-one', 'stage', 155, { firmware: '2' }),
    ...JOINT,
  ]);
  const found = figureOf(figures, `carried-difference/${CONDITION}/alba-one/2/than/alba-one/1`);
  expect(found.value).toBeCloseTo(155 - 25 - 120, 9);
  expect(found.label).toContain('Alba One with firmware 2 against Alba One with firmware 1');
});
