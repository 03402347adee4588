import { describe, expect, it } from 'vitest';
import { compileSessions } from '../../../src/register/compilation.ts';
import { comparedSession, differenceFigure } from '../../../src/register/comparisons/comparison-figures.ts';
import { comparisonFindings } from '../../../src/register/comparisons/comparison-findings.ts';
import type { Family } from '../../../src/register/comparisons/family.ts';
import { labelPairs } from '../../../src/register/comparisons/pair-labels.ts';
import { compileRegister } from '../../../src/site/compile.ts';
import type { Figure } from '../../../src/register/register.ts';
import type { Bench, Session } from '../../../src/model/bench.ts';
import { rate } from '../../../src/model/rate.ts';
import { parseReferences } from '../../../src/ingest/references.ts';
import { bench, reading, session } from '../../support/small-bench.ts';

/** Rows of a rig that nobody measured: uncertain, and the same in all its sessions. */
const observer = { name: 'Phone', rate: rate(240) };

function report(text: string): Bench['reports'][number] {
  const refuse = (): never => {
    throw new Error('the text of a test must be MDX');
  };
  return {
    id: 'r',
    title: 'R',
    summary: '',
    date: '2026-01-05',
    ...parseReferences(text, refuse),
    text,
    file: { path: 'content/reports/r.mdx', sha256: '0'.repeat(64), bytes: 0 },
  };
}

function compile(sessions: readonly Session[], text = ''): ReturnType<typeof compileRegister> {
  const base = bench(sessions);
  const [rig] = base.rigs;
  if (rig === undefined) throw new Error('the small bench has a rig');
  const rigs = ['attic', 'cellar'].map((id) => ({ ...rig, id, name: id === 'attic' ? 'Attic' : 'Cellar', observer }));
  return compileRegister({ ...base, rigs, reports: text === '' ? [] : [report(text)] });
}

const readings = (middle: number, spread: number) =>
  [0, 1, 2, 3, 4, 5].map((n) =>
    reading(n + 2, middle + spread * ((n % 3) - 1), { run: 1 + (n >> 1), sourceMs: 3001 * n + 7 * n * n }),
  );
const uhd = { rate: '24', resolution: 'uhd', 'audio-out': 'off' };
const off = session('off', uhd, { readings: readings(300, 6) });
const on = session('on', { ...uhd, 'audio-out': 'on' }, { readings: readings(420, 6) });
const elsewhere = session('elsewhere', { ...uhd, 'audio-out': 'on' }, { readings: readings(420, 6), rig: 'cellar' });
const other = session('other', uhd, { readings: readings(290, 6), body: 'brae' });

const byId = ({ figures }: { figures: readonly Figure[] }, id: string): Figure => {
  const found = figures.find((figure) => figure.id === id);
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
};
/** Sum of squares of the components of a total that it shares with others, and that it has alone. */
const squares = ({ components = [] }: Figure, shared: boolean): number =>
  components
    .filter((component) => (component.shared !== null) === shared)
    .reduce((sum, { standardUncertainty: u }) => sum + u * u, 0);

describe('what a rig adds', () => {
  it('cancels in a difference of two sessions on it, but for what their sizes differ', () => {
    const register = compile([off, on]);
    const [a, b] = [byId(register, 'total/on'), byId(register, 'total/off')];
    const difference = byId(register, 'difference/on/off');
    expect(squares(a, true)).toBeGreaterThan(1);
    expect(difference.value).toBeCloseTo(a.value - b.value, 9);
    // JCGM 100:2008, 5.2.2, note 1: fully correlated terms subtract. All rig terms here are equal, but the clock's,
    // which goes with the value.
    expect(difference.standardUncertainty! ** 2).toBeCloseTo(squares(a, false) + squares(b, false), 3);
    expect(difference.components!.filter(({ name }) => /row skew|scan-out/.test(name))).toEqual([]);
    expect(difference.inWords).toContain(
      'Both were taken on one rig, so its terms cancel: observer row skew and display scan-out.',
    );
  });

  it('stays in a difference across rigs, which says so, in the figure and to the editor', () => {
    const register = compile([off, elsewhere], '<Difference of="elsewhere" than="off" />');
    const [a, b] = [byId(register, 'total/elsewhere'), byId(register, 'total/off')];
    const difference = byId(register, 'difference/elsewhere/off');
    expect(difference.standardUncertainty! ** 2).toBeCloseTo(
      [a, b].reduce((sum, total) => sum + squares(total, true) + squares(total, false), 0),
      // cells of a rectangular error, of which there are 200, lose a share of 1/200² of its variance
      2,
    );
    expect(difference.inWords).toContain('different rigs (Cellar, Attic): the uncertain terms of both rigs are kept');
    expect(register.findings.filter(({ rule }) => rule === 'rigs-differ').map(({ message }) => message)).toEqual([
      'elsewhere is compared with off, and they were taken on different rigs (Cellar, Attic), so the rigs’ own terms and displays do not cancel.',
    ]);
  });
});

