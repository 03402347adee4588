import { describe, expect, it } from 'vitest';
import { compileRegister } from '../../src/site/compile.ts';
import { compareWithLedger, isUnchanged } from '../../src/ledger/compare.ts';
import { describeCauses } from '../../src/model/cause-text.ts';
import type { Bench, Session, SourceFile } from '../../src/model/bench.ts';
import type { Ledger } from '../../src/model/ledger.ts';
import { rate } from '../../src/model/rate.ts';
import { ledgerOf } from '../support/ledger.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const UHD = { rate: '24', resolution: 'uhd', 'audio-out': 'off' };
const [a, b] = [session('a', UHD), session('b', { ...UHD, rate: '25' }, { body: 'brae' })];
const published = bench([a, b]);
const recorded = ledgerOf(published);

/** Another checksum for a file that was edited. */
const edited = (file: SourceFile): SourceFile => ({ ...file, sha256: '1'.repeat(64) });
const slower = (one: Session): Session => ({
  ...one,
  readings: [reading(2, 800), reading(3, 310), reading(4, 305)],
  readingsFile: edited(one.readingsFile),
});

function changesOf(now: Bench, { ledger = recorded, version = '' }: { ledger?: Ledger; version?: string } = {}) {
  const register = compileRegister(now);
  return compareWithLedger({ ...now, ledger }, version === '' ? register : { ...register, analysis: version });
}

/** Each id that moved or went, with its causes in words. */
function causesIn(...call: Parameters<typeof changesOf>): Readonly<Record<string, string>> {
  const { moved, gone } = changesOf(...call);
  return Object.fromEntries([...moved, ...gone].map(({ id, causes }) => [id, describeCauses(causes)]));
}

it('is silent where nothing changed', () => {
  const changes = changesOf(published);
  expect(isUnchanged(changes)).toBe(true);
  // 2 bodies, 2 sessions, and more than ten figures for each session
  expect(changes.unchanged).toBeGreaterThan(24);
});

it('takes everything for new where nothing was recorded', () => {
  const { moved, gone, added, unchanged } = compareWithLedger(published, compileRegister(published));
  expect([moved, gone, unchanged]).toEqual([[], [], 0]);
  expect(added).toEqual(expect.arrayContaining(['body/brae', 'session/a', 'total/b', 'count/sessions']));
});

it('gives what moved its old and its new text', () => {
  const before = compileRegister(published).figures.find(({ id }) => id === 'maximum/a')!;
  expect(before.text).toBe('310 ms');
  expect(changesOf(bench([slower(a), b])).moved.find(({ id }) => id === 'maximum/a')).toMatchObject({
    from: '310 ms',
    to: '800 ms',
  });
});

it('shows the digits that are not printed where only these moved', () => {
  const figures = recorded.figures.map((figure) =>
    figure.id === 'maximum/a' ? { ...figure, value: 310.0001 } : figure,
  );
  expect(changesOf(published, { ledger: { ...recorded, figures } }).moved).toMatchObject([
    { id: 'maximum/a', from: '310 ms (310.0001)', to: '310 ms (310)' },
  ]);
});

it.each(['low', 'high'] as const)('notices an end of an interval that moved: %s', (end) => {
  const figures = recorded.figures.map((figure) =>
    figure.id === 'total/a' ? { ...figure, [end]: (figure[end] ?? 0) + 0.0001 } : figure,
  );
  const { moved } = changesOf(published, { ledger: { ...recorded, figures } });
  expect(moved.map(({ id }) => id)).toEqual(['total/a']);
  expect(moved[0]?.from).not.toBe(moved[0]?.to);
});

it('does not stir for digits beyond the tenth', () => {
  const figures = recorded.figures.map((figure) =>
    figure.id === 'mean/a' ? { ...figure, value: Number((305 * (1 + 1e-12)).toPrecision(10)) } : figure,
  );
  expect(isUnchanged(changesOf(published, { ledger: { ...recorded, figures } }))).toBe(true);
});

