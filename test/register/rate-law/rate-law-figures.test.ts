import { describe, expect, it } from 'vitest';
import type { Compilation } from '../../../src/register/compilation.ts';
import { compileRateLaws } from '../../../src/register/rate-law/rate-law-figures.ts';
import { describeLaw } from '../../../src/views/rate-law-words.ts';
import { findRateLaws } from '../../../src/register/rate-law/rate-laws.ts';
import { plainSentence } from '../../../src/register/sentence.ts';
import { compilationOf, figureOf, given, settings, type GivenTotal } from '../../support/joint-bench.ts';

const NAME = 'alba-one/attic/uhd-off';

function lawFigures(compilation: Compilation): ReturnType<typeof compileRateLaws> {
  return compileRateLaws(compilation, findRateLaws(compilation));
}

function statement(compilation: Compilation): readonly string[] {
  const { figures } = lawFigures(compilation);
  const laws = findRateLaws(compilation);
  return laws.map((law) => {
    const { says, evidence } = describeLaw(law, (id) => figures.find((figure) => figure.id === id), compilation.find);
    return [says, evidence].map(plainSentence).join(' | ');
  });
}

/** Totals on a line, at these rates. */
const line = (rates: readonly string[], at: (intervalMs: number) => number, u = 1): readonly GivenTotal[] =>
  rates.map((rate) => given(`at-${rate}`, rate, at(1000 / Number(rate)), u));

describe('about 300, 250 and 120 ms at 24, 30 and 60 frames/s (common practice, no source)', () => {
  const usual = compilationOf([given('a', '24', 300, 5), given('b', '30', 250, 5), given('c', '60', 120, 5)]);
  const { figures } = lawFigures(usual);

  it('is a law of seven to eight frames with an intercept near zero', () => {
    const frames = figureOf(figures, `rate-law-frames/${NAME}`);
    expect(frames.value).toBeGreaterThan(7);
    expect(frames.value).toBeLessThan(8);
    const { low = 1, high = -1 } = figureOf(figures, `rate-law-fixed/${NAME}`).interval ?? {};
    expect(low).toBeLessThan(0);
    expect(high).toBeGreaterThan(0);
  });

  it('says so', () =>
    expect(statement(usual)[0]).toMatch(
      /^7\.\d\d ± \d\.\d\d frames at every rate measured, for the most part, so a faster rate helps: a part that no rate changes is within ± \d\d ms\./,
    ));
});

describe('what is not told from none is bounded, and what is told from it is not', () => {
  // rates at 40 and 20 ms, u 1: fixed = 2·y(20) − y(40), so u² = 4 + 1; frames = (y(40) − y(20))/20, so u = √2/20
  const bounds = (at: (intervalMs: number) => number) =>
    Object.fromEntries(
      lawFigures(compilationOf(line(['25', '50'], at)))
        .figures.filter(({ kind }) => kind.endsWith('-within'))
        .map(({ kind, value }) => [kind, value]),
    );
  const z = 1.6448536269514722; // 95 % of the normal distribution (NIST/SEMATECH e-Handbook, 1.3.6.7.1)

  it('a fixed part, by two one-sided tests', () =>
    expect(bounds((t) => 3 * t + 1)).toEqual({ 'rate-law-fixed-within': expect.closeTo(1 + z * Math.sqrt(5), 6) }));

  it('frames beyond the wait on the display, by an upper limit', () =>
    expect(bounds((t) => 0.55 * t + 90)).toEqual({
      'rate-law-frames-within': expect.closeTo(0.05 + (z * Math.SQRT2) / 20, 6),
    }));
});

it('5 ms beside 3.5 frames are no constant number of frames, however little tells them from it', () =>
  // the part of 5 ms is within its own uncertainty, and within no half frame of the fastest rate
  expect(statement(compilationOf(line(['24', '30', '60'], (t) => 3.5 * t + 5, 4)))[0]).toMatch(
    /^3\.5\d* ± \S+ frames at every rate measured, for the most part/,
  ));

