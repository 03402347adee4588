/** What to set, of small benches: the same readings shifted by a known amount for each setting. */
import { describe, expect, it } from 'vitest';
import type { Session } from '../../src/model/bench.ts';
import { choicesOf } from '../../src/register/comparisons/choices.ts';
import { plainSentence } from '../../src/register/sentence.ts';
import { compileBench } from '../../src/site/compile.ts';
import { adviseOn } from '../../src/views/advice.ts';
import { bodiesAtGlance } from '../../src/views/body-rates.ts';
import { settingsOfBody } from '../../src/views/settings-of-body.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const at = (middle: number) =>
  [0, 1, 2, 3, 4, 5].map((n) =>
    reading(n + 2, middle + 6 * ((n % 3) - 1), { run: 1 + (n % 3), sourceMs: 3001 * n + 7 * n * n }),
  );
const taken = (
  id: string,
  rate: string,
  resolution: string,
  audio: string,
  middle: number,
  more: Partial<Session> = {},
): Session => session(id, { resolution, rate, 'audio-out': audio }, { readings: at(middle), ...more });

/** 59.94 is 200 ms less than 24; resolution does nothing; sound costs 100 ms. */
const site = compileBench(
  bench([
    taken('hd24', '24', 'hd', 'off', 400),
    taken('hd60', '59.94', 'hd', 'off', 200),
    taken('uhd60', '59.94', 'uhd', 'off', 200),
    taken('loud60', '59.94', 'uhd', 'on', 300),
  ]),
);
const [choice] = choicesOf(site.bench);
if (choice === undefined) throw new Error('a body with several conditions has a choice');
const advice = adviseOn(site, choice);

describe('advice', () => {
  it('lists the conditions from the lowest total up, with what each costs over the lowest', () => {
    expect(advice?.rows.map(({ session: { id }, cost }) => [id, Math.round(cost.value)])).toEqual([
      ['hd60', 0],
      ['uhd60', 0],
      ['loud60', 100],
      ['hd24', 200],
    ]);
    expect(advice?.rows.map(({ tiedWithBest }) => tiedWithBest)).toEqual([true, true, false, false]);
    expect(advice?.rows.map(({ standsFor }) => standsFor)).toEqual(['', '', '', '']);
    expect(advice?.aside).toEqual([]);
  });

  it('says what to set, what is free to choose, and what one step away costs, cheapest first', () => {
    expect(plainSentence(advice?.sentence ?? [])).toMatch(
      /^For the least delay, set 59\.94 frames\/s and embedded audio off: [\d.]+ ± [\d.]+ ms on the rig Attic, the lowest measured in these sessions\. HD 1920 × 1080 or UHD 3840 × 2160: too close to call, so choose for the picture and the work\. Changing one thing from there, embedded audio on costs 100(?:\.0)? ± [\d.]+ ms and 24 frames\/s costs 200(?:\.0)? ± [\d.]+ ms\.$/,
    );
  });

  it('shows a repeat beside the session that stands for the condition, and says why it stands aside', () => {
    const repeated = compileBench(
      bench([
        taken('first', '24', 'hd', 'off', 400),
        taken('again', '24', 'hd', 'off', 402, { date: '2026-01-09' }),
        taken('fast', '59.94', 'hd', 'off', 200),
      ]),
    );
    const [one] = choicesOf(repeated.bench);
    const made = one && adviseOn(repeated, one);
    expect(made?.rows.map(({ session: { id }, standsFor }) => [id, standsFor])).toEqual([
      ['fast', ''],
      ['again', 'stands for 2 sessions in this condition'],
    ]);
    expect(made?.aside.map(({ session: { id } }) => id)).toEqual(['first']);
    expect(made?.aside[0]?.why).not.toBe('');
  });

  it('heads the settings of a body with the rig it holds for', () => {
    const { name, choices, pairs } = settingsOfBody(site, 'alba-one');
    expect([name, choices.map(({ where }) => where), pairs.map(({ rig }) => rig)]).toEqual([
      'Alba One',
      ['Attic'],
      ['Attic'],
    ]);
    // pairs that differ in one setting: 24 and 59.94 at HD without sound, HD and UHD at 59.94, sound at UHD
    expect(pairs[0]?.compared.rows.map(({ difference }) => Math.abs(Math.round(difference.value))).sort()).toEqual([
      0, 100, 200,
    ]);
  });
});

describe('a body at a glance', () => {
  it('has its lowest total at each rate, fastest first, on the chain that it was measured on most', () => {
    const [alba, brae] = bodiesAtGlance(site);
    expect([alba?.name, alba?.maker, alba?.path, alba?.rig]).toEqual([
      'Alba One',
      'Alba',
      '/bodies/alba-one/',
      'Attic',
    ]);
    expect(alba?.rows.map(({ rate, total }) => [rate, total.of['session']])).toEqual([
      ['59.94 frames/s', 'hd60'],
      ['24 frames/s', 'hd24'],
    ]);
    expect([brae?.rig, brae?.rows]).toEqual([undefined, []]);
  });
});
