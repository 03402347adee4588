/** The charts of a finished page, as they stand there. */
import { attributeOf, elementsOf, hasClass, parsePage, textOf, bare, type Element } from '../verify/html.ts';

export interface ShownChart {
  readonly id: string;
  /** What stands over it. */
  readonly caption: string;
  /** What its rows share. */
  readonly shared: string;
  /** The drawings, as SVG. */
  readonly wide: string;
  readonly narrow: string;
  /** Whether pictures of it are put out. */
  readonly pictured: boolean;
  /** Figures and files that it is from. */
  readonly from: readonly string[];
}

export interface ShownPage {
  readonly charts: readonly ShownChart[];
  readonly title: string;
  /** What a page answers at its head: a report's summary, the first sentence of a body's advice. */
  readonly answer: string;
}

const CHART =
  /<figure class="plate" id="([\w-]+)"[^>]*\bdata-from="([^"]*)"[^>]*>\s*<figcaption>([\s\S]*?)<\/figcaption>\s*<div class="chart">\s*(<svg[\s\S]*?<\/svg>)\s*(<svg[\s\S]*?<\/svg>)/g;

/** Each chart once, however often the page shows it. */
export function findCharts(html: string): readonly ShownChart[] {
  const found = [...html.matchAll(CHART)].map(([whole, id = '', from = '', caption = '', wide = '', narrow = '']) => {
    const words = parsePage(caption);
    const shared = elementsOf(words, (element) => hasClass(element, 'shared'))
      .map(textOf)
      .join(' ');
    const all = bare(textOf(words));
    const own = bare(shared);
    return {
      id,
      caption: own === '' ? all : all.slice(0, all.length - own.length).trim(),
      shared: own,
      wide,
      narrow,
      pictured: !whole.slice(0, whole.indexOf('>')).includes('data-pictured="no"'),
      from: textOf(parsePage(from)).split('\n').filter(Boolean),
    };
  });
  return [...new Map(found.map((chart) => [chart.id, chart])).values()];
}

/** The head of a page whose card is drawn. */
export function readHead(html: string): Pick<ShownPage, 'title' | 'answer'> {
  const elements = elementsOf(parsePage(html));
  const wordsOf = (test: (element: Element) => boolean): string => {
    const found = elements.find(test);
    return found === undefined ? '' : bare(textOf(found));
  };
  const description = elements.find(
    ({ tagName, attrs }) => tagName === 'meta' && attrs.some(({ value }) => value === 'description'),
  );
  return {
    title: wordsOf(({ tagName }) => tagName === 'h1'),
    answer:
      wordsOf((element) => hasClass(element, 'answer') || hasClass(element, 'standfirst')) ||
      (description && attributeOf(description, 'content')) ||
      '',
  };
}
