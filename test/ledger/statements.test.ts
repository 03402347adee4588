/**
 * That everything which a reader relies on is a statement: whatever a file says otherwise, something moves, with its
 * cause.
 */
import { describe, expect, it } from 'vitest';
import { compareWithLedger } from '../../src/ledger/compare.ts';
import { describeCauses } from '../../src/model/cause-text.ts';
import type { Bench, SourceFile, WriteUp } from '../../src/model/bench.ts';
import type { Illustration } from '../../src/model/illustration.ts';
import { rate } from '../../src/model/rate.ts';
import { compileRegister } from '../../src/site/compile.ts';
import { parseReferences } from '../../src/ingest/references.ts';
import { ledgerAfter } from '../support/ledger.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const UHD = { rate: '24', resolution: 'uhd', 'audio-out': 'off' };
const excluded = [reading(2, 300), reading(3, 310), reading(4, 305), reading(5, 290, { excluded: 'digits overlap' })];
const [a, audio] = [session('a', UHD, { readings: excluded }), session('a-audio', { ...UHD, 'audio-out': 'on' })];
const b = session('b', UHD, { body: 'brae', readings: [reading(2, 400), reading(3, 411), reading(4, 405)] });
const refuse = (): never => {
  throw new Error('the text of a test must be MDX');
};
const report = (text: string, more: Partial<WriteUp> = {}): WriteUp => ({
  id: 'r',
  title: 'R',
  summary: 'What it is about',
  date: '2026-01-05',
  ...parseReferences(text, refuse),
  text,
  file: { path: 'content/reports/r.mdx', sha256: '0'.repeat(64), bytes: 1 },
  ...more,
});
const TEXT = 'It is <Verdict of="a" than="b" margin="8 ms" />.';
/** What the rig shows. */
const picture = (digit: string): Illustration => ({
  text: 'data/rigs/attic.md',
  to: 'attic.jpg',
  shows: {
    kind: 'photograph',
    file: { path: 'data/rigs/attic.jpg', sha256: digit.repeat(64), bytes: 1 },
    width: 4,
    height: 3,
    isLossless: false,
  },
});
const site = { ...bench([a, audio, b], { reports: [report(TEXT)] }), illustrations: [picture('0')] };
const ledger = ledgerAfter([{ bench: site, date: '2026-03-01' }]);

const edited = (file: SourceFile): SourceFile => ({ ...file, sha256: '1'.repeat(64) });

/** What moved, went or came, with its causes. */
function changed(now: Bench): Readonly<Record<string, string>> {
  const { moved, gone, added } = compareWithLedger({ ...now, ledger }, compileRegister(now));
  return Object.fromEntries([
    ...[...moved, ...gone].map(({ id, causes }) => [id, describeCauses(causes)]),
    ...added.map((id) => [id, 'new']),
  ]);
}

const SETTINGS = 'data/settings.yaml changed';
const withLabels = (labels: readonly [string, string]): Bench => ({
  ...site,
  settings: site.settings.map((setting) =>
    setting.id === 'audio-out'
      ? { ...setting, levels: setting.levels.map((level, index) => ({ ...level, label: labels[index] ?? '' })) }
      : setting,
  ),
  settingsFile: edited(site.settingsFile),
});
const [rig, display, body] = [site.rigs[0]!, site.displays[0]!, site.bodies[0]!];
const inRig = (more: object): Bench => ({ ...site, rigs: [{ ...rig, ...more, file: edited(rig.file) }] });
const inDisplay = (more: object): Bench => ({
  ...site,
  displays: [{ ...display, ...more, file: edited(display.file) }],
});
const inA = (more: object): Bench =>
  bench([{ ...a, ...more, file: edited(a.file) }, audio, b], { reports: site.reports });
const rowsOf = (readings: typeof excluded): Bench =>
  bench([{ ...a, readings, readingsFile: edited(a.readingsFile) }, audio, b], { reports: site.reports });

it('nothing has moved where nothing changed', () => expect(changed(site)).toEqual({}));

