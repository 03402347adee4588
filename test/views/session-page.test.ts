/**
 * What a session's page prints, of a small bench: words, order, paths and files are written out here, not taken from
 * the code.
 */
import { describe, expect, it } from 'vitest';
import type { Session } from '../../src/model/bench.ts';
import { rate } from '../../src/model/rate.ts';
import { compileBench } from '../../src/site/compile.ts';
import { sessionPage } from '../../src/views/session-page.ts';
import { bench, session } from '../support/small-bench.ts';

const file = (path: string) => ({ path, sha256: '1'.repeat(64), bytes: 7 });
const part = (folder: string, id: string, name: string) => ({
  id,
  name,
  invented: true,
  description: '',
  prose: [],
  file: file(`data/${folder}/${id}.md`),
});
const hd = (rateId: string) => ({ resolution: 'hd', rate: rateId, 'audio-out': 'on' });
const full: Partial<Session> = {
  firmware: '1.40',
  room: '21 °C',
  warmUp: '10 min',
  links: ['splitter', 'converter'],
  display: 'monitor',
};
const small = bench(
  [
    session('b', hd('25'), full),
    session('a', hd('24')),
    session('other', hd('24'), { body: 'brae' }),
    session('c', hd('59.94'), { rate: rate(60_000, 1001) }),
  ],
  {
    links: [part('links', 'splitter', 'Splitter'), part('links', 'converter', 'Converter')],
    displays: [
      { ...part('displays', 'screen', 'Screen'), refresh: rate(60), sync: 'input' },
      { ...part('displays', 'monitor', 'Monitor'), refresh: rate(60), sync: 'input' },
    ],
    methods: [
      {
        id: 'two-timers',
        title: 'Two timers in one picture',
        summary: '',
        date: '2026-01-01',
        parts: [],
        links: [],
        prose: [],
        ownNames: [],
        text: '',
        file: file('content/methods/two-timers.mdx'),
      },
    ],
  },
);
const site = compileBench(small);
const page = sessionPage(site, 'b');

describe('the page of a session', () => {
  it('is called after its body and what sets it apart, and lies between its neighbours of the same body', () => {
    expect([page.title, page.before, page.after]).toEqual([
      'Alba One, 25 frames/s, firmware 1.40, through Splitter and Converter, Monitor',
      { label: 'Alba One, 24 frames/s', path: '/sessions/a/' },
      { label: 'Alba One, 59.94 frames/s', path: '/sessions/c/' },
    ]);
    expect(sessionPage(site, 'a').before).toBeUndefined();
    expect(sessionPage(site, 'c').after).toBeUndefined();
    expect([sessionPage(site, 'other').before, sessionPage(site, 'other').after]).toEqual([undefined, undefined]);
  });

  it('lists what was set and used, in the order of the settings, from body to method', () => {
    expect(page.conditions).toEqual([
      { term: 'Body', says: 'Alba One', path: '/bodies/alba-one/', after: ', firmware 1.40' },
      { term: 'Resolution', says: 'HD 1920 × 1080' },
      { term: 'Frame rate', says: '25' },
      { term: 'Embedded audio', says: 'On' },
      { term: 'Rig', says: 'Attic', path: '/rigs/attic/' },
      { term: 'Chain', says: 'Alba One, then Splitter, then Converter, then Monitor' },
      { term: 'Method', says: 'Two timers in one picture', path: '/method/two-timers/' },
      { term: 'Room', says: '21 °C' },
      { term: 'Warm-up', says: '10 min' },
    ]);
  });

  it('leaves out what a session does not state', () => {
    const { conditions } = sessionPage(compileBench(bench([session('a', { rate: '24', 'audio-out': 'off' })])), 'a');
    expect(conditions.map(({ term }) => term)).toEqual([
      'Body',
      'Frame rate',
      'Embedded audio',
      'Rig',
      'Chain',
      'Method',
    ]);
    expect(conditions[0]).toEqual({ term: 'Body', says: 'Alba One', path: '/bodies/alba-one/' });
    expect(conditions.at(-1)).toEqual({ term: 'Method', says: '' });
  });

  it('names each file that it takes to recompute it once: its own, and those of its rig that it replaces', () => {
    expect(page.files.map(({ path }) => path)).toEqual([
      'data/sessions/b.csv',
      'data/sessions/b.md',
      'data/bodies/alba-one.md',
      'data/rigs/attic.md',
      'data/displays/monitor.md',
      'data/displays/screen.md',
      'data/links/splitter.md',
      'data/links/converter.md',
      'data/settings.yaml',
    ]);
    expect(sessionPage(site, 'a').files.map(({ path }) => path)).toEqual([
      'data/sessions/a.csv',
      'data/sessions/a.md',
      'data/bodies/alba-one.md',
      'data/rigs/attic.md',
      'data/displays/screen.md',
      'data/settings.yaml',
    ]);
  });

  it('heads with the total, the same in frames, its level, and how many readings it rests on', () => {
    expect(page.headline?.total.id).toBe('total/b');
    expect(page.headline?.frames.id).toBe('frames/b');
    expect([page.headline?.level, page.headline?.basis]).toEqual(['95 %', '3 readings in 1 run']);
    // 25 frames/s: a frame lasts 40 ms
    const { total, frames } = page.headline ?? {};
    expect(frames?.value).toBeCloseTo((total?.value ?? 0) / 40, 9);
    expect(frames?.unit).toBe('frames');
  });

  it('has an entry for every figure of the session alone, and its findings', () => {
    const own = site.register.figures.filter(({ of }) => of['session'] === 'b' && of['than'] === undefined);
    expect(page.entries).toHaveLength(own.length);
    expect(own.length).toBeGreaterThan(3);
    expect(page.findings.every(({ where }) => where['session'] === 'b')).toBe(true);
    expect(page.findings.length).toBe(site.register.findings.filter(({ where }) => where['session'] === 'b').length);
  });

  it('refuses a session that is not there', () => {
    expect(() => sessionPage(site, 'nowhere')).toThrow(/nowhere/);
  });
});
