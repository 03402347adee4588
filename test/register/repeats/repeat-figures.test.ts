import { describe, expect, it } from 'vitest';
import { compileRepeats } from '../../../src/register/repeats/repeat-figures.ts';
import { findFirmwareChanges, findRepeats, historyOf } from '../../../src/register/repeats/repeat-groups.ts';
import { describeFirmwareChange, describeRepeats } from '../../../src/views/repeat-words.ts';
import { plainSentence } from '../../../src/register/sentence.ts';
import { compilationOf, figureOf, given, type GivenTotal } from '../../support/joint-bench.ts';

const NAME = 'alba-one/attic/uhd-24-off';
const on = (date: string, value: number, more: Parameters<typeof given>[4] = {}, u = 2): GivenTotal =>
  given(`s-${date}-${more.firmware ?? ''}`, '24', value, u, { date, ...more });

describe('sessions on three days', () => {
  const compilation = compilationOf([on('2026-01-03', 300), on('2026-01-01', 306), on('2026-01-02', 309)]);
  const { figures } = compileRepeats(compilation);

  it('pool to their mean, surer than one session where days vary, and less sure than three days that do not', () => {
    const mean = figureOf(figures, `repeat-mean/${NAME}`);
    expect(mean.value).toBeCloseTo(305, 9);
    expect(mean.standardUncertainty).toBeGreaterThan(2 / Math.sqrt(3));
    // what the scatter alone would say: s/√3, s² of 300, 306 and 309 being 21, times the largest size stated
    expect(mean.standardUncertainty).toBeLessThan(1000 / 24 / 2 / Math.sqrt(3));
    expect(mean.speaksOf).toBe('condition');
  });

  it('vary between days by what their own uncertainties leave: √(21 − 4)', () =>
    expect(figureOf(figures, `repeat-between/${NAME}`).value).toBeCloseTo(Math.sqrt(17), 9));

  // S = 42; χ² of 0.05 on 2 degrees of freedom is −2·ln 0.95 = 0.102587
  it('could vary by more: √(S/χ² − u²) at most', () =>
    expect(figureOf(figures, `repeat-between-at-most/${NAME}`).value).toBeCloseTo(
      Math.sqrt(42 / (-2 * Math.log(0.95)) - 4),
      6,
    ));

  it('say where the next would fall: further off than the mean is', () => {
    const [mean, next] = ['repeat-mean', 'repeat-next'].map(
      (kind) => figureOf(figures, `${kind}/${NAME}`).standardUncertainty ?? 0,
    );
    // one more day and one more session's own error beside the mean of three: √(1 + 3) times as far
    expect((next ?? 0) / (mean ?? 1)).toBeCloseTo(2, 1);
  });

  it('stand in words, by date', () => {
    const [group] = findRepeats(compilation.bench, compilation.find);
    expect(group?.sessions.map(({ date }) => date)).toEqual(['2026-01-01', '2026-01-02', '2026-01-03']);
    expect(plainSentence(describeRepeats(group!, (id) => figures.find((figure) => figure.id === id)))).toMatch(
      /^3 sessions on 3 days: 305[.\d]* ± [.\d]+ ms on average\. Apart from what its own interval explains, a session typically lies 4\.1 ms from that average; these sessions cannot rule out as much as 20 ms\. One more session on this rig would fall within 305 ± \d+ ms\.$/,
    );
  });
});

it('what the rig shares widens the mean, and not where the next session on it would fall', () => {
  const figures = (shared: number) =>
    compileRepeats(compilationOf([on('2026-01-01', 300, { shared }), on('2026-01-02', 306, { shared })])).figures;
  const u = (shared: number, kind: string): number =>
    figureOf(figures(shared), `${kind}/${NAME}`).standardUncertainty ?? Number.NaN;
  expect(u(4, 'repeat-mean')).toBeCloseTo(Math.hypot(u(0, 'repeat-mean'), 4), 9);
  expect(u(4, 'repeat-next')).toBe(u(0, 'repeat-next'));
});

it.each([
  [
    'one day alone tells nothing of days',
    [on('2026-01-01', 300), given('again', '24', 306, 2, { date: '2026-01-01' })],
  ],
  ['another rig is no repeat', [on('2026-01-01', 300), on('2026-01-02', 306, { rig: 'attic', links: ['radio'] })]],
  [
    'another firmware is no repeat',
    [on('2026-01-01', 300, { firmware: '1' }), on('2026-01-02', 306, { firmware: '2' })],
  ],
])('%s', (_what, totals) => {
  expect(compileRepeats(compilationOf(totals)).figures.filter(({ kind }) => kind.startsWith('repeat'))).toEqual([]);
});

describe('a change of firmware', () => {
  const totals = [
    on('2026-01-05', 280, { firmware: '2.20', shared: 3 }),
    on('2026-01-01', 300, { firmware: '2.11', shared: 3 }),
    on('2026-01-02', 304, { firmware: '2.11', shared: 3 }),
  ];
  const compilation = compilationOf(totals);
  const { figures } = compileRepeats(compilation);
  const change = figureOf(figures, 'firmware-change/alba-one/attic/uhd-24-off/2.11/2.20');

  it('is the later less the mean of the earlier; what the rig shares cancels', () => {
    expect(change.value).toBeCloseTo(-22, 9);
    // u² = 2² for one session and 2²/2 for the mean of two
    expect(change.standardUncertainty).toBeCloseTo(Math.sqrt(4 + 2), 9);
  });

  it('is said in a word that its interval earns', () => {
    const [found] = findFirmwareChanges(compilation.bench, compilation.find);
    const words = (figure = change): string => plainSentence(describeFirmwareChange(found!, () => figure));
    expect(words()).toMatch(
      /^Firmware 2\.20 against 2\.11, everything else alike: −22\.0 ± 4\.8 ms, faster\. They were measured on different days/,
    );
    expect(words({ ...change, interval: { low: 1, high: 9, level: 0.95 } })).toContain(', slower.');
    // half a frame at 24 frames/s is 20.8 ms
    expect(words({ ...change, interval: { low: -1, high: 9, level: 0.95 } })).toContain(
      ', the same within half a frame.',
    );
    expect(words({ ...change, interval: { low: -1, high: 21, level: 0.95 } })).toContain(', too close to call.');
  });
});

it('a history is a body’s sessions by date', () => {
  const { bench } = compilationOf([on('2026-01-03', 1), on('2026-01-01', 2), on('2026-01-02', 3, { body: 'brae' })]);
  expect(historyOf(bench, 'alba-one').map(({ date }) => date)).toEqual(['2026-01-01', '2026-01-03']);
});
