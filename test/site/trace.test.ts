/** That every number on the pages which came from data has a trace, and that every entry says all that a reader needs to check it. */
import { describe, expect, inject, it } from 'vitest';
import { describeBudget } from '../../src/views/budget.ts';
import { describeCoverageTable } from '../../src/views/coverage.ts';
import { describeEntry } from '../../src/views/entry.ts';
import { inWordsOf } from '../../src/register/kinds.ts';
import { describeBasis } from '../../src/register/provenance.ts';
import type { Figure, Register } from '../../src/register/register.ts';
import { readBuiltSite, type Page } from '../support/built-site.ts';
import { attributeOf, elementsOf, hasClass, textOf, type Element, type Node } from '../support/html.ts';
import { openCopy } from '../support/project-copy.ts';
import { projectFiles } from '../support/project-files.ts';

const project = openCopy(inject('builtProject'));
const site = readBuiltSite(project.dist);
const register = JSON.parse(site.bytes('figures.json').toString('utf8')) as Register;
const byId = new Map(register.figures.map((figure) => [figure.id, figure]));
const ledger = projectFiles('content/ledger')
  .map((path) => project.read(path))
  .join('\n');
const findings = register.findings.flatMap(({ message, hint }) => [message, hint]).map(bare);

/** A number with a unit of latency, a share, a multiple, or an uncertainty. */
const NUMBER = /\d(?:[\d.,]*\d)?\s?(?:ms\b|frames?\b(?!\s?\/|\sa second|-)|%|×(?!\s*\d))|±\s?\d/u;
/** The level of coverage and that of a test are conventions, which every page states in these words. */
const CONVENTION = /\b(?:95|5)\s%/gu;

interface Found {
  readonly page: Page;
  readonly text: string;
  /** From the page's main element down to the one that holds the text. */
  readonly within: readonly Element[];
}

function bare(text: string): string {
  return text.replace(/\s+/gu, ' ').trim();
}

function textsOf(page: Page): readonly Found[] {
  const walk = (node: Node, within: readonly Element[]): readonly Found[] => {
    if (node.nodeName === '#text' && 'value' in node) return [{ page, text: bare(node.value), within }];
    const here = 'tagName' in node ? [...within, node] : within;
    return 'childNodes' in node ? node.childNodes.flatMap((child) => walk(child, here)) : [];
  };
  return page.elements.filter(({ tagName }) => tagName === 'main').flatMap((main) => walk(main, []));
}

/** Everything that an entry and its budget say of a figure. */
const saidOf = new Map<string, ReadonlySet<string>>();
function said(figure: Figure): ReadonlySet<string> {
  const known = saidOf.get(figure.id);
  if (known !== undefined) return known;
  const { rows, total, corrections } = describeBudget(figure);
  const lines = [
    figure.text,
    figure.label,
    inWordsOf(figure),
    ...describeEntry(figure),
    describeBasis(figure),
    corrections.join(' '),
    total.expanded,
    total.uncertainty,
    ...rows.flatMap(({ uncertainty, share }) => [uncertainty, share]),
  ];
  const all = new Set(lines.map(bare));
  saidOf.set(figure.id, all);
  return all;
}

/** The published results of the coverage bench. */
const coverage = new Set(
  describeCoverageTable()
    .rows.flatMap((row) => [
      row.coverage,
      `± ${row.halfWidth}`,
      row.textbookCoverage,
      `± ${row.textbookHalfWidth}`,
      row.differenceCoverage,
    ])
    .map(bare),
);

function offers(page: Page, file: string): boolean {
  return page.elements.some(
    (element) => element.tagName === 'a' && (attributeOf(element, 'href') ?? '').endsWith(`/${file}`),
  );
}

/** Of what is marked with an attribute: whether it is what it says to be. */
type Trace = (value: string, found: Found) => boolean;