describe('the statement lies between two ends, and says when the data leave it open', () => {
  it.each([
    [
      'a constant number of frames',
      line(['24', '30', '60'], (t) => 7 * t),
      /^7\.00 ± 0\.\d\d frames at every rate measured, so a faster rate always helps: a part that no rate changes is within ± \d\.\d ms\. \| If these rates lay on one line, they would stray from it as far as this with probability 1\.00\. If it went on/,
    ],
    [
      'a constant number of milliseconds, half an interval of waiting besides',
      line(['24', '30', '60'], (t) => 80 + 0.5 * t),
      /^80\.0 ± \d\.\d ms at every rate measured, so a faster rate hardly helps: beside the wait of each frame on the display, it takes off 0\.\d+ frames at most\./,
    ],
    [
      'both parts',
      line(['24', '30', '60'], (t) => 60 + 2.5 * t),
      /^2\.50 ± 0\.\d+ frames at every rate measured, and 60\.0 ± \d\.\d ms on top that no rate changes: a faster rate helps, though less than in proportion\./,
    ],
    [
      'nothing settled',
      line(['24', '25'], (t) => 2 * t, 30),
      /^Not settled: these data agree with a constant number of frames and with a constant number of milliseconds alike/,
    ],
    [
      'steeper than any proportion',
      line(['24', '30', '60'], (t) => 9 * t - 60),
      /^A faster rate helps more than in proportion: 9\.00/,
    ],
    [
      'a bent line',
      line(['24', '30', '60'], (t) => 4 * t + (t > 30 && t < 40 ? 30 : 0)),
      /take it as a summary, not as a rule\. \| If these rates lay on one line, they would stray from it as far as this with probability below 0\.001\./,
    ],
    [
      'two rates, through which any line goes',
      line(['24', '60'], (t) => 7 * t),
      /Two rates cannot show whether that holds at others: a third would\. \| $/,
    ],
    [
      'one rate',
      line(['24'], (t) => 7 * t),
      /^Measured at one rate only; a session at another rate, alike in everything else, would give its law\. \| $/,
    ],
    ['no scatter at all', line(['24', '60'], (t) => 7 * t, 0), /^One of the sessions has no scatter at all/],
  ])('%s', (_end, totals, words) => expect(statement(compilationOf(totals))[0]).toMatch(words));
});

describe('a floor', () => {
  const FLOOR = 1000 / 60;
  const bent = compilationOf(line(['24', '25', '30', '60', '120'], (t) => 18 + 3 * Math.max(t, FLOOR)));
  const { figures } = lawFigures(bent);

  it('has a level and a place, and the line is that of the slower rates', () => {
    expect(figureOf(figures, `rate-law-floor/${NAME}`).value).toBeCloseTo(68, 6);
    expect(figureOf(figures, `rate-law-break/${NAME}`).value).toBeCloseTo(FLOOR, 6);
    expect(figureOf(figures, `rate-law-frames/${NAME}`).value).toBeCloseTo(3, 6);
    expect(figureOf(figures, `rate-law-fixed/${NAME}`).value).toBeCloseTo(18, 6);
    expect(figureOf(figures, `rate-law-floor-test/${NAME}`).value).toBeLessThan(0.001);
  });

  it('is said with the rate at which no more is to be gained', () =>
    expect(statement(bent)[0]).toMatch(
      /That holds down to a floor: no faster rate goes below 68\.0 .* At 60 frames\/s these data see no more to be gained\. \| .*with probability below 0\.001\.$/,
    ));

  it('keeps what the rig shares in its uncertainty', () => {
    const shared = lawFigures(
      compilationOf(
        bent.sessions.map(({ session }) =>
          given(session.id, session.settings['rate'] ?? '', bent.budgetOf(session.id).value, 1, { shared: 4 }),
        ),
      ),
    );
    expect(figureOf(shared.figures, `rate-law-floor/${NAME}`).standardUncertainty).toBeGreaterThan(4);
  });
});

it('what sessions on a rig share enters the fixed part alone', () => {
  const totals = (shared: number): readonly GivenTotal[] =>
    ['24', '30', '60'].map((rate) => given(`at-${rate}`, rate, 7 * (1000 / Number(rate)), 2, { shared }));
  const [alone, together] = [0, 5].map((shared) => lawFigures(compilationOf(totals(shared))).figures);
  const u = (figures: typeof alone, kind: string): number =>
    figureOf(figures ?? [], `${kind}/${NAME}`).standardUncertainty ?? Number.NaN;
  expect(u(together, 'rate-law-frames')).toBeCloseTo(u(alone, 'rate-law-frames'), 12);
  expect(u(together, 'rate-law-fixed')).toBeCloseTo(Math.hypot(u(alone, 'rate-law-fixed'), 5), 12);
});

it('keeps configurations apart, names each by what differs, and lists every file it used', () => {
  const { figures } = lawFigures(
    compilationOf([
      ...line(['24', '60'], (t) => 7 * t),
      ...['24', '60'].map((rate) =>
        given(`audio-${rate}`, rate, 10 * (1000 / Number(rate)), 1, {
          settings: settings(rate, { 'audio-out': 'on' }),
        }),
      ),
    ]),
  );
  const frames = figures.filter(({ kind }) => kind === 'rate-law-frames');
  expect(frames.map(({ label }) => label)).toEqual([
    'Frame intervals of latency: Alba One, embedded audio off',
    'Frame intervals of latency: Alba One, embedded audio on',
  ]);
  expect(frames.map(({ sources }) => sources.map(({ file }) => file))).toEqual([
    ['data/sessions/at-24.csv', 'data/sessions/at-60.csv'],
    ['data/sessions/audio-24.csv', 'data/sessions/audio-60.csv'],
  ]);
  expect(frames[1]?.entry).toBe('/figures/rate-laws/alba-one-attic-uhd-on/#rate-law-frames-alba-one-attic-uhd-on');
});
