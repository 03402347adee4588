/** What a number on a page may be, by the mark of the element that it stands in; and whether it is that. */
import { describeSpread, type Site } from './site-facts.ts';
import type { PrintedNumber } from './numbers.ts';
import { attributeOf, textOf, type Element } from '../verify/html.ts';

/** Where a number was found. */
export interface Found {
  readonly number: PrintedNumber;
  /** Site path of the page. */
  readonly page: string;
  /** Sessions, bodies and rigs to which the heads of its row and column lead, in a table. */
  readonly heads: readonly string[];
}

/** Whether a number is what a mark says, by the value of the mark. */
type Mark = (value: string, found: Found, site: Site) => boolean;

const ofFigure: Mark = (id, { number, heads }, site) =>
  site.says(id, number) && heads.every((record) => site.isOf(id, record));

const MARKS: Readonly<Record<string, Mark>> = {
  // The text of a figure, leading to its entry; the entry itself; what stands in it.
  'data-figure': ofFigure,
  'data-entry': ofFigure,
  'data-of-figure': ofFigure,
  // Words of an author that were held to a figure when the site was compiled.
  'data-claim': (id, _found, site) => site.isFigure(id),
  // From these figures and files.
  // A table may name the sources of all its cells: those of one are of what the heads of its row and column say.
  'data-from': (sources, { number, heads }, site) =>
    sources
      .split('\n')
      .some((source) => heads.every((record) => site.isOf(source, record)) && site.says(source, number)),
  'data-finding': (rule, { number }, site) => site.findingSays(rule, number),
  'data-recorded': (_id, { number }, site) => site.ledgerSays(number),
  'data-simulated': (command, { number }, site) => command === 'npm run coverage' && site.coverageSays(number),
  // Meant as they stand: from elsewhere, chosen, or an example for authors.
  'data-quoted': (from) => from.trim() !== '',
  'data-setting': () => true,
  'data-authored': (_value, { page }) => /^\/(?:guide|documentation)\//.test(page),
};

/** Whether an element, or one around it, is marked as something that the number is. */
export function isAccounted(within: readonly Element[], found: Found, site: Site): boolean {
  return within.some((element) =>
    element.attrs.some(({ name, value }) => {
      const mark = Object.hasOwn(MARKS, name) ? MARKS[name] : undefined;
      return mark?.(value, found, site) === true && !isForged(element, site);
    }),
  );
}

/** A link to a figure prints the figure's own text. */
function isForged(element: Element, site: Site): boolean {
  const id = attributeOf(element, 'data-figure') ?? attributeOf(element, 'data-entry');
  return id !== undefined && describeSpread(textOf(element)) !== site.textOf(id);
}
