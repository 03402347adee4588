/**
 * That every number on the pages is the register's, leads to its entry, and rests on files that are published as they
 * are.
 */
import { hash } from 'node:crypto';
import { describe, expect, inject, it } from 'vitest';
import { readRegister } from '../../src/register/packed-register.ts';
import type { Page } from '../../src/verify/built-site.ts';
import { attributeOf, textOf, type Element } from '../../src/verify/html.ts';
import { checkFiles } from '../../src/verify/files.ts';
import { demonstrationSite } from '../support/demonstration-site.ts';
import { openCopy } from '../support/project-copy.ts';
import { projectFiles } from '../support/project-files.ts';

const project = openCopy(inject('builtProject'));
const site = demonstrationSite();
const register = readRegister(site.bytes('figures.json').toString('utf8'));
const byId = new Map(register.figures.map((figure) => [figure.id, figure]));

interface Found {
  readonly page: Page;
  readonly element: Element;
}
const find = (test: (element: Element) => boolean): readonly Found[] =>
  site.pages.flatMap((page) => page.elements.filter(test).map((element) => ({ page, element })));

const links = find((element) => attributeOf(element, 'data-figure') !== undefined);
const entries = find((element) => attributeOf(element, 'data-entry') !== undefined);
const told = ({ page, element }: Found): string =>
  `${page.path} ${attributeOf(element, 'data-figure') ?? attributeOf(element, 'data-entry')}: ${textOf(element)}`;

describe('the register', () => {
  it('is what the command prints, spelled out', () => {
    const { code, stdout } = project.run('figures');
    expect(code).toBe(0);
    expect(JSON.parse(stdout)).toEqual(register);
  });

  it('has every id once, and a text for each', () => {
    expect(byId.size).toBe(register.figures.length);
    expect(byId.size).toBeGreaterThan(400);
    expect(register.figures.filter(({ text }) => text.trim() === '')).toEqual([]);
  });
});

describe('a figure on a page', () => {
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
    expect(
      raw.filter(
        (path) => hash('sha256', site.bytes(path)) !== hash('sha256', Buffer.from(project.read(path), 'utf8')),
      ),
    ).toEqual([]);
  });

  it('are offered with the checksum and the size that they have', () => {
    const { looked, faults } = checkFiles(site, register);
    expect(looked).toBeGreaterThan(200);
    expect(faults).toEqual([]);
  });
});