describe('a comparison that a write-up asks for', () => {
  it('says in what the sessions differ, where that is more than one thing', () => {
    const register = compile(
      [off, session('far', { rate: '25', resolution: 'hd', 'audio-out': 'off' }, { readings: readings(250, 6) })],
      '<Verdict of="far" than="off" />',
    );
    expect(byId(register, 'verdict/report-r/far/off').inWords).toContain(
      'The two differ in frame rate (25, 24) and resolution (HD 1920 × 1080, UHD 3840 × 2160), so the figure is of all of these together.',
    );
    expect(register.findings.filter(({ rule }) => rule === 'settings-differ').map(({ message }) => message)).toEqual([
      'far is compared with off, and the two differ in frame rate (25, 24) and resolution (HD 1920 × 1080, UHD 3840 × 2160): the figure is of all of these together.',
    ]);
  });

  it('takes its margin from the write-up, and otherwise half a frame interval of the faster rate', () => {
    const register = compile(
      [off, on, session('off-25', { ...uhd, rate: '25' })],
      '<Verdict of="on" than="off" margin="8 ms" /> <Verdict of="off-25" than="off" />',
    );
    expect(byId(register, 'verdict/report-r/on/off/within-8-ms').verdict?.marginMs).toBe(8);
    expect(byId(register, 'verdict/report-r/off-25/off').verdict?.marginMs).toBeCloseTo(20, 9);
  });

  it('is one family with all others of its write-up, each once', () => {
    const register = compile(
      [off, on, other],
      '<Difference of="on" than="off" /> <Ratio of="on" than="off" /> <Verdict of="other" than="off" /> <DifferenceTable setting="audio-out" caption="x" />',
    );
    expect(byId(register, 'family/report-r').value).toBe(2);
    expect(
      register.figures
        .filter(({ id }) => id.startsWith('verdict/report-r/'))
        .map(({ id, verdict }) => [id, verdict?.familySize]),
    ).toEqual([
      ['verdict/report-r/on/off', 2],
      ['verdict/report-r/other/off', 2],
    ]);
  });

  it('leads to both sessions: their files, readings and runs', () => {
    const register = compile([off, on]);
    const difference = byId(register, 'difference/on/off');
    const [a, b] = [byId(register, 'total/on'), byId(register, 'total/off')];
    expect(new Set(difference.sources.map(({ file }) => file))).toEqual(
      new Set([...a.sources, ...b.sources].map(({ file }) => file)),
    );
    expect([difference.readings, difference.runs]).toEqual([a.readings + b.readings, a.runs + b.runs]);
  });
});

