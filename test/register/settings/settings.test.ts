import { describe, expect, it } from 'vitest';
import { compileRegister } from '../../../src/site/compile.ts';
import { choicesOf } from '../../../src/register/comparisons/choices.ts';
import { lookup } from '../../../src/register/lookup.ts';
import { adviseOn } from '../../../src/views/advice.ts';
import { describeEffect, describeInteraction } from '../../../src/register/settings/effect-text.ts';
import type { Session } from '../../../src/model/bench.ts';
import { bench, reading, session } from '../../support/small-bench.ts';

const at = (middle: number) =>
  [0, 1, 2, 3, 4, 5].map((n) =>
    reading(n + 2, middle + 6 * ((n % 3) - 1), { run: 1 + (n >> 1), sourceMs: 3001 * n + 7 * n * n }),
  );
const of = (id: string, resolution: string, rate: string, audio: string, middle: number): Session =>
  session(id, { resolution, rate, 'audio-out': audio }, { readings: at(middle) });

/** UHD adds 40, sound 120, and in HD nothing more: eight sessions, every combination. */
const factorial = ['hd', 'uhd'].flatMap((resolution) =>
  ['24', '25'].flatMap((rate) =>
    ['off', 'on'].map((audio) =>
      of(
        `${resolution}-${rate}-${audio}`,
        resolution,
        rate,
        audio,
        200 + (resolution === 'uhd' ? 40 : 0) + (audio === 'on' ? 120 : 0),
      ),
    ),
  ),
);

describe('words of effects', () => {
  it.each([
    [{ value: 26.04, halfWidth: 3.12, pAdjusted: 0.001, atMost: 28.6 }, 'adds 26.0 ± 3.1 ms', '26.0 ± 3.1 ms more'],
    [{ value: -42.2, halfWidth: 8.1, pAdjusted: 0.05, atMost: 49 }, 'takes off 42.2 ± 8.1 ms', '42.2 ± 8.1 ms less'],
    [
      { value: -0.3, halfWidth: 2.5, pAdjusted: 0.051, atMost: 2.44 },
      'no effect found; if there is one, under 2.4 ms',
      'no difference found; if there is one, under 2.4 ms',
    ],
  ])('%j', (effect, words, interaction) => {
    expect(describeEffect(effect)).toBe(words);
    expect(describeInteraction(effect)).toBe(interaction);
  });
});

describe('effects', () => {
  const { figures, findings } = compileRegister(bench(factorial));
  const figure = (id: string) => figures.find((each) => each.id === id);

  it('are those that were put in, with nothing seen where nothing was', () => {
    // The same readings shifted: the corrections of one rig are equal, so differences of the totals are those of the
    // readings.
    expect(figure('effect/alba-one/attic/resolution/hd/uhd')?.value).toBeCloseTo(40, 0);
    expect(figure('effect/alba-one/attic/audio-out/off/on')?.value).toBeCloseTo(120, 0);
    expect(figure('effect-verdict/alba-one/attic/audio-out/off/on')?.text).toMatch(/^adds 1[12]\d/);
    expect(figure('effect-verdict/alba-one/attic/rate/24/25')?.text).toMatch(
      /^no effect found; if there is one, under \S+ ms$/,
    );
    expect(figure('interaction-verdict/alba-one/attic/resolution/hd/uhd/audio-out/off/on')?.text).toMatch(
      /^no difference found; if there is one, under/,
    );
    expect(findings.filter(({ rule }) => rule.startsWith('settings-'))).toEqual([]);
  });

  it('say of which body, rig and step they are, and rest on every session of them', () => {
    const effect = figure('effect/alba-one/attic/resolution/hd/uhd');
    expect(effect?.of).toEqual({
      setting: 'resolution',
      from: 'hd',
      to: 'uhd',
      body: 'alba-one',
      rig: 'attic',
      over: 'on average over 24 and 25 frames/s; embedded audio off and on',
    });
    expect(new Set(effect?.sources.map(({ file }) => file).filter((file) => file.endsWith('.csv'))).size).toBe(8);
    expect(effect?.entry).toBe('/figures/body-alba-one/attic/#effect-alba-one-attic-resolution-hd-uhd');
  });

  it('that were only changed together are named, with a session that would tell them apart', () => {
    const together = [
      of('a', 'hd', '24', 'off', 200),
      of('b', 'uhd', '24', 'on', 260),
      of('c', 'hd', '25', 'off', 200),
      of('d', 'uhd', '25', 'on', 260),
    ];
    const found = compileRegister(bench(together)).findings.filter(({ rule }) => rule === 'settings-not-separated');
    expect(found.map(({ message, where }) => [message, where])).toEqual([
      [
        'On Attic, the sessions of Alba One cannot tell apart what resolution and embedded audio do: they were only changed together.',
        { body: 'alba-one', rig: 'attic' },
      ],
    ]);
    expect(found[0]?.hint).toMatch(
      /^A session with resolution (?:HD 1920 × 1080, frame rate 2[45] and embedded audio on|UHD 3840 × 2160, frame rate 2[45] and embedded audio off) would tell them apart\.$/,
    );
  });

  it('of the rate alone are not confused with those of the frame interval', () => {
    const rates = [
      of('a', 'hd', '24', 'off', 200),
      of('b', 'hd', '25', 'off', 200),
      of('c', 'hd', '59.94', 'off', 120),
    ];
    const { figures: found, findings: said } = compileRegister(bench(rates));
    expect(said.filter(({ rule }) => rule === 'settings-not-separated')).toEqual([]);
    expect(found.filter(({ kind }) => kind === 'effect').map(({ id }) => id)).toContain(
      'effect/alba-one/attic/rate/24/25',
    );
  });

  it.each<readonly [string, readonly Session[]]>([
    ['one session', factorial.slice(0, 1)],
    ['repeats of one condition', [of('a', 'hd', '24', 'off', 200), of('b', 'hd', '24', 'off', 202)]],
  ])('of %s are none', (_case, sessions) => {
    expect(compileRegister(bench(sessions)).figures.filter(({ kind }) => kind === 'effect')).toEqual([]);
  });
});

