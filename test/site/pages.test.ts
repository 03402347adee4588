/** That everything committed has its page, and what no page may hold. */
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { create } from 'fontkitten';
import { describe, expect, inject, it } from 'vitest';
import { readRegister } from '../../src/register/packed-register.ts';
import { attributeOf, elementsOf, hasClass, textOf } from '../../src/verify/html.ts';
import { checkPages } from '../../src/verify/pages.ts';
import { demonstrationSite } from '../support/demonstration-site.ts';
import { openCopy } from '../support/project-copy.ts';
import { projectFiles } from '../support/project-files.ts';

const project = openCopy(inject('builtProject'));
const site = demonstrationSite();
const register = readRegister(site.bytes('figures.json').toString('utf8'));

/** Ids in a folder of the committed project, read off its file names. */
const idsIn = (folder: string, ending: string): readonly string[] =>
  projectFiles(folder)
    .filter((path) => path.endsWith(ending))
    .map((path) => path.slice(folder.length + 1, -ending.length));

const KINDS_OF_PAGE = [
  ['session', 'data/sessions', '.csv', 'sessions'],
  ['body', 'data/bodies', '.md', 'bodies'],
  ['rig', 'data/rigs', '.md', 'rigs'],
  ['method note', 'content/methods', '.mdx', 'method'],
  ['report', 'content/reports', '.mdx', 'reports'],
  ['pair of displays', 'data/display-pairs', '.csv', 'display-pairs'],
] as const;

const INDEXES = [
  '/',
  '/404.html',
  '/bodies/',
  '/chain/',
  '/comparison/',
  '/comparison/carried/',
  '/corrections/',
  '/coverage/',
  '/data/',
  '/documentation/',
  '/glossary/',
  '/guide/',
  '/method/',
  '/recompute/',
  '/reports/',
  '/rigs/',
  '/search/',
  '/sessions/',
];