describe('names as the cause', () => {
  it('the readings that were edited, for their session and for no other', () => {
    const causes = causesIn(bench([slower(a), b]));
    expect(causes['total/a']).toBe('data/sessions/a.csv changed');
    // but for the finding that the two sessions had the same readings
    expect(Object.keys(causes).filter((id) => id.endsWith('/b'))).toEqual(['finding/copied-readings/b']);
  });

  it('a rig and a display, for everything on them', () => {
    const [rig, display] = [published.rigs[0]!, published.displays[0]!];
    const other = { ...rig, sourceTimer: { name: 'Timer', refresh: rate(50) }, file: edited(rig.file) };
    expect(causesIn({ ...published, rigs: [other] })['total/b']).toBe('data/rigs/attic.md changed');
    const free = { ...display, sync: 'free' as const, file: edited(display.file) };
    expect(causesIn({ ...published, displays: [free] })['total/b']).toBe('data/displays/screen.md changed');
    expect(causesIn({ ...published, rigs: [other], displays: [free] })['total/a']).toBe(
      'data/displays/screen.md changed; data/rigs/attic.md changed',
    );
  });

  it('two bodies’ files that changed places, although no number moved', () => {
    const [one, two] = published.bodies as [Bench['bodies'][number], Bench['bodies'][number]];
    const bodies = [
      { ...two, id: one.id, file: edited(one.file) },
      { ...one, id: two.id, file: edited(two.file) },
    ];
    const named = changesOf({ ...published, bodies }).moved.filter(({ id }) => id.startsWith('body/'));
    expect(named).toMatchObject([
      {
        id: 'body/alba-one',
        from: 'Alba One (Alba, One)',
        to: 'Brae (Brae, B)',
        causes: [{ kind: 'changed', file: 'data/bodies/alba-one.md' }],
      },
      {
        id: 'body/brae',
        from: 'Brae (Brae, B)',
        to: 'Alba One (Alba, One)',
        causes: [{ kind: 'changed', file: 'data/bodies/brae.md' }],
      },
    ]);
  });

  it('a session whose condition was rewritten, although no number moved', () => {
    const other = { ...a, settings: { ...UHD, resolution: 'hd' }, file: edited(a.file) };
    const causes = causesIn(bench([other, b]));
    expect(causes['session/a']).toBe('data/sessions/a.md changed');
    // The limits of the condition that it left rest on the other session alone.
    expect(Object.keys(causes).filter((id) => !id.startsWith('bracket/'))).toEqual(['session/a']);
  });

  it('a session that is gone, for its own figures and for what counted it', () => {
    const causes = causesIn(bench([a]));
    const gone = 'data/sessions/b.csv is gone; data/sessions/b.md is gone';
    expect(causes).toMatchObject({ 'total/b': gone, 'session/b': gone });
    expect(causes['count/sessions']).toContain('data/sessions/b.csv is gone');
    expect(causes['total/a']).toBeUndefined();
  });

  it('each of two sessions that are gone, for itself', () => {
    const c = session('c', UHD);
    const causes = causesIn(bench([a]), { ledger: ledgerOf(bench([a, b, c])) });
    expect(causes['total/c']).toBe('data/sessions/c.csv is gone; data/sessions/c.md is gone');
  });

  it('a session that is new, for what counts it', () => {
    const { moved, added } = changesOf(bench([a, b, session('c', UHD)]));
    expect(moved.map(({ id, causes }) => [id, describeCauses(causes)])).toContainEqual([
      'count/sessions',
      'data/sessions/c.csv is new',
    ]);
    expect(added).toContain('total/c');
  });

  it('several at once: readings that changed and a session that is gone', () => {
    const excluded = {
      ...a,
      readings: [...a.readings, reading(5, 300, { excluded: 'why' })],
      readingsFile: edited(a.readingsFile),
    };
    expect(causesIn(bench([excluded]))['count/readings']).toContain(
      'data/sessions/a.csv changed; data/sessions/b.csv is gone',
    );
  });

  it('the version of the analysis, beside the files', () => {
    expect(causesIn(bench([slower(a), b]), { version: '99' })['total/a']).toMatch(
      /^the analysis went from version \S+ to version 99; data\/sessions\/a\.csv changed$/,
    );
  });

  it('its code, where no input changed', () => {
    const figures = recorded.figures.map((figure) => (figure.id === 'total/a' ? { ...figure, text: '1 ms' } : figure));
    const version = compileRegister(published).analysis;
    expect(causesIn(published, { ledger: { ...recorded, figures } })).toEqual({
      'total/a': `no file changed and the analysis still calls itself version ${version}: its code, or a library, changed without a new version in src/analysis/version.ts`,
    });
  });

  it('other files where none of its own changed, and says that they are not its own', () => {
    const figures = recorded.figures.map((figure) => (figure.id === 'total/a' ? { ...figure, text: '1 ms' } : figure));
    expect(
      causesIn({ ...published, settingsFile: edited(published.settingsFile) }, { ledger: { ...recorded, figures } }),
    ).toEqual({
      'total/a': 'data/settings.yaml changed (not among its own files, which are as they were)',
    });
  });
});
