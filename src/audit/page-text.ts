/** A built page as a reader reads it: its text, block by block, and what each stretch of it is marked as. */
import { attributeOf, elementsOf, parsePage, textOf, type Element, type Node } from '../verify/html.ts';

export interface Stretch {
  readonly text: string;
  /** The elements that it stands in, the innermost first. */
  readonly within: readonly Element[];
}

/** A paragraph, a cell, a label of a drawing: what is read in one go. Or what is said beside: a tooltip, an alternative text. */
export interface Block {
  readonly stretches: readonly Stretch[];
  /** The unit in the head of the column, for a cell: `ms`. */
  readonly unit?: string;
}

/** Elements within a line; whatever else begins a block of its own. */
const INLINE = new Set(
  'a abbr b bdi bdo cite code data del dfn em i ins kbd mark q s samp small span strong sub sup time tspan u var'.split(
    ' ',
  ),
);
/** Spans that the stylesheet sets on lines of their own. */
const OWN_LINE = /(?:^|\s)(?:words|shared)(?:\s|$)/;
const UNREAD = new Set(['script', 'style', 'template']);
/** What is said beside the text. */
const ASIDE = new Set(['title', 'alt', 'aria-label', 'aria-description', 'placeholder', 'label', 'summary']);
const UNIT = /(?:^|[/([,]\s?|\bin\s)(ms|µs|s|milliseconds|seconds|frames|%|per cent|Hz)\s?[)\]]?$/i;

export function blocksOf(html: string): readonly Block[] {
  const reader = new Reader();
  reader.read(parsePage(html), [], []);
  return reader.blocks;
}

type Units = readonly (string | undefined)[];

class Reader {
  readonly blocks: Block[] = [];
  #open: Stretch[] = [];
  /** Of the column of the cell that is read. */
  #unit: string | undefined;

  read(node: Node, within: readonly Element[], units: Units): void {
    if (node.nodeName === '#text' && 'value' in node) this.#open.push({ text: node.value, within });
    else if ('tagName' in node) this.#readElement(node, within, units);
    else if ('childNodes' in node) for (const child of node.childNodes) this.read(child, within, units);
  }

  #readElement(element: Element, outside: readonly Element[], units: Units): void {
    const { tagName } = element;
    if (UNREAD.has(tagName)) return;
    const within = [element, ...outside];
    this.blocks.push(...asides(element, within));
    if (tagName === 'br') this.#open.push({ text: '\n', within });
    if (INLINE.has(tagName) && !OWN_LINE.test(attributeOf(element, 'class') ?? '')) {
      for (const child of element.childNodes) this.read(child, within, units);
      return;
    }
    this.#close();
    if (tagName === 'tr') this.#readRow(element, within, units);
    else {
      const ofColumns = tagName === 'table' ? unitsOf(element) : units;
      for (const child of element.childNodes) this.read(child, within, ofColumns);
    }
    this.#close();
  }

  #readRow({ childNodes }: Element, within: readonly Element[], units: Units): void {
    const isHead = within.some(({ tagName }) => tagName === 'thead');
    let column = 0;
    for (const child of childNodes) {
      this.#unit = isHead ? undefined : units[column];
      this.read(child, within, units);
      if ('tagName' in child) column += Number(attributeOf(child, 'colspan') ?? 1);
    }
    this.#unit = undefined;
  }

  #close(): void {
    const unit = this.#unit;
    if (this.#open.some(({ text }) => text.trim() !== ''))
      this.blocks.push({ stretches: this.#open, ...(unit === undefined ? {} : { unit }) });
    this.#open = [];
  }
}

function asides(element: Element, within: readonly Element[]): readonly Block[] {
  const isDescription = element.tagName === 'meta' && attributeOf(element, 'name') === 'description';
  return element.attrs
    .filter(({ name, value }) => value !== '' && (ASIDE.has(name) || (isDescription && name === 'content')))
    .map(({ value }) => ({ stretches: [{ text: value, within }] }));
}

/** By column, where its head ends in one. */
function unitsOf(table: Element): readonly (string | undefined)[] {
  const [head] = named(table, 'thead').flatMap((part) => named(part, 'tr'));
  return (head === undefined ? [] : [...named(head, 'th'), ...named(head, 'td')]).flatMap((cell) => {
    const span = Number(attributeOf(cell, 'colspan') ?? 1);
    return new Array<string | undefined>(span).fill(UNIT.exec(textOf(cell).trim())?.[1]);
  });
}

function named(within: Element, name: string): readonly Element[] {
  return elementsOf(within, ({ tagName }) => tagName === name);
}
