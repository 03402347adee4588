/**
 * That every claim and every number leads to its entry, and that every entry says all that a reader needs to check it.
 *
 * What an entry has to say is worked out here, from the published register, the files and the rules of rounding: of
 * `src` only the reader of built pages is used.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, inject, it } from 'vitest';
import type { Page } from '../../src/verify/built-site.ts';
import { attributeOf, bare, elementsOf, hasClass, nodesOf, textOf, type Element } from '../../src/verify/html.ts';
import { demonstrationSite } from '../support/demonstration-site.ts';
import { openCopy } from '../support/project-copy.ts';
import { PROJECT } from '../support/project-files.ts';
import { readPublishedRegister } from '../support/published-register.ts';

interface Component {
  readonly name: string;
  readonly standardUncertainty: number;
}
interface Figure {
  readonly id: string;
  readonly kind: string;
  readonly label: string;
  readonly text: string;
  readonly entry: string;
  readonly unit: string;
  readonly value: number;
  readonly limits?: { readonly low: number; readonly high: number };
  readonly standardUncertainty?: number;
  readonly interval?: { readonly low: number; readonly high: number; readonly level: number };
  readonly components?: readonly Component[];
  readonly readings: number;
  readonly runs: number;
  readonly sources: readonly { readonly file: string; readonly sha256: string }[];
}

const project = openCopy(inject('builtProject'));
const site = demonstrationSite();
const register = readPublishedRegister<Figure>(site.bytes('figures.json').toString('utf8'));
const byId = new Map(register.figures.map((figure) => [figure.id, figure]));

const NUMBER = /[−-]?\d+(?:\.\d+)?(?:e[−-]?\d+)?/g;
/** The numbers that a text prints, as printed. */
const printedIn = (text: string): readonly string[] => text.match(NUMBER) ?? [];
const toNumber = (printed: string): number => Number(printed.replaceAll('−', '-'));
const significantDigits = (printed: string): number => printed.replace(/^[−\-0.]+|\./g, '').length;

/** Whether a printed number is the exact one, rounded to the places that it shows. */
function rounds(printed: string | undefined, exact: number): boolean {
  if (printed === undefined) return false;
  const places = /\.(\d+)/.exec(printed)?.[1]?.length ?? 0;
  // half a unit of the last place, and what binary fractions are off by
  return Math.abs(toNumber(printed) - exact) <= 0.5 * 10 ** -places + 1e-9 * Math.abs(exact);
}

/** Whether a printed number is the exact one to two significant digits, as uncertainties are (GUM 7.2.6). */
const roundsToTwo = (printed: string | undefined, exact: number): boolean =>
  printed !== undefined &&
  toNumber(printed) === Number(exact.toPrecision(2)) &&
  (exact === 0 || exact >= 10 || significantDigits(printed) === 2);

/** Whether a share of a sum is printed in whole per cent. */
const isShare = (printed: string, share: number): boolean =>
  share > 0 && share < 0.005 ? printed === 'under 1 %' : rounds(printedIn(printed)[0], 100 * share);

const texts = new Map<Element, string>();
function wordsOf(element: Element): string {
  const words = texts.get(element) ?? bare(textOf(element));
  texts.set(element, words);
  return words;
}

/** The words of an element with a space between any two that stand beside each other. */
const spaced = (element: Element): string =>
  bare(
    nodesOf(element)
      .flatMap((node) => ('value' in node && node.nodeName === '#text' ? [node.value] : []))
      .join(' '),
  );

interface Entry {
  readonly figure: Figure;
  readonly page: Page;
  /** The element that the address of the entry leads to. */
  readonly target: Element;
  /** What is printed as its value. */
  readonly value: Element | undefined;
  /** Words of the entry, and those with what it refers to on its page. */
  readonly own: string;
  readonly all: string;
}

function entryOf(figure: Figure): Entry {
  const [path = '', anchor = ''] = figure.entry.split('#');
  const page = site.page(path);
  const target = page.byId.get(anchor);
  if (target === undefined) throw new Error(`${figure.entry} is nowhere`);
  const linked = elementsOf(target, ({ tagName }) => tagName === 'a').flatMap((link) => {
    const [, id = ''] = /^#(.+)$/.exec(attributeOf(link, 'href') ?? '') ?? [];
    return page.byId.get(id) ?? [];
  });
  // a page of figures has many entries, each whole; the page of a session, or of all, is the entry of what stands there
  const main = page.elements.filter(({ tagName }) => tagName === 'main' && !path.startsWith('/figures/'));
  return {
    figure,
    page,
    target,
    value: elementsOf(target).find((element) => attributeOf(element, 'data-entry') === figure.id),
    own: wordsOf(target),
    all: [target, ...linked, ...main].map(wordsOf).join(' '),
  };
}

const entries = register.figures.map(entryOf);
/** The ids of the figures of which this does not hold. */
const failing = (holds: (entry: Entry) => boolean): readonly string[] =>
  entries.filter((entry) => !holds(entry)).map(({ figure }) => figure.id);

