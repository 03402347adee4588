/**
 * That every figure has one entry, which says all that a reader needs to check it, and that whatever prints it leads
 * there.
 */
import { inWordsOf } from '../register/kinds.ts';
import { describeBasis } from '../register/provenance.ts';
import type { Figure, Register } from '../register/register.ts';
import { describeEntry } from '../views/entry.ts';
import type { BuiltSite, Page } from './built-site.ts';
import type { Checked } from './checked.ts';
import { attributeOf, bare, type Element, elementsOf, hasClass, textOf } from './html.ts';

/** Every figure's entry, at the address that the register names. */
export function checkEntries(site: BuiltSite, register: Register): Checked {
  const texts = new Map<Element, string>();
  const wordsOf = (element: Element): string => {
    const known = texts.get(element) ?? bare(textOf(element));
    texts.set(element, known);
    return known;
  };
  const faults = register.figures.flatMap((figure) => {
    const [path = '', anchor = ''] = figure.entry.split('#');
    const page = site.find(path);
    const target = page?.byId.get(anchor);
    const main = page?.elements.find(({ tagName }) => tagName === 'main');
    if (target === undefined || main === undefined) return [`${figure.entry}: ${figure.id} has no entry there`];
    const own = wordsOf(target);
    const listed = (page === undefined ? [] : linkedFrom(target, page)).map(wordsOf).join(' ');
    // An entry on a page of its group stands by itself, but for the list of its files; those of a session, and counts,
    // share with their page what they rest on.
    const all = path.startsWith('/figures/') ? own : wordsOf(main);
    const stands = elementsOf(target).some((element) => attributeOf(element, 'data-entry') === figure.id);
    return [
      ...(stands ? [] : ['its own mark']),
      ...needsOf(figure, register, { own, all: `${all} ${listed}` }).flatMap(([what, found]) => (found ? [] : [what])),
    ].map((what) => `${figure.entry}: the entry of ${figure.id} lacks ${what}`);
  });
  return { looked: register.figures.length, faults };
}

type Need = readonly [what: string, found: boolean];

/** What an entry leads to on its own page: there stands what several rest on. */
function linkedFrom(target: Element, { byId }: Page): readonly Element[] {
  return elementsOf(target, ({ tagName }) => tagName === 'a').flatMap((link) => {
    const [, id = ''] = /^#(.+)$/.exec(attributeOf(link, 'href') ?? '') ?? [];
    const found = byId.get(id);
    return found === undefined || found === target ? [] : [found];
  });
}

function needsOf(
  figure: Figure,
  register: Register,
  { own, all }: { readonly own: string; readonly all: string },
): readonly Need[] {
  const { id, text, label, components = [], sources, kind } = figure;
  const isCount = kind === 'count';
  return [
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
}

interface Printed {
  readonly page: Page;
  readonly element: Element;
}

/** Figures and claims in the text: a link to the entry of that very figure, which prints what the register says. */
export function checkFigureLinks(site: BuiltSite, register: Register): Checked {
  const byId = new Map(register.figures.map((figure) => [figure.id, figure]));
  const marked = (name: string): readonly Printed[] =>
    site.pages.flatMap((page) =>
      page.elements.filter((element) => attributeOf(element, name) !== undefined).map((element) => ({ page, element })),
    );
  const tell = ({ page, element }: Printed, name: string, what: string): string =>
    `${page.path}: ${attributeOf(element, name)}, printed as “${textOf(element)}”, ${what}`;
  const figures = marked('data-figure');
  const claims = marked('data-claim');
  const astray = (name: string) => (one: Printed) => {
    const { pathname, hash } = new URL(attributeOf(one.element, 'href') ?? '', `https://site.invalid${one.page.path}`);
    const target = site.find(pathname)?.byId.get(hash.slice(1));
    const id = attributeOf(one.element, name);
    return target !== undefined && elementsOf(target).some((inner) => attributeOf(inner, 'data-entry') === id)
      ? []
      : [tell(one, name, 'does not lead to its entry')];
  };
  const misprinted = figures.flatMap((one) => {
    const figure = byId.get(attributeOf(one.element, 'data-figure') ?? '');
    const isLink = one.element.tagName === 'a' && hasClass(one.element, 'figure');
    return isLink && figure !== undefined && textOf(one.element) === figure.text
      ? []
      : [tell(one, 'data-figure', 'is not what the register says')];
  });
  return {
    looked: figures.length + claims.length,
    faults: [...misprinted, ...figures.flatMap(astray('data-figure')), ...claims.flatMap(astray('data-claim'))],
  };
}
