/** That every claim and every number leads to its entry, and that every entry says all that a reader needs to check it. */
import { describe, expect, inject, it } from 'vitest';
import { describeCoverageTable } from '../../src/views/coverage.ts';
import { describeEntry } from '../../src/views/entry.ts';
import { inWordsOf } from '../../src/register/kinds.ts';
import { describeBasis } from '../../src/register/provenance.ts';
import type { Figure, Register } from '../../src/register/register.ts';
import { readBuiltSite } from '../support/built-site.ts';
import { attributeOf, elementsOf, textOf, type Element } from '../support/html.ts';
import { openCopy } from '../support/project-copy.ts';

const project = openCopy(inject('builtProject'));
const site = readBuiltSite(project.dist);
const register = JSON.parse(site.bytes('figures.json').toString('utf8')) as Register;
const byId = new Map(register.figures.map((figure) => [figure.id, figure]));

function bare(text: string): string {
  return text.replace(/\s+/gu, ' ').trim();
}

it('every result of the coverage bench stands in its row', () => {
  const rows = site
    .page('/coverage/')
    .elements.filter(({ tagName }) => tagName === 'tbody')
    .flatMap((body) => elementsOf(body, ({ tagName }) => tagName === 'tr'));
  const printed = rows.map((row) =>
    elementsOf(row, ({ tagName }) => tagName === 'td').map((cell) => bare(textOf(cell))),
  );
  expect(printed).toEqual(
    describeCoverageTable().rows.map((row) => [
      row.coverage,
      `± ${row.halfWidth}`,
      row.textbookCoverage,
      `± ${row.textbookHalfWidth}`,
      row.differenceCoverage,
    ]),
  );
  expect(printed.length).toBeGreaterThan(5);
});

describe('a claim', () => {
  const claims = site.pages.flatMap((page) =>
    page.elements
      .filter((element) => attributeOf(element, 'data-claim') !== undefined)
      .map((element) => ({ page, element })),
  );

  it('leads to the entry of the figure that it rests on', () => {
    expect(claims.length).toBeGreaterThanOrEqual(5);
    const astray = claims.filter(({ page, element }) => {
      const { pathname, hash } = new URL(attributeOf(element, 'href') ?? '', `https://site.invalid${page.path}`);
      const target = site.page(pathname).byId.get(hash.slice(1));
      return (
        target === undefined ||
        !elementsOf(target).some((one) => attributeOf(one, 'data-entry') === attributeOf(element, 'data-claim'))
      );
    });
    expect(astray.map(({ page, element }) => `${page.path} ${textOf(element)}`)).toEqual([]);
  });
});

/** Text of the elements that entries stand in, once each. */
const texts = new Map<Element, string>();
function wordsOf(element: Element): string {
  const known = texts.get(element) ?? bare(textOf(element));
  texts.set(element, known);
  return known;
}

/** What the entry of a figure should say and does not. */
function wanting(figure: Figure): readonly string[] {
  const { id, entry, text, label, components = [], sources, kind } = figure;
  const [path = '', anchor = ''] = entry.split('#');
  const page = site.page(path);
  const target = page.byId.get(anchor);
  const main = page.elements.find(({ tagName }) => tagName === 'main');
  if (target === undefined || main === undefined) return [`${id}: has no entry`];
  const own = wordsOf(target);
  // An entry on a page of its group stands by itself; those of a session, and counts, share with their page what they rest on.
  const all = path.startsWith('/figures/') ? own : wordsOf(main);
  const isCount = kind === 'count';
  const needs: readonly (readonly [what: string, found: boolean])[] = [
    ['what it is', own.includes(bare(label))],
    ['its text', own.includes(bare(text))],
    ['the formula in words', all.includes(bare(inWordsOf(figure)))],
    ['its interval', describeEntry(figure).every((line) => own.includes(bare(line)))],
    ['how many readings and runs', isCount || all.includes(describeBasis(figure))],
    ['its components', components.every(({ name }) => all.includes(name))],
    ['its files and their checksums', sources.every(({ file, sha256 }) => all.includes(file) && all.includes(sha256))],
    ['the version of the analysis', all.toLowerCase().includes(`version ${register.analysis}`)],
    [
      'how to recompute it alone',
      isCount ? own.includes(id) && all.includes('npm run figures -- ID') : own.includes(`npm run figures -- ${id}`),
    ],
  ];
  return needs.filter(([, found]) => !found).map(([what]) => `${id}: ${what}`);
}

describe('the entry of a figure', () => {
  it('says what it is of, its interval and n, formula, components, files, version, and how to recompute it', () => {
    expect(register.figures.length).toBeGreaterThan(600);
    expect(new Set(register.figures.map(({ kind }) => kind)).size).toBeGreaterThan(15);
    expect(register.figures.flatMap(wanting)).toEqual([]);
  });

  it('can be recomputed with the command that it gives', () => {
    const ids = ['total/orrin-uhd24-a', register.figures.find(({ kind }) => kind === 'difference')?.id ?? ''];
    for (const id of ids) {
      const { code, stdout } = project.run('figures', [id]);
      expect({ code, figures: (JSON.parse(stdout) as Register).figures }).toEqual({ code: 0, figures: [byId.get(id)] });
    }
  });
});