/** Every element with this attribute, with what it says and the page that it is on. */
const marked = (name: string) =>
  site.pages.flatMap((page) =>
    page.elements.flatMap((element) => {
      const id = attributeOf(element, name);
      return id === undefined ? [] : [{ page, element, id }];
    }),
  );

const leadsToEntry = ({ page, element, id }: { page: Page; element: Element; id: string }): boolean => {
  const { pathname, hash } = new URL(attributeOf(element, 'href') ?? '', `https://site.invalid${page.path}`);
  const target = site.find(pathname)?.byId.get(hash.slice(1));
  return target !== undefined && elementsOf(target).some((inner) => attributeOf(inner, 'data-entry') === id);
};

interface Score {
  readonly coverage: number;
  readonly halfWidthMs: number;
}
interface CoverageResult {
  readonly total: Score;
  readonly textbook: Score;
  readonly difference: Score;
}

it.each([
  ['coverage-table.json', 0, ({ total, textbook, difference }: CoverageResult) => [total, textbook, difference]],
  ['pair-coverage-table.json', 1, ({ difference, textbook }: CoverageResult) => [difference, textbook]],
] as const)('every result in %s stands in its row', (name, table, scoresOf) => {
  const { rows } = JSON.parse(readFileSync(join(PROJECT, 'src/analysis', name), 'utf8')) as {
    readonly rows: readonly CoverageResult[];
  };
  const body = site.page('/coverage/').elements.filter(({ tagName }) => tagName === 'tbody')[table];
  const printed = elementsOf(body!, ({ tagName }) => tagName === 'tr').map((row) =>
    elementsOf(row, ({ tagName }) => tagName === 'td').map(wordsOf),
  );
  expect(rows.length).toBeGreaterThan(5);
  expect(printed).toHaveLength(rows.length);
  rows.forEach((row, at) => {
    const exact = scoresOf(row).flatMap(({ coverage, halfWidthMs }) => [coverage * 100, halfWidthMs]);
    const cells = printed[at] ?? [];
    // of differences of totals only how often they hold
    const form = ['# %', '± # ms', '# %', '± # ms', '# %'].slice(0, table === 0 ? 5 : 4);
    expect(cells.map((cell) => cell.replace(/[\d.]+/, '#'))).toEqual(form);
    cells.forEach((cell, column) => {
      const isRounded = cell.startsWith('±') ? roundsToTwo : rounds;
      expect(isRounded(printedIn(cell)[0], exact[column] ?? NaN), cell).toBe(true);
    });
  });
});

describe('a figure or a claim in the text', () => {
  it('leads to the entry that it rests on', () => {
    expect(marked('data-claim').length).toBeGreaterThanOrEqual(5);
    expect(marked('data-figure').length).toBeGreaterThan(200);
    const astray = [...marked('data-figure'), ...marked('data-claim')].filter((one) => !leadsToEntry(one));
    expect(astray.map(({ page, id }) => `${page.path} ${id}`)).toEqual([]);
  });

  it('is a link that prints what its entry prints', () => {
    const misprinted = marked('data-figure').filter(({ element, id }) => {
      const figure = byId.get(id);
      return !(element.tagName === 'a' && hasClass(element, 'figure') && textOf(element) === figure?.text);
    });
    expect(misprinted.map(({ page, id }) => `${page.path} ${id}`)).toEqual([]);
  });
});

