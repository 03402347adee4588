/** That everything committed has its page, and what no page may hold. */
import { gzipSync } from 'node:zlib';
import { describe, expect, inject, it } from 'vitest';
import type { Register } from '../../src/register/register.ts';
import { attributeOf, elementsOf, hasClass, nodesOf, parsePage, textOf, type Node } from '../support/html.ts';
import { readBuiltSite, type Page } from '../support/built-site.ts';
import { openCopy } from '../support/project-copy.ts';
import { projectFiles } from '../support/project-files.ts';

const project = openCopy(inject('builtProject'));
const site = readBuiltSite(project.dist);
const register = JSON.parse(site.bytes('figures.json').toString('utf8')) as Register;

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
] as const;

const INDEXES = [
  '/',
  '/bodies/',
  '/chain/',
  '/comparison/',
  '/corrections/',
  '/coverage/',
  '/data/',
  '/guide/',
  '/method/',
  '/recompute/',
  '/reports/',
  '/rigs/',
];

describe('the pages', () => {
  it.each(KINDS_OF_PAGE)('are one for every committed %s', (_kind, folder, ending, section) => {
    const ids = idsIn(folder, ending);
    expect(ids.length).toBeGreaterThan(1);
    const expected = ids.map((id) => `/${section}/${id}/`);
    expect(
      site.pages.map(({ path }) => path).filter((path) => path.startsWith(`/${section}/`) && path !== `/${section}/`),
    ).toEqual(expected.sort());
  });

  it('are those and the indexes, and nothing else', () => {
    const ofFiles = KINDS_OF_PAGE.flatMap(([, folder, ending, section]) =>
      idsIn(folder, ending).map((id) => `/${section}/${id}/`),
    );
    const ofEntries = register.figures.flatMap(({ entry }) => /^\/figures\/[^/]+\//.exec(entry) ?? []);
    expect(new Set(ofEntries).size).toBeGreaterThan(5);
    expect(site.pages.map(({ path }) => path).sort()).toEqual([...ofFiles, ...INDEXES, ...new Set(ofEntries)].sort());
  });
});

const EVERY_PAGE = site.pages.map((page) => [page.path, page] as const);

/** What a computation that went wrong leaves behind. Case matters: infinity and ∞ are words. */
const LEFTOVER = /NaN|undefined|Infinity|\[object |\$\{/;

/** Every text node and attribute value of a page, with where it stands. What is shown as code holds braces by right. */
function wordsOf({ html }: Page): readonly string[] {
  return nodesOf(parsePage(html)).flatMap((node) => [
    ...('value' in node && !isCode(node) ? [node.value] : []),
    ...('attrs' in node ? node.attrs.map(({ name, value }) => `${name}="${value}"`) : []),
  ]);
}

function isCode(node: Node): boolean {
  return 'parentNode' in node && node.parentNode?.nodeName === 'code';
}

describe('no page holds', () => {
  it.each(EVERY_PAGE)('a leftover of a failed computation: %s', (_path, page) => {
    const words = wordsOf(page);
    expect(words.length).toBeGreaterThan(50);
    expect(words.filter((word) => LEFTOVER.test(word))).toEqual([]);
  });

  it.each(EVERY_PAGE)('an empty link, heading, caption or cell head: %s', (_path, { elements }) => {
    const worded = elements.filter(({ tagName }) =>
      ['a', 'h1', 'h2', 'h3', 'caption', 'figcaption', 'summary', 'title', 'th', 'dt', 'dd'].includes(tagName),
    );
    expect(worded.length).toBeGreaterThan(8);
    expect(worded.filter((element) => textOf(element).trim() === '').map(({ tagName }) => tagName)).toEqual([]);
    expect(elements.filter((element) => element.tagName === 'a' && !attributeOf(element, 'href'))).toEqual([]);
  });

  it.each(EVERY_PAGE)('an id twice, or a reference to an id that is not there: %s', (_path, { elements, byId }) => {
    const ids = elements.flatMap((element) => attributeOf(element, 'id') ?? []);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    const references = elements.flatMap((element) =>
      ['aria-labelledby', 'aria-describedby', 'aria-controls', 'for', 'headers'].flatMap(
        (name) => attributeOf(element, name)?.split(/\s+/) ?? [],
      ),
    );
    expect(references.filter((id) => !byId.has(id))).toEqual([]);
  });

  it.each(EVERY_PAGE)('a script, an inline event handler, a style attribute or a frame: %s', (path, { elements }) => {
    expect(
      elements
        // What the one page with a script may hold is told in recompute.test.ts.
        .filter(({ tagName }) => tagName !== 'script' || path !== '/recompute/')
        .filter(({ tagName }) => ['script', 'style', 'iframe', 'object', 'embed', 'base'].includes(tagName))
        .map(({ tagName }) => tagName),
    ).toEqual([]);
    const attributes = elements.flatMap(({ attrs }) => attrs);
    expect(
      attributes.filter(({ name, value }) => name === 'style' || /^on/i.test(name) || /^\s*javascript:/i.test(value)),
    ).toEqual([]);
  });
});

describe('every page', () => {
  it.each(EVERY_PAGE)('has a content policy before anything that it governs: %s', (path, { elements }) => {
    const governed = elements.findIndex(({ tagName }) => ['link', 'img', 'svg', 'body'].includes(tagName));
    const policy = elements.findIndex((element) => attributeOf(element, 'http-equiv') === 'Content-Security-Policy');
    expect(policy).toBeGreaterThan(0);
    expect(policy).toBeLessThan(governed);
    const content = attributeOf(elements[policy]!, 'content') ?? '';
    expect(content).toContain("default-src 'none'");
    expect(content).not.toMatch(/unsafe|https?:|\*/);
    expect(content.includes('script-src')).toBe(path === '/recompute/');
  });

  it.each(EVERY_PAGE)('says that its data are invented: %s', (_path, { elements }) => {
    const notices = elements.filter((element) => hasClass(element, 'invented'));
    expect(notices.map((notice) => textOf(notice).trim())).toEqual([expect.stringMatching(/\binvented\b/)]);
  });

  it.each(EVERY_PAGE)('has one main heading, one title of its own and a language: %s', (path, { elements }) => {
    expect(elements.filter(({ tagName }) => tagName === 'h1')).toHaveLength(1);
    expect(elements.filter((element) => element.tagName === 'html' && attributeOf(element, 'lang'))).toHaveLength(1);
    const titleOf = (page: Page): string => textOf(page.elements.find(({ tagName }) => tagName === 'title')!);
    const title = titleOf(site.page(path));
    expect(site.pages.filter((page) => titleOf(page) === title).map((page) => page.path)).toEqual([path]);
  });

  it.each(EVERY_PAGE.filter(([path]) => path.startsWith('/reports/') && path !== '/reports/'))(
    'that is a report is at most 60 KB gzipped: %s',
    (_path, { html }) => {
      const bytes = gzipSync(html).length;
      expect(bytes).toBeGreaterThan(1000);
      expect(bytes).toBeLessThanOrEqual(60 * 1024);
    },
  );
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
