import { expect, it } from 'vitest';
import { estimateSession, type Estimate } from '../../src/analysis/estimate.ts';
import type { SessionInput } from '../../src/analysis/session-input.ts';
import { entryGroups } from '../../src/register/entry-groups.ts';
import { compileBench } from '../../src/site/compile.ts';
import { entriesPage } from '../../src/views/entries-page.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const readings = [300, 310, 305, 296].map((ms, index) => reading(2 + index, ms));
const of = (id: string, rate: string, audio: string) =>
  session(id, { resolution: 'hd', rate, 'audio-out': audio }, { readings });
const site = compileBench(bench([of('a', '24', 'off'), of('b', '24', 'on'), of('c', '59.94', 'off')]));
const groups = entryGroups(site.register.figures);
const page = (name: string) => entriesPage(site, name);

it('a page holds what one session of a body is compared with, under the name of the session', () => {
  const { title, section, entries } = page('body-alba-one/b');
  expect([title, section]).toEqual(['Alba One: what its settings do', expect.stringMatching(/^Alba One, .*\(b\)$/)]);
  const ids = entries.map(({ entry: { figure } }) => figure.id);
  expect(ids).toContain('difference/b/a');
  expect(ids).toContain('cost/b');
  expect(ids.filter((id) => site.figure(id)?.of['session'] !== 'b')).toEqual([]);
});

it('inputs and files stand once for all figures that rest on the same', () => {
  const { entries, sources } = page('body-alba-one/b');
  expect(entries.length).toBeGreaterThan(2);
  expect(sources).toHaveLength(1);
  expect(new Set(entries.map(({ source }) => source))).toEqual(new Set(['sources-1']));
  expect(sources[0]?.inputs.map(({ path }) => path).toSorted()).toEqual(['/sessions/a/', '/sessions/b/']);
  for (const { entry } of entries)
    expect(sources[0]?.files.map(({ file }) => file)).toEqual(
      expect.arrayContaining(site.figure(entry.figure.id)!.sources.map(({ file }) => file)),
    );
});

it('a group leads to its sections, and they lead back', () => {
  const { sections, up } = page('body-alba-one');
  expect(up).toBeUndefined();
  expect(sections.map(({ path }) => path)).toContain('/figures/body-alba-one/b/');
  expect(sections.map(({ title }) => title)).toContain(page('body-alba-one/b').section);
  expect(page('body-alba-one/b').up).toBe('/figures/body-alba-one/');
});

it('every entry is found at the address that its figure names', () => {
  for (const [name, group] of groups)
    for (const figure of group.figures) expect(figure.entry.startsWith(`/figures/${name}/#`)).toBe(true);
});

it('lists of more inputs than anybody reads are told by their numbers, and where they stand', () => {
  const many = Array.from({ length: 101 }, (_, index) => of(`s${index}`, '24', 'off'));
  // all are alike, so that one estimate is that of each
  let estimate: Estimate | undefined;
  const estimator = (input: SessionInput): Estimate => (estimate ??= estimateSession(input));
  const large = compileBench(bench([...many, of('on', '24', 'on')]), { estimator });
  const sources = [...entryGroups(large.register.figures).keys()].flatMap((name) => entriesPage(large, name).sources);
  for (const { inputs } of sources) expect(inputs.length).toBeLessThanOrEqual(100);
  const told = sources.filter(({ instead }) => instead !== undefined);
  expect(told.map(({ inputs, files }) => inputs.length + files.length)).toEqual(told.map(() => 0));
  expect(told[0]?.instead).toMatch(
    /^10[12] figures of \d+ files\. Each to the last digit stands on the page of its session; /,
  );
});
