/**
 * What the home page says first, of small benches whose sessions are one set of readings shifted: differences are the
 * shifts.
 */
import { describe, expect, it } from 'vitest';
import { plainSentence } from '../../src/register/sentence.ts';
import { compileBench } from '../../src/site/compile.ts';
import type { Session } from '../../src/model/bench.ts';
import { answerOf } from '../../src/views/answer.ts';
import { bodiesAtGlance } from '../../src/views/body-rates.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const at = (middle: number, runs = 3) =>
  [0, 1, 2, 3, 4, 5].map((n) =>
    reading(n + 2, middle + 6 * ((n % 3) - 1), { run: 1 + (n % runs), sourceMs: 3001 * n + 7 * n * n }),
  );
const hd24 = { resolution: 'hd', rate: '24', 'audio-out': 'off' };
const of = (id: string, body: string, middle: number, more: Partial<Session> = {}): Session =>
  session(id, hd24, { body, readings: at(middle), ...more });
const answer = (sessions: readonly Session[]) => {
  const whole = bench(sessions);
  const [first, second] = whole.bodies;
  const [rig] = whole.rigs;
  if (!first || !second || !rig) throw new Error('the small bench has two bodies and a rig');
  return answerOf(
    compileBench({
      ...whole,
      bodies: [first, second, { ...second, id: 'corrie', name: 'Corrie' }],
      rigs: [rig, { ...rig, id: 'barn', name: 'Barn' }],
    }),
  );
};
const said = (sessions: readonly Session[]): string => plainSentence(answer(sessions).sentence);

describe('the answer', () => {
  it('names the body that lags least, on which rig, in which condition, and how much later each other comes', () => {
    const three = [of('a', 'alba-one', 400), of('b', 'brae', 200), of('c', 'corrie', 300)];
    expect(said(three)).toMatch(
      /^Brae lags least: [\d.]+ ± [\d.]+ ms from the event to its picture, on the rig Attic, at 24 frames\/s\. Corrie comes 100(?:\.0)? ± [\d.]+ ms later and Alba One comes 200(?:\.0)? ± [\d.]+ ms later\. That is of the clips in these sessions; how much other days differ, nothing here tells yet\.$/,
    );
    expect(answer(three).chart?.rows.map(({ body }) => body)).toEqual(['Brae', 'Corrie', 'Alba One']);
    expect(answer(three).chart?.caption).toBe('Total latency of every body on Attic');
    expect(answer(three).adviceAt).toBe('/bodies/brae/');
  });

  it('says when it is too close to call', () => {
    const tied = [of('a', 'alba-one', 400), of('b', 'brae', 200), of('c', 'corrie', 201)];
    expect(said(tied)).toMatch(
      /^Too close to call between Brae and Corrie: Brae came out lowest, at .*, but Corrie came only 1(?:\.0)? ± .* later, which these readings cannot tell from nothing\. Alba One comes 200/,
    );
    expect(answer(tied).adviceAt).toBe('/bodies/');
  });

  it('is of the condition that most bodies were measured in, however low another one is', () => {
    const sessions = [
      of('a', 'alba-one', 400),
      of('b', 'brae', 300),
      of('c', 'corrie', 500),
      of('a25', 'alba-one', 90, { settings: { ...hd24, rate: '25' } }),
      of('b25', 'brae', 100, { settings: { ...hd24, rate: '25' } }),
    ];
    expect(said(sessions)).toMatch(/^Brae lags least: .* at 24 frames\/s\./);
    expect(answer(sessions).chart?.rows).toHaveLength(3);
  });

  it('lets no session speak that was cut short where the body has an ordinary one, nor the luckiest of repeats', () => {
    const sessions = [
      of('a', 'alba-one', 400),
      of('short', 'alba-one', 100, { cutShort: 'it got hot' }),
      of('earlier', 'alba-one', 90, { date: '2026-01-01' }),
      of('b', 'brae', 300),
    ];
    expect(answer(sessions).chart?.rows.map((row) => row.session.id)).toEqual(['b', 'a']);
  });

  it('of one body claims no order', () => {
    expect(
      said([of('a', 'alba-one', 400), of('u', 'alba-one', 500, { settings: { ...hd24, resolution: 'uhd' } })]),
    ).toMatch(
      /^Alba One is the only body measured so far\. Its lowest total is [\d.]+ ± [\d.]+ ms from the event to its picture, on the rig Attic, at /,
    );
  });

  it('of bodies that share no condition says so, and gives each by itself', () => {
    const apart = [of('a', 'alba-one', 400), of('b', 'brae', 300, { rig: 'barn' })];
    expect(said(apart)).toMatch(
      /^No two bodies have been measured in the same condition on the same rig, so nothing here says which lags least\. By themselves, at their lowest: Alba One .*, on the rig Attic, at .*; Brae .*, on the rig Barn, at .*\.$/,
    );
    expect(answer(apart).chart).toBeUndefined();
  });

  it('of no session says that nothing has been measured', () => {
    expect(said([])).toBe('Nothing has been measured yet.');
  });
});

describe('bodies at a glance', () => {
  it('have their lowest total at each rate, fastest first, of the chain they were measured on most', () => {
    const rows = bodiesAtGlance(
      compileBench(
        bench([
          of('hd', 'alba-one', 400),
          of('uhd', 'alba-one', 500, { settings: { ...hd24, resolution: 'uhd' } }),
          of('fast', 'alba-one', 300, { settings: { ...hd24, rate: '59.94' } }),
          of('other', 'alba-one', 50, { method: 'instrument' }),
        ]),
      ),
    );
    expect(rows.map(({ name, rig }) => [name, rig])).toEqual([
      ['Alba One', 'Attic'],
      ['Brae', undefined],
    ]);
    expect(rows[0]?.rows.map(({ rate, total }) => [rate, total.id])).toEqual([
      ['59.94 frames/s', 'total/fast'],
      ['24 frames/s', 'total/hd'],
    ]);
  });
});