describe('moves, with its file as the cause', () => {
  it.each<readonly [what: string, now: Bench, id: string, cause: string]>([
    ['labels of two levels that changed places', withLabels(['On', 'Off']), 'level/audio-out/off', SETTINGS],
    ['a label alone', withLabels(['None', 'On']), 'setting/audio-out', SETTINGS],
    ['the name of a rig', inRig({ name: 'Loft' }), 'rig/attic', 'data/rigs/attic.md changed'],
    [
      'the name of a timer',
      inRig({ sourceTimer: { name: 'Other', refresh: rate(60) } }),
      'facts/rigs/attic',
      'data/rigs/attic.md changed',
    ],
    [
      'a picture that a text shows',
      { ...site, illustrations: [picture('1')] },
      'pictures/rigs/attic',
      'data/rigs/attic.jpg changed',
    ],
    ['what is said of a rig', inRig({ description: 'Moved.' }), 'words/rigs/attic', 'new'],
    ['the name of a display', inDisplay({ name: 'Wall' }), 'display/screen', 'data/displays/screen.md changed'],
    [
      'where a stated latency comes from',
      inDisplay({ latency: { valueMs: 5, standardUncertaintyMs: 1, source: 'hearsay' } }),
      'facts/displays/screen',
      'data/displays/screen.md changed',
    ],
    [
      'whether a body is invented',
      {
        ...site,
        bodies: site.bodies.map((each) =>
          each === body ? { ...each, invented: false, file: edited(each.file) } : each,
        ),
      },
      'facts/bodies/alba-one',
      'data/bodies/alba-one.md changed',
    ],
    ['how warm it was', inA({ room: '22 °C' }), 'facts/sessions/a', 'new'],
    [
      'why a reading does not count',
      rowsOf(excluded.with(3, reading(5, 290, { excluded: 'other' }))),
      'excluded-rows/a',
      'data/sessions/a.csv changed',
    ],
    [
      'two rows that changed places',
      rowsOf([excluded[1]!, excluded[0]!, excluded[2]!, excluded[3]!]),
      'rows/a',
      'data/sessions/a.csv changed',
    ],
    ['the publisher', { ...site, site: { ...site.site, publisher: 'Someone' } }, 'site/publisher', 'new'],
  ])('%s', (_what, now, id, cause) => expect(changed(now)).toMatchObject({ [id]: cause }));
});

describe('of a write-up', () => {
  const REPORT = 'content/reports/r.mdx changed';
  const revised = (text: string, more: Partial<WriteUp> = {}): Bench => ({
    ...site,
    reports: [report(text, { ...more, file: edited(report(text).file) })],
  });

  it('its words, and not how they are broken into lines', () => {
    expect(changed(revised(`${TEXT} More.`))).toEqual({ 'words/reports/r': REPORT });
    expect(changed(revised(TEXT.replace(' ', '\n')))).toEqual({});
  });

  it('its day, title and author', () => {
    expect(changed(revised(TEXT, { date: '2026-02-05' }))).toEqual({ 'date/reports/r': REPORT });
    expect(changed(revised(TEXT, { author: 'A. Nobody' }))).toEqual({ 'report/r': REPORT });
  });

  it('a margin that its author changed, which is not laid to the code', () => {
    const causes = changed(revised(TEXT.replace('8 ms', '200 ms')));
    expect(causes['verdict/report-r/a/b/within-8-ms']).toBe(REPORT);
    expect(causes['verdict/report-r/a/b/within-200-ms']).toBe('new');
    expect(Object.values(causes).join(' ')).not.toContain('its code');
  });

  it('one comparison more, by which the others are adjusted otherwise', () => {
    const causes = changed(revised(`${TEXT} <Verdict of="a-audio" than="b" />`));
    expect(causes['family/report-r']).toContain(REPORT);
    expect(causes['verdict/report-r/a/b/within-8-ms']).toBe(REPORT);
  });
});

describe('of a figure', () => {
  const register = compileRegister(site);
  const total = register.figures.find(({ id }) => id === 'total/a')!;
  const moved = (more: object) => {
    const figures = register.figures.map((figure) => (figure === total ? { ...figure, ...more } : figure));
    return compareWithLedger({ ...site, ledger }, { ...register, figures }).moved;
  };
  const [component, ...rest] = total.components!;

  it.each<readonly [string, object]>([
    ['its standard uncertainty', { standardUncertainty: total.standardUncertainty! * 1.01 }],
    ['its coverage factor', { coverageFactor: 3.25 }],
    ['the size of a component', { components: [{ ...component!, standardUncertainty: 9.125 }, ...rest] }],
    ['the name of a component', { components: [{ ...component!, name: 'hope' }, ...rest] }],
    ['how many readings it is of', { readings: 2 }],
    ['how it is computed', { inWords: 'By guessing.' }],
    ['its label', { label: 'Latency' }],
  ])('%s, although its text stays', (_what, more) =>
    expect(moved(more)).toMatchObject([{ id: 'total/a', quiet: 'behind' }]),
  );

  it('what moved is told, and nothing else', () =>
    expect(moved({ coverageFactor: 3.25 })[0]?.to).toBe(`${total.text} (k 3.25)`));

  it('a finding', () => {
    const [first, ...others] = register.findings;
    const findings = [{ ...first!, message: 'All is well.' }, ...others];
    const causes = compareWithLedger({ ...site, ledger }, { ...register, findings }).moved;
    expect(causes.map(({ id }) => id.split('/')[0])).toEqual(['finding']);
  });
});