describe('the entry of a figure', () => {
  it('is there for every figure of every kind, and says what it is', () => {
    expect(register.figures.length).toBeGreaterThan(600);
    expect(new Set(register.figures.map(({ kind }) => kind)).size).toBeGreaterThan(15);
    expect(failing(({ value }) => value !== undefined)).toEqual([]);
    expect(failing(({ figure, own }) => own.includes(bare(figure.label)))).toEqual([]);
  });

  it('prints the value of the register, rounded', () => {
    expect(failing(({ figure, value }) => value !== undefined && wordsOf(value).includes(bare(figure.text)))).toEqual(
      [],
    );
    // a verdict is a word, as is what has nothing below it
    const numeric = entries.filter(({ figure }) => printedIn(figure.text).length > 0 && !/verdict$/.test(figure.kind));
    const wrong = numeric.filter(({ figure: { text, unit, value, limits } }) => {
      const [first, second] = printedIn(text);
      if (text.startsWith('below ')) return !(value < toNumber(first ?? ''));
      // limits are rounded away from each other, so that they stay limits
      if (limits !== undefined)
        return !(toNumber(first ?? '') === Math.floor(limits.low) && toNumber(second ?? '') === Math.ceil(limits.high));
      return !rounds(first, unit === 'm' && text.endsWith(' cm') ? 100 * value : value);
    });
    expect(numeric.length).toBeGreaterThan(600);
    expect(wrong.map(({ figure }) => `${figure.id}: ${figure.text} for ${figure.value}`)).toEqual([]);
  });

  it('gives its interval with its level, and its standard uncertainty to two digits (GUM 7.2.6)', () => {
    const withInterval = entries.filter(({ figure }) => figure.interval !== undefined);
    expect(withInterval.length).toBeGreaterThan(200);
    const wrong = withInterval.filter(({ figure, target }) => {
      const { low, high, level } = figure.interval ?? { low: NaN, high: NaN, level: NaN };
      const said = /(\d[\d.]*) % interval (?:from )?(\S+) to ([\d.−]+)( cm)?/.exec(spaced(target));
      const scale = said?.[4] === undefined ? 1 : 100;
      return !(said && rounds(said[1], level * 100) && rounds(said[2], low * scale) && rounds(said[3], high * scale));
    });
    expect(wrong.map(({ figure }) => figure.id)).toEqual([]);
    const uncertain = entries.filter(({ figure }) => figure.standardUncertainty !== undefined);
    expect(uncertain.length).toBeGreaterThan(100);
    const imprecise = uncertain.filter(({ figure, target }) => {
      const [, printed, unit] = /standard uncertainty (\S+)( cm)?/.exec(spaced(target)) ?? [];
      return !roundsToTwo(printed, (figure.standardUncertainty ?? NaN) * (unit === undefined ? 1 : 100));
    });
    expect(imprecise.map(({ figure }) => figure.id)).toEqual([]);
  });

  it('says of how many readings and runs it is', () => {
    const basis = ({ readings, runs }: Figure): string =>
      `${readings} reading${readings === 1 ? '' : 's'} in ${runs} run${runs === 1 ? '' : 's'}`;
    expect(failing(({ figure, all }) => figure.kind === 'count' || all.includes(basis(figure)))).toEqual([]);
  });

  it('lists its budget, every share of which is that of the squares (GUM 5.1)', () => {
    expect(failing(({ figure, all }) => (figure.components ?? []).every(({ name }) => all.includes(name)))).toEqual([]);
    const budgets = entries.flatMap(({ figure, target }) => {
      const rows = elementsOf(target, (element) => element.tagName === 'table' && hasClass(element, 'budget'))
        .flatMap((table) => elementsOf(table, ({ tagName }) => tagName === 'tr'))
        .map((row) => elementsOf(row, ({ tagName }) => ['th', 'td'].includes(tagName)).map(wordsOf));
      return rows.length === 0 ? [] : [{ figure, rows }];
    });
    expect(budgets.length).toBeGreaterThan(50);
    const wrong = budgets.flatMap(({ figure, rows }) => {
      const components = figure.components ?? [];
      const sum = components.reduce((all, { standardUncertainty: u }) => all + u ** 2, 0);
      return components.flatMap(({ name, standardUncertainty: u }) => {
        const found = rows.some(
          ([first = '', , , printed = '', share = '']) =>
            first.startsWith(name) &&
            roundsToTwo(printedIn(printed)[0], printed.endsWith(' cm') ? 100 * u : u) &&
            isShare(share, u ** 2 / sum),
        );
        return found ? [] : [`${figure.id}: ${name}`];
      });
    });
    expect(wrong).toEqual([]);
  });

  it('names its files, with the checksums that they have', () => {
    const digests = new Map<string, string>();
    const digestOf = (file: string): string => {
      const known = digests.get(file);
      const digest =
        known ??
        createHash('sha256')
          .update(readFileSync(join(project.root, file)))
          .digest('hex');
      digests.set(file, digest);
      return digest;
    };
    expect(
      failing(({ figure, all }) =>
        figure.sources.every(({ file, sha256 }) => {
          const digest = digestOf(file);
          return sha256 === digest && all.includes(file) && all.includes(digest);
        }),
      ),
    ).toEqual([]);
    expect(digests.size).toBeGreaterThan(50);
  });

  it('says how it was computed', () => {
    const words: Readonly<Record<string, RegExp>> = {
      mean: /The sum of the readings that count, divided by their number, before any correction\./,
      'standard-deviation': /The root of the summed squared deviations from the mean over n − 1\./,
      frames: /Total latency times the body’s exact frame rate\./,
      difference: / less .*(?:on one rig, so what the rig adds cancels|on different rigs)/,
    };
    const looked = entries.filter(({ figure }) => figure.kind in words);
    expect(new Set(looked.map(({ figure }) => figure.kind)).size).toBe(4);
    const silent = looked.filter(({ figure, own }) => !words[figure.kind]?.test(own));
    expect(silent.map(({ figure }) => figure.id)).toEqual([]);
    const version = new RegExp(`version ${register.analysis}\\b`, 'i');
    expect(failing(({ all }) => version.test(all))).toEqual([]);
  });

  it('can be recomputed with the command that it gives', () => {
    expect(
      failing(({ figure, own, all }) =>
        figure.kind === 'count'
          ? own.includes(figure.id) && all.includes('npm run figures -- ID')
          : own.includes(`npm run figures -- ${figure.id}`),
      ),
    ).toEqual([]);
    const ids = ['total/vennick-uhd25-a', register.figures.find(({ kind }) => kind === 'difference')?.id ?? ''];
    const { code, stdout } = project.run('figures', ids);
    const { figures } = JSON.parse(stdout) as typeof register;
    expect({ code, figures }).toEqual({ code: 0, figures: ids.map((id) => byId.get(id)) });
  });
});
