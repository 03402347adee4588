/** That no page grows with the number of sessions: what is too long for one has pages of its own, and nothing is lost. */
import { describe, expect, it } from 'vitest';
import type { Session } from '../../src/model/bench.ts';
import { publishedFiles } from '../../src/register/published-files.ts';
import { settingFamilies } from '../../src/register/comparisons/setting-families.ts';
import { compileBench } from '../../src/site/compile.ts';
import { bodyPage } from '../../src/views/body-page.ts';
import { bodySectionPage, sectionsOfBody } from '../../src/views/body-sections.ts';
import { comparisonPage, comparisonPartPage, comparisonParts } from '../../src/views/comparison-page.ts';
import { dataPage, filesPage, partsOfFiles } from '../../src/views/data-page.ts';
import { MOST_LISTED, MOST_ROWS } from '../../src/views/most-rows.ts';
import { printView } from '../../src/views/printed-page.ts';
import { bench, session } from '../support/small-bench.ts';

const BODIES = ['alba-one', 'brae'] as const;
const CONDITIONS = ['24', '25', '59.94'].flatMap((rate) =>
  ['hd', 'uhd'].flatMap((resolution) => ['off', 'on'].map((audio) => ({ rate, resolution, 'audio-out': audio }))),
);

/** Every body in every condition, so many times over. */
function measured(times: number) {
  const sessions = Array.from({ length: times }, (_none, time) =>
    CONDITIONS.flatMap((settings, place) =>
      BODIES.map((body): Session => session(`${body}-${place}-${time}`, settings, { body })),
    ),
  ).flat();
  return compileBench(bench(sessions));
}

const [few, many] = [measured(1), measured(12)];

/** Of every page that lists sessions of a body, compares bodies or lists files: how long its view is, by its place. */
function lengths(site: ReturnType<typeof measured>): ReadonlyMap<string, number> {
  const views: readonly (readonly [string, unknown])[] = [
    ...BODIES.flatMap((body) => [
      [`/bodies/${body}/`, bodyPage(site, body)] as const,
      ...sectionsOfBody(site, body).map(({ slug, path }) => [path, bodySectionPage(site, body, slug)] as const),
    ]),
    ['/comparison/', comparisonPage(site)],
    ...comparisonParts(site).map((part) => [part.path, comparisonPartPage(site, part)] as const),
    ['/data/', { ...dataPage(site), findings: [] }],
    ...partsOfFiles(site).map((part) => [part.path, filesPage(site, part)] as const),
  ];
  expect(new Set(views.map(([path]) => path)).size).toBe(views.length);
  return new Map(views.map(([path, view]) => [path, printView(view).length]));
}

describe('a bench of few sessions', () => {
  it('has one page for each body, and one for the comparison and the data', () => {
    expect([...lengths(few).keys()]).toEqual(['/bodies/alba-one/', '/bodies/brae/', '/comparison/', '/data/']);
  });
});

describe('a bench of many sessions', () => {
  it('is long enough to try it', () => {
    const pairs = settingFamilies(many.bench).map((family) => family.pairs.length);
    expect(Math.min(...pairs)).toBeGreaterThan(3 * MOST_ROWS);
    expect(publishedFiles(many.bench).length).toBeGreaterThan(MOST_LISTED);
  });

  it('has every pair of settings on one page, and none on more rows than a page holds', () => {
    for (const body of BODIES) {
      const family = settingFamilies(many.bench).find(({ of }) => of['body'] === body);
      const pages = sectionsOfBody(many, body)
        .filter(({ part }) => part === 'settings')
        .map(({ slug }) => bodySectionPage(many, body, slug).pairs?.rows ?? []);
      expect(pages.length).toBeGreaterThan(3);
      expect(Math.max(...pages.map(({ length }) => length))).toBeLessThanOrEqual(MOST_ROWS);
      expect(
        pages
          .flat()
          .map(({ difference: { of } }) => `${of['session']} ${of['than']}`)
          .sort(),
      ).toEqual(family?.pairs.map(({ a, b }) => `${a} ${b}`).sort());
      expect(bodyPage(many, body).settings?.pairs).toEqual([]);
    }
  });

  it('has one session speak for each condition of a body and in each cell, and says so', () => {
    for (const body of BODIES) {
      const [rig] = bodyPage(many, body).rigs;
      expect([rig?.totals.rows.length, rig?.speaking]).toEqual([CONDITIONS.length, true]);
    }
    const cells = comparisonPage(many).grids.flatMap(({ rows }) => rows.flatMap((row) => row.cells));
    expect(cells).toHaveLength(CONDITIONS.length * BODIES.length);
    for (const cell of cells) expect(cell.map(({ words }) => words)).toEqual([expect.stringContaining('one of 12')]);
  });

  it('lists every file once, with its session or with the bench', () => {
    const parts = partsOfFiles(many);
    expect(parts.map(({ slug }) => slug).sort()).toEqual(['alba-one/attic', 'bench', 'brae/attic']);
    expect(parts.flatMap((part) => filesPage(many, part).files.map(({ path }) => path)).sort()).toEqual(
      publishedFiles(many.bench).map(({ path }) => path),
    );
  });

  it('has no page that is longer than what it was divided for', () => {
    // Twelve times the sessions: a page that grew with them would be twelve times as long.
    const [longest, least] = [Math.max(...lengths(many).values()), Math.max(...lengths(few).values())];
    expect(longest).toBeLessThan(3 * least);
  });
});
