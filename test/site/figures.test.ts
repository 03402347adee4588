/** That every number on the pages is the register's, leads to its entry, and rests on files that are published as they are. */
import { describe, expect, inject, it } from 'vitest';
import type { Register } from '../../src/register/register.ts';
import { readBuiltSite, sha256, type Page } from '../support/built-site.ts';
import { attributeOf, elementsOf, hasClass, textOf, type Element } from '../support/html.ts';
import { openCopy } from '../support/project-copy.ts';
import { projectFiles } from '../support/project-files.ts';

const project = openCopy(inject('builtProject'));
const site = readBuiltSite(project.dist);
const register = JSON.parse(site.bytes('figures.json').toString('utf8')) as Register;
const byId = new Map(register.figures.map((figure) => [figure.id, figure]));

interface Found {
  readonly page: Page;
  readonly element: Element;
}
const find = (test: (element: Element) => boolean): readonly Found[] =>
  site.pages.flatMap((page) => page.elements.filter(test).map((element) => ({ page, element })));

const links = find((element) => hasClass(element, 'figure') || attributeOf(element, 'data-figure') !== undefined);
const entries = find((element) => attributeOf(element, 'data-entry') !== undefined);
const told = ({ page, element }: Found): string =>
  `${page.path} ${attributeOf(element, 'data-figure') ?? attributeOf(element, 'data-entry')}: ${textOf(element)}`;

describe('the register', () => {
  it('is what the command prints, byte for byte', () => {
    const { code, stdout } = project.run('figures');
    expect(code).toBe(0);
    expect(stdout).toBe(site.bytes('figures.json').toString('utf8'));
  });

  it('has every id once, and a text for each', () => {
    expect(byId.size).toBe(register.figures.length);
    expect(byId.size).toBeGreaterThan(400);
    expect(register.figures.filter(({ text }) => text.trim() === '')).toEqual([]);
  });

  it('names as sources files with the checksums that they have', () => {
    const sources = register.figures.flatMap((figure) => figure.sources);
    expect(sources.length).toBeGreaterThan(400);
    expect(sources.filter(({ file, sha256: stated }) => sha256(site.bytes(file)) !== stated)).toEqual([]);
  });

  it('names an entry for each figure, and the figure stands there', () => {
    const strayed = register.figures.filter(({ id, entry }) => {
      const [path = '', anchor = ''] = entry.split('#');
      const target = site.page(path).byId.get(anchor);
      return target === undefined || !elementsOf(target).some((element) => attributeOf(element, 'data-entry') === id);
    });
    expect(strayed.map(({ id, entry }) => `${id} is not at ${entry}`)).toEqual([]);
  });
});

describe('a figure on a page', () => {
  it('is a link that names a figure of the register and prints its text', () => {
    expect(links.length).toBeGreaterThan(200);
    expect(
      links
        .filter((link) => {
          const figure = byId.get(attributeOf(link.element, 'data-figure') ?? '');
          return (
            link.element.tagName !== 'a' ||
            !hasClass(link.element, 'figure') ||
            figure === undefined ||
            textOf(link.element) !== figure.text
          );
        })
        .map(told),
    ).toEqual([]);
  });

  it('leads to the entry of that very figure', () => {
    const astray = links.filter(({ page, element }) => {
      const { pathname, hash } = new URL(attributeOf(element, 'href') ?? '', `https://site.invalid${page.path}`);
      const target = site.page(pathname).byId.get(hash.slice(1));
      return (
        target === undefined ||
        !elementsOf(target).some((one) => attributeOf(one, 'data-entry') === attributeOf(element, 'data-figure'))
      );
    });
    expect(astray.map(told)).toEqual([]);
  });

  it('says its coverage and what it rests on when pointed at, where it has an interval', () => {
    const withInterval = links.filter(
      ({ element }) => byId.get(attributeOf(element, 'data-figure') ?? '')?.interval !== undefined,
    );
    expect(withInterval.length).toBeGreaterThan(100);
    expect(
      withInterval.filter(({ element }) => !/95 %.*\breadings?\b/.test(attributeOf(element, 'title') ?? '')).map(told),
    ).toEqual([]);
  });
});

describe('an entry', () => {
  it('stands once for every figure of the register, with its text', () => {
    expect(entries.map(({ element }) => attributeOf(element, 'data-entry')).sort()).toEqual([...byId.keys()].sort());
    expect(
      entries
        .filter(({ element }) => textOf(element) !== byId.get(attributeOf(element, 'data-entry') ?? '')?.text)
        .map(told),
    ).toEqual([]);
  });
});

describe('the raw files', () => {
  const raw = projectFiles('data').filter((path) => path !== 'data/README.md');

  it('are all published, byte for byte', () => {
    expect(site.files.filter((path) => path.startsWith('data/') && path !== 'data/index.html')).toEqual(raw);
    expect(raw.length).toBeGreaterThan(70);
    expect(raw.filter((path) => sha256(site.bytes(path)) !== sha256(Buffer.from(project.read(path), 'utf8')))).toEqual(
      [],
    );
  });

  it('are offered with the checksum and the size that they have', () => {
    const rows = find((element) => element.tagName === 'table' && hasClass(element, 'files')).flatMap(
      ({ page, element }) =>
        elementsOf(element, ({ tagName }) => tagName === 'tr')
          .slice(1)
          .map((row) => ({ page, element: row })),
    );
    expect(rows.length).toBeGreaterThan(140);
    for (const { page, element } of rows) {
      const link = elementsOf(element, ({ tagName }) => tagName === 'a')[0]!;
      const path = new URL(attributeOf(link, 'href') ?? '', `https://site.invalid${page.path}`).pathname.slice(1);
      expect(textOf(link)).toBe(path);
      const bytes = site.bytes(path);
      expect(textOf(elementsOf(element, (one) => hasClass(one, 'mono'))[0]!), path).toBe(sha256(bytes));
      expect(textOf(elementsOf(element, ({ tagName }) => tagName === 'td')[0]!).replace(/\D/g, ''), path).toBe(
        String(bytes.length),
      );
    }
  });
});
