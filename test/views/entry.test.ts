/** What an entry and a session's page say, of a bench and figures written out here. */
import { describe, expect, it } from 'vitest';
import type { Bench } from '../../src/model/bench.ts';
import type { Published } from '../../src/register/published.ts';
import { publish } from '../../src/register/published.ts';
import type { Figure } from '../../src/register/register.ts';
import { entryOf, entryRow } from '../../src/views/entry.ts';
import { sessionPage } from '../../src/views/session-page.ts';
import { compilationOf, given } from '../support/joint-bench.ts';

const LEDGER: NonNullable<Bench['ledger']> = {
  path: 'content/ledger/figures.csv',
  figures: [],
  chain: [],
  analysis: '2',
  checksums: {},
  told: [
    {
      id: '2026-05-03-two',
      date: '2026-05-03',
      reason: 'A digit was misread.',
      analysis: '2',
      causes: [],
      moved: [{ id: 'total/a', from: '251 ± 8 ms', to: '248.8 ± 5.1 ms' }],
      gone: [],
      added: {},
    },
  ],
};

const FIGURE = {
  unit: 'ms',
  value: 248.8,
  readings: 20,
  runs: 2,
  excluded: 1,
  sources: [{ file: 'data/sessions/a.csv', sha256: 'f'.repeat(64) }],
  entry: '/sessions/a/#total',
} as const;
const total: Figure = {
  ...FIGURE,
  id: 'total/a',
  kind: 'total',
  of: { session: 'a' },
  standardUncertainty: 2.56,
  interval: { low: 243.7, high: 253.9, level: 0.95 },
  components: [
    {
      name: 'repeatability',
      type: 'A',
      distribution: 'normal',
      standardUncertainty: 2.56,
      degreesOfFreedom: 14,
      share: 1,
      shared: null,
    },
  ],
  text: '248.8 ± 5.1 ms',
  label: 'Total latency',
};
const frames: Figure = {
  ...FIGURE,
  id: 'frames/a',
  kind: 'frames',
  of: { session: 'a' },
  unit: 'frames',
  text: '6.22 ± 0.13 frames',
  label: 'Total latency in frames',
};

function site(figures: readonly Figure[] = [total, frames]): Published {
  const one = given('a', '25', 248.8, 1, { firmware: '1.40', room: '21 °C', warmUp: '10 min', links: [] });
  const compilation = compilationOf([one], {
    ledger: LEDGER,
    methods: [{ id: 'two-timers', title: 'Two timers in one picture' }] as unknown as Bench['methods'],
  });
  return publish(
    compilation,
    {
      analysis: '2',
      figures,
      findings: [
        { rule: 'drift', severity: 'caution', where: { session: 'a' }, message: 'It drifts.', hint: 'Let it warm up.' },
        { rule: 'drift', severity: 'caution', where: { session: 'b' }, message: 'Not of a.', hint: '' },
      ],
    },
    [],
  );
}

describe('an entry', () => {
  it('says interval and standard uncertainty, in that order', () => {
    expect(entryRow(site(), total).details).toEqual([
      '95\u00a0% interval 243.7\u00a0to 253.9\u00a0ms',
      'standard uncertainty 2.6\u00a0ms',
    ]);
  });

  it('says of what the interval speaks', () => {
    expect(entryRow(site(), { ...total, speaksOf: 'clips' }).details).toEqual([
      '95\u00a0% interval 243.7\u00a0to 253.9\u00a0ms',
      'standard uncertainty 2.6\u00a0ms',
      'speaks of its own clips, not of other days',
    ]);
  });

  it('says nothing of an uncertainty that a figure does not have', () => {
    expect(entryRow(site(), frames).details).toEqual([]);
    expect(entryOf(site(), frames).budget).toBeUndefined();
  });

  it('keeps what the figure said before, until the day of the entry that moved it, with the way there', () => {
    expect(entryRow(site(), total).earlier).toEqual([
      { text: '251 ± 8 ms', until: '3 May 2026', path: '/corrections/#2026-05-03-two' },
    ]);
    expect(entryRow(site(), frames).earlier).toEqual([]);
  });

  it('names its readings and the version that computed it', () => {
    expect(entryOf(site(), total)).toMatchObject({
      anchor: 'total-a',
      basis: '20 readings in 2 runs, 1 excluded',
      analysis: '2',
      budget: { total: { uncertainty: '2.6 ms' } },
    });
  });
});

describe('the page of a session', () => {
  it('has total and frames with their coverage and readings, and the findings of this session alone', () => {
    const { title, headline, findings, entries, analysis } = sessionPage(site(), 'a');
    expect(title).toBe('Alba One, 25 frames/s');
    expect(headline).toMatchObject({ total, frames, level: '95 %', basis: '20 readings in 2 runs, 1 excluded' });
    expect(findings.map(({ message }) => message)).toEqual(['It drifts.']);
    expect(entries.map(({ figure, anchor }) => [figure.id, anchor])).toEqual([
      ['total/a', 'total'],
      ['frames/a', 'frames'],
    ]);
    expect(analysis).toBe('2');
  });

  it('lists what was set and used, each with the page that it leads to', () => {
    expect(sessionPage(site(), 'a').conditions).toEqual([
      { term: 'Body', says: 'Alba One', path: '/bodies/alba-one/', after: ', firmware 1.40' },
      { term: 'Resolution', says: 'UHD 3840 × 2160' },
      { term: 'Frame rate', says: '25' },
      { term: 'Embedded audio', says: 'Off' },
      { term: 'Rig', says: 'Attic', path: '/rigs/attic/' },
      { term: 'Chain', says: 'Alba One, then Screen' },
      { term: 'Method', says: 'Two timers in one picture', path: '/method/two-timers/' },
      { term: 'Room', says: '21 °C' },
      { term: 'Warm-up', says: '10 min' },
    ]);
  });

  it('offers the readings first, then what describes them', () => {
    expect(sessionPage(site(), 'a').files.map(({ path }) => path)).toEqual([
      'data/sessions/a.csv',
      'data/sessions/a.md',
      'data/bodies/alba-one.md',
      'data/rigs/attic.md',
      'data/displays/screen.md',
      'data/settings.yaml',
    ]);
  });

  it('has no headline without a total', () => {
    expect(sessionPage(site([]), 'a').headline).toBeUndefined();
  });
});