describe('a family', () => {
  it('adjusts its verdicts together: the smallest p counts as many times as there are comparisons', () => {
    const register = compile([
      off,
      on,
      session('hd', { ...uhd, resolution: 'hd' }, { readings: readings(302, 6) }),
      session('off-25', { ...uhd, rate: '25' }, { readings: readings(303, 6) }),
    ]);
    const verdicts = register.figures.filter(({ id }) => id.startsWith('verdict/settings-'));
    const p = verdicts.map(({ id }) => byId(register, id.replace(/^verdict\/[^/]+/, 'difference')).p!);
    expect(verdicts).toHaveLength(3);
    // S. Holm, Scand. J. Statist. 6 (1979), 65 (from memory): the smallest p times m, the next at least times m − 1.
    const order = [...p.keys()].sort((x, y) => p[x]! - p[y]!);
    const expected: number[] = [];
    for (const [step, index] of order.entries())
      expected[index] = Math.max(step === 0 ? 0 : expected[order[step - 1]!]!, Math.min(1, (3 - step) * p[index]!));
    verdicts.forEach(({ verdict }, index) => expect(verdict?.pAdjusted).toBeCloseTo(expected[index]!, 12));
    expect(verdicts[0]?.inWords).toContain(
      'One of 3 comparisons that are adjusted together by Holm’s method (all pairs of sessions of Alba One on Attic that differ in one setting only)',
    );
  });

  it('calls a difference unsettled that would be one by itself', () => {
    // Eleven pairs without a difference and one with p just below 0.05: alone it is settled, among twelve it is not.
    const close = session('close', { ...uhd, 'audio-out': 'on' }, { readings: readings(322, 6) });
    const alone = compile([off, close], '<Verdict of="close" than="off" />');
    const p = byId(alone, 'difference/close/off').p!;
    expect(p).toBeLessThan(0.05);
    const many = Array.from({ length: 11 }, (_, n) => session(`same-${n}`, uhd, { readings: readings(300, 6) }));
    const asked = many.map(({ id }) => `<Verdict of="${id}" than="off" />`).join(' ');
    expect(p * 12).toBeGreaterThan(0.05);
    const among = compile([off, close, ...many], `<Verdict of="close" than="off" /> ${asked}`);
    expect(byId(alone, 'verdict/report-r/close/off').verdict?.word).toBe('slower');
    expect(byId(among, 'verdict/report-r/close/off').verdict?.word).not.toBe('slower');
  });
});

describe('sessions in which no reading differs', () => {
  // An instrument that nobody stated an uncertainty of, 24 frames a second, every reading 300.
  const flat = (id: string, settings: Readonly<Record<string, string>>) =>
    session(id, settings, { readings: [2, 3, 4].map((line) => reading(line, 300)), method: 'instrument' });
  const register = compile([flat('x', uhd), flat('y', { ...uhd, 'audio-out': 'on' })]);

  it('give no figure that is not a number', () => {
    expect(register.figures.length).toBeGreaterThan(20);
    for (const figure of register.figures)
      expect(Number.isFinite(figure.value) && !/NaN|undefined/.test(figure.text), figure.id).toBe(true);
  });

  it('are compared all the same: the rig says how far they can be trusted', () => {
    expect(byId(register, 'difference/y/x').standardUncertainty).toBeGreaterThan(10);
  });

  it('have a reason and a sentence, should nothing be left to judge them by', () => {
    const compilation = compileSessions(bench([flat('x', uhd), flat('y', { ...uhd, 'audio-out': 'on' })]));
    const pair = { a: 'y', b: 'x' };
    const family: Family = { id: 'f', of: {}, group: 'g', groupTitle: 'G', inWords: 'one', pairs: [pair] };
    const sides = [comparedSession(compilation, 'y'), comparedSession(compilation, 'x')] as const;
    const figure = differenceFigure({
      compilation,
      family,
      labels: labelPairs(compilation.bench, [pair]),
      pair,
      sides,
      difference: { kind: 'not-estimable', value: 5, reason: 'no-scatter' },
    });
    expect(figure).toMatchObject({ value: 5, reason: 'no-scatter', text: '5.0 ms' });
    expect(figure.interval).toBeUndefined();
    expect(figure.inWords).toMatch(
      /No interval: all readings of both sessions are equal, so nothing says how far they can be trusted\.$/,
    );
    expect(comparisonFindings(compilation, [], [figure]).map(({ rule, message }) => [rule, message])).toEqual([
      [
        'difference-without-scatter',
        'The difference of y and x is 5.0 ms, and nothing says how far it can be trusted: no reading differs from another.',
      ],
    ]);
  });
});