const TRACES: Readonly<Record<string, Trace>> = {
  'data-figure': (id, { text }) => byId.get(id)?.text === text,
  'data-entry': (id, { text }) => byId.get(id)?.text === text,
  // Its words, not the figure's: that they hold was checked when it was built.
  'data-claim': (id) => byId.has(id),
  // What an entry says of its figure, beside the figure itself or a way to it.
  'data-of-figure': (id, { page, text, within }) => {
    const figure = byId.get(id);
    const isEarlier = within.some(({ tagName }) => tagName === 'del') && ledger.includes(text);
    const leadsOn = page.elements.some(
      (element) => attributeOf(element, 'data-entry') === id || attributeOf(element, 'data-figure') === id,
    );
    return figure !== undefined && leadsOn && (isEarlier || said(figure).has(text));
  },
  // To the last digit, for whoever follows a formula: each number is one of the figure's own.
  'data-exact': (id, { text }) => {
    const figure = byId.get(id);
    if (figure === undefined) return false;
    const { value, interval, components = [] } = figure;
    const own = components.filter(({ shared }) => shared === null).map(({ standardUncertainty: u }) => u);
    const exact = new Set([
      value,
      interval?.low,
      interval?.high,
      Math.hypot(...own),
      ...components.map(({ standardUncertainty: u }) => u),
    ]);
    const numbersIn = text
      .replace(/\.$/, '')
      .split(/[\s,()]+/)
      .filter((word) => /^-?\d/.test(word));
    return numbersIn.length > 0 && numbersIn.every((word) => exact.has(Number(word)));
  },
  'data-recorded': (_id, { text }) => ledger.includes(text),
  'data-finding': (_rule, { text }) => findings.some((finding) => text.includes(finding)),
  // From a file that the page offers, as it stands there.
  'data-stated': (file, { page }) => offers(page, file),
  // Of a rig that the page describes, by its file; or by a command that the page names.
  'data-simulated': (by, { page, text }) =>
    by.startsWith('npm run ')
      ? coverage.has(text) && page.elements.some((element) => element.tagName === 'code' && textOf(element) === by)
      : offers(page, by),
  'data-quoted': (from) => from !== '',
  'data-setting': () => true,
  'data-authored': (_value, { page }) => page.path === '/guide/',
};

function isTraced(found: Found): boolean {
  return found.within.some((element) => {
    // Drawings say in words what they draw and are tested by themselves; commands are no statements.
    if (
      element.tagName === 'svg' ||
      element.tagName === 'pre' ||
      element.tagName === 'code' ||
      (element.tagName === 'table' && hasClass(element, 'readings'))
    )
      return true;
    return Object.entries(TRACES).some(([name, trace]) => {
      const value = attributeOf(element, name);
      return value !== undefined && trace(value, found);
    });
  });
}

const numbers = site.pages.flatMap(textsOf).filter(({ text }) => NUMBER.test(text.replace(CONVENTION, '')));
const tell = ({ page, text, within }: Found): string =>
  `${page.path} ${within
    .slice(-3)
    .map(({ tagName }) => tagName)
    .join(' > ')}: ${text.slice(0, 160)}`;

describe('a number that came from data', () => {
  it('is looked for on every page, and found by the thousand', () => {
    expect(site.pages.length).toBeGreaterThan(60);
    expect(numbers.length).toBeGreaterThan(4000);
    const kinds = Object.keys(TRACES).filter((name) =>
      numbers.some(({ within }) => within.some((element) => attributeOf(element, name) !== undefined)),
    );
    expect(kinds).toEqual(
      expect.arrayContaining([
        'data-figure',
        'data-entry',
        'data-of-figure',
        'data-finding',
        'data-stated',
        'data-recorded',
      ]),
    );
  });

  it('has a trace, and is what the register says', () =>
    expect(numbers.filter((found) => !isTraced(found)).map(tell)).toEqual([]));

  it('stands in the row of the coverage bench to which it belongs', () => {
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

  it('is told from other text', () => {
    expect(['307.6 ms', '± 7.1', '7.4 frames', '48 %', '1.4×'].filter((text) => !NUMBER.test(text))).toEqual([]);
    expect(
      ['59.94 frames/s', '25 frames a second', '1920 × 1080', 'UHD 3840 × 2160, frame-count', '2026-04-20'].filter(
        (text) => NUMBER.test(text),
      ),
    ).toEqual([]);
  });
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