describe('the pages', () => {
  it.each(KINDS_OF_PAGE)('are one for every committed %s', (_kind, folder, ending, section) => {
    const ids = idsIn(folder, ending);
    expect(ids.length).toBeGreaterThan(1);
    const expected = ids.map((id) => `/${section}/${id}/`);
    const beside = /\/read-aloud\/$/;
    expect(
      site.pages
        .map(({ path }) => path)
        .filter((path) => path.startsWith(`/${section}/`) && path !== `/${section}/` && !beside.test(path)),
    ).toEqual(expected.sort());
  });

  it('of a report lead to its numbers in words that can be spoken', () => {
    const ids = idsIn('content/reports', '.mdx');
    for (const id of ids) {
      const path = `/reports/${id}/read-aloud/`;
      const sheet = site.pages.find((page) => page.path === path);
      expect(
        sheet?.elements.filter((element) => attributeOf(element, 'data-of-figure') !== undefined),
        path,
      ).not.toEqual([]);
      const report = site.pages.find((page) => page.path === `/reports/${id}/`);
      const links = report?.elements.map((element) => attributeOf(element, 'href'));
      expect(links).toContain('read-aloud/');
    }
  });

  it('are all in the site map, but what leads on and what answers for lost addresses', () => {
    const canonical = site.pages.flatMap(({ elements }) =>
      elements
        .filter((element) => element.tagName === 'link' && attributeOf(element, 'rel') === 'canonical')
        .map((element) => attributeOf(element, 'href') ?? ''),
    );
    const listed = [
      ...site
        .bytes('sitemap.xml')
        .toString('utf8')
        .matchAll(/<loc>(.*?)<\/loc>/g),
    ].map(([, to]) => to);
    expect(listed.length).toBeGreaterThan(80);
    expect(listed).toEqual(canonical.sort());
    const [home = ''] = canonical;
    expect(site.pages.filter(({ path }) => !listed.includes(home + path.slice(1))).map(({ path }) => path)).toEqual([
      '/404.html',
    ]);
  });

  it('are described, each in words of its own', () => {
    const words = site.pages
      .filter(({ path }) => path !== '/404.html')
      .map(({ elements }) => elements.find((element) => attributeOf(element, 'name') === 'description'))
      .map((element) => element && attributeOf(element, 'content'));
    expect(words).not.toContain(undefined);
    expect(new Set(words).size).toBe(words.length);
  });

  it('are those and the indexes, and nothing else', () => {
    const ofFiles = KINDS_OF_PAGE.flatMap(([, folder, ending, section]) =>
      idsIn(folder, ending).map((id) => `/${section}/${id}/`),
    );
    const readAloud = idsIn('content/reports', '.mdx').map((id) => `/reports/${id}/read-aloud/`);
    // on a page of their section, where a group has sections; the group's own page then leads to them
    const ofEntries = register.figures.flatMap(({ entry }) =>
      [/^\/figures\/[^#]+/, /^\/figures\/[^/]+\//].flatMap((part) => part.exec(entry)?.[0] ?? []),
    );
    expect(new Set(ofEntries).size).toBeGreaterThan(5);
    const ofDocumentation = projectFiles('src/documentation').map((path) =>
      path.replace(/^src|\.md$/g, '').concat('/'),
    );
    expect(site.pages.map(({ path }) => path).sort()).toEqual(
      [...ofFiles, ...readAloud, ...INDEXES, ...ofDocumentation, ...new Set(ofEntries)].sort(),
    );
  });
});

const EVERY_PAGE = site.pages.map((page) => [page.path, page] as const);

it('no page holds what a failed computation leaves, words that are missing, an id twice, or anything that runs', () => {
  expect(checkPages(site)).toEqual({ looked: site.pages.length, faults: [] });
});

const sum = (paths: readonly string[]): number => paths.reduce((bytes, path) => bytes + site.bytes(path).length, 0);
/** What every page asks for at once, besides its stylesheet; italics and other scripts come where they are printed. */
const FIRST_FONTS = [
  ...new Set(site.pages.flatMap(({ html }) => html.match(/(?<=<link rel="preload"[^>]*)fonts\/[^"]+/g) ?? [])),
];
const everyPageNeeds = gzipSync(site.bytes('site.css')).length + sum(FIRST_FONTS);

describe('every page', () => {
  it.each(EVERY_PAGE)('says that its data are invented: %s', (_path, { elements }) => {
    const notices = elements.filter((element) => hasClass(element, 'invented'));
    expect(notices.map((notice) => textOf(notice).trim())).toEqual([expect.stringMatching(/\binvented\b/)]);
  });

  it.each(EVERY_PAGE)('weighs at most 60 KB on a first visit, with what every page needs: %s', (path, { html }) => {
    const bytes = gzipSync(html).length + everyPageNeeds;
    expect(bytes).toBeGreaterThan(30 * 1024);
    expect(bytes).toBeLessThanOrEqual((LONG.test(path) ? 72 : 60) * 1024);
  });
});

/** Pages of ten charts and more, which weigh more than others. */
const LONG = /^\/(?:bodies\/[^/]+|reports\/stage-screen)\/$/;

it('asks on a first visit for fonts of at most 32 KB, and has 55 KB of them in all', () => {
  expect(sum(FIRST_FONTS)).toBeLessThanOrEqual(32 * 1024);
  const fonts = site.files.filter((path) => path.endsWith('.woff2'));
  expect(fonts).toEqual(expect.arrayContaining(FIRST_FONTS));
  expect(sum(fonts)).toBeLessThanOrEqual(55 * 1024);
});

it('has in its fonts every letter that its pages print and such fonts have', () => {
  const printed = new Set(
    site.pages.flatMap(({ html }) => [...html.replace(/<(head|code|pre)\b.*?<\/\1>|<[^>]*>/gs, '')]),
  );
  const letters = (files: readonly Buffer[]): ReadonlySet<string> =>
    new Set(
      files
        .map((bytes) => create(bytes))
        .flatMap((font) => (font.isCollection ? [] : font.characterSet.map((point) => String.fromCodePoint(point)))),
    );
  for (const [name, from] of [
    ['sans', '@fontsource-variable/source-sans-3/files/source-sans-3'],
    ['serif', '@fontsource-variable/source-serif-4/files/source-serif-4'],
  ] as const) {
    const had = letters(
      ['latin', 'latin-ext', 'greek', 'cyrillic'].map((script) =>
        readFileSync(new URL(import.meta.resolve(`${from}-${script}-wght-normal.woff2`))),
      ),
    );
    const fonts = site.files.filter((path) => new RegExp(`^fonts/${name}(?!-italic).*\\.woff2$`).test(path));
    const has = letters(fonts.map((path) => site.bytes(path)));
    expect(printed.intersection(had).size).toBeGreaterThan(100);
    expect([...printed.intersection(had).difference(has)].filter((letter) => /\S/.test(letter))).toEqual([]);
  }
});

it('marks as said a difference that stands in the verdict of its row, and no other', () => {
  const rows = site
    .page('/comparison/')
    .elements.filter((row) => row.tagName === 'tr' && elementsOf(row).some((cell) => hasClass(cell, 'verdict')));
  const marks = rows.map((row) => {
    const cells = elementsOf(row, ({ tagName }) => tagName === 'td');
    const verdict = textOf(cells.find((cell) => hasClass(cell, 'verdict'))!);
    const isSaid = cells.some((cell) => hasClass(cell, 'said'));
    expect(isSaid, verdict).toBe(verdict.includes(textOf(cells[0]!).trim().replace('−', '')));
    return isSaid;
  });
  expect(marks).toContain(true);
});

describe('a session page', () => {
  const sessions = idsIn('data/sessions', '.csv').map((id) => [id] as const);

  it.each(sessions)('of %s lists every line of its readings file, and strikes out the excluded ones', (id) => {
    const page = site.page(`/sessions/${id}/`);
    const [header = '', ...rows] = project.read(`data/sessions/${id}.csv`).trimEnd().split('\n');
    const excludeAt = header.split(',').indexOf('exclude');
    expect(rows.length).toBeGreaterThanOrEqual(10);
    for (const [index, row] of rows.entries()) {
      const shown = page.byId.get(`line-${index + 2}`);
      expect(shown && hasClass(shown, 'excluded'), row).toBe(row.split(',')[excludeAt] !== '');
      const cells = elementsOf(shown!, ({ tagName }) => tagName === 'td').map(textOf);
      expect(cells, row).toEqual(
        expect.arrayContaining(
          row
            .split(',')
            .slice(0, excludeAt)
            .filter((cell) => cell !== ''),
        ),
      );
    }
  });
});