describe('advice', () => {
  const advise = (sessions: readonly Session[]) => {
    const whole = bench(sessions);
    const byId = new Map(compileRegister(whole).figures.map((figure) => [figure.id, figure]));
    return choicesOf(whole).map((choice) =>
      adviseOn({ bench: whole, find: lookup(whole), figure: (id) => byId.get(id) }, choice),
    );
  };

  it('ranks by total, ties those that cannot be told from the lowest, and costs one step at a time', () => {
    const [advice] = advise([
      of('a', 'hd', '24', 'off', 200),
      of('b', 'hd', '24', 'on', 320),
      of('c', 'hd', '25', 'off', 206),
      of('d', 'uhd', '25', 'on', 360),
    ]);
    expect(advice?.rows.map(({ session: { id }, tiedWithBest }) => [id, tiedWithBest])).toEqual([
      ['a', true],
      ['c', true],
      ['b', false],
      ['d', false],
    ]);
    const said = advice?.sentence.map((part) => (typeof part === 'string' ? part : `[${part.id}]`)).join('');
    expect(said).toBe(
      'For the least delay, set embedded audio off: [total/a] on the rig Attic, the lowest measured in these sessions. 24 or 25 frames/s: too close to call, so choose for the picture and the work. Changing one thing from there, embedded audio on costs [cost/b]. From there, no other resolution was measured.',
    );
  });

  it('lets no session be lowest that went wrong, and says so; of repeats, the latest stands for all', () => {
    const [advice] = advise([
      of('a', 'hd', '24', 'off', 200),
      { ...of('later', 'hd', '24', 'off', 210), date: '2026-02-01' },
      of('b', 'hd', '24', 'on', 320),
      { ...of('short', 'hd', '25', 'off', 100), cutShort: 'it got hot' },
    ]);
    expect(advice?.rows.map(({ session: { id }, standsFor }) => [id, standsFor])).toEqual([
      ['later', 'stands for 2 sessions in this condition'],
      ['b', ''],
    ]);
    expect(advice?.aside.map(({ session: { id }, why }) => [id, why])).toEqual([
      ['a', 'another session stands for its condition'],
      ['short', 'cut short'],
    ]);
  });

  it('that finds nothing between two sessions says what all sessions together find', () => {
    // In HD, where the lowest is, sound adds 6; in UHD it adds 120: the average is told from nothing, that one step is
    // not.
    const [advice] = advise(
      factorial.map((one) => {
        const sound = one.settings['audio-out'] === 'on' ? (one.settings['resolution'] === 'uhd' ? 120 : 6) : 0;
        return { ...one, readings: at(200 + (one.settings['resolution'] === 'uhd' ? 40 : 0) + sound) };
      }),
    );
    const said = advice?.sentence.map((part) => (typeof part === 'string' ? part : `[${part.id}]`)).join('');
    expect(said).toMatch(
      /embedded audio off or on: too close to call.* Over all sessions on this rig together, and averaged over the other settings, embedded audio Off → On: \[effect-verdict\/alba-one\/attic\/audio-out\/off\/on\]\./i,
    );
  });

  it('is none where a body has one session', () => expect(advise([of('a', 'hd', '24', 'off', 200)])).toEqual([]));
});
