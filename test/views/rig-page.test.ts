import { expect, it } from 'vitest';
import { rate } from '../../src/model/rate.ts';
import { compileBench } from '../../src/site/compile.ts';
import { rigPage } from '../../src/views/rig-page.ts';
import { bench, session } from '../support/small-bench.ts';

const part = (folder: string, id: string, name: string, description: string) => ({
  id,
  name,
  invented: true,
  description,
  prose: [],
  file: { path: `data/${folder}/${id}.md`, sha256: '0'.repeat(64), bytes: 1 },
});
const hd = (rateId: string) => ({ resolution: 'hd', rate: rateId, 'audio-out': 'on' });
const small = bench([
  session('late', hd('59.94'), { links: ['adapter'], display: 'monitor' }),
  session('early', hd('24'), { links: ['cable'] }),
]);
const [attic] = small.rigs;
if (attic === undefined) throw new Error('the small bench has a rig');
const whole = {
  ...small,
  rigs: [
    { ...attic, links: ['cable'] },
    { ...attic, id: 'barn', name: 'Barn' },
  ],
  links: [part('links', 'cable', 'Cable', 'Ten metres.'), part('links', 'adapter', 'Adapter', '  \n')],
  displays: [
    { ...part('displays', 'screen', 'Screen', 'On the desk.'), refresh: rate(60), sync: 'input' as const },
    { ...part('displays', 'monitor', 'Monitor', 'In the pit.'), refresh: rate(60), sync: 'input' as const },
  ],
};
const site = compileBench(whole);

const note = (text: string, file: string) => ({ text, file, illustrations: [] });

it('describes links, then displays, says which are the rig’s own, and leaves out what has no description', () => {
  expect(rigPage(site, 'attic').described).toEqual([
    { name: 'Cable', note: note('Ten metres.', 'data/links/cable.md'), isOwn: true },
    { name: 'Screen', note: note('On the desk.', 'data/displays/screen.md'), isOwn: true },
    { name: 'Monitor', note: note('In the pit.', 'data/displays/monitor.md'), isOwn: false },
  ]);
});

it('lists the sessions taken on it in the order of their settings, with what they share said once', () => {
  const { sessions, shared } = rigPage(site, 'attic');
  expect(sessions.map(({ id }) => id)).toEqual(['early', 'late']);
  expect(sessions[0]?.label).toContain('24 frames/s');
  expect(sessions[1]?.label).toContain('59.94 frames/s');
  expect(shared).toContain('Alba One');
  expect(rigPage(site, 'barn').sessions).toEqual([]);
});

it('names its own file and one for each part of its chain', () => {
  expect(rigPage(site, 'attic').files.map(({ path }) => path)).toEqual([
    'data/rigs/attic.md',
    'data/links/cable.md',
    'data/links/adapter.md',
    'data/displays/screen.md',
    'data/displays/monitor.md',
  ]);
});
