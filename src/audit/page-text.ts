/** A built page as a reader reads it: its text, block by block, and what each stretch of it is marked as. */
import { attributeOf, elementsOf, parsePage, textOf, type Element, type Node } from '../verify/html.ts';

export interface Stretch {
  readonly text: string;
  /** The elements that it stands in, the innermost first. */
  readonly within: readonly Element[];
}

/**
 * A paragraph, a cell, a label of a drawing: what is read in one go. Or what is said beside: a tooltip, an alternative
 * text.
 */
export interface Block {
  readonly stretches: readonly Stretch[];
  /** The unit in the head of the column, for a cell: `ms`. */
  readonly unit?: string;
  /** Sessions, bodies and rigs to which the heads of its row and of its column lead, for a cell. */
  readonly heads?: readonly string[];
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
const RECORD_PAGE = /(?:^|\/)(?:sessions|bodies|rigs)\/([^/#?]+)\/(?:[#?].*)?$/;
const UNIT = /(?:^|[/([,]\s?|\bin\s)(ms|µs|s|milliseconds|seconds|frames|%|per cent|Hz)\s?[)\]]?$/i;

export function blocksOf(html: string): readonly Block[] {
  const reader = new Reader();
  reader.read(parsePage(html), [], []);
  return reader.blocks;
}

/** What the head of a column says of its cells. */
interface Column {
  readonly unit: string | undefined;
  readonly heads: readonly string[];
}

class Reader {
  readonly blocks: Block[] = [];
  #open: Stretch[] = [];
  /** Of the cell that is read. */
  #unit: string | undefined;
  #heads: readonly string[] = [];

  read(node: Node, within: readonly Element[], units: readonly Column[]): void {
    if (node.nodeName === '#text' && 'value' in node) this.#open.push({ text: node.value, within });
    else if ('tagName' in node) this.#readElement(node, within, units);
    else if ('childNodes' in node) for (const child of node.childNodes) this.read(child, within, units);
  }

  #readElement(element: Element, outside: readonly Element[], units: readonly Column[]): void {
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
      const ofColumns = tagName === 'table' ? columnsOf(element) : units;
      for (const child of element.childNodes) this.read(child, within, ofColumns);
    }
    this.#close();
  }

  #readRow({ childNodes }: Element, within: readonly Element[], units: readonly Column[]): void {
    const isHead = within.some(({ tagName }) => tagName === 'thead');
    const heads = childNodes.flatMap((child) => ('tagName' in child && child.tagName === 'th' ? leadsTo(child) : []));
    let column = 0;
    for (const child of childNodes) {
      const isCell = !isHead && 'tagName' in child && child.tagName === 'td';
      this.#unit = isHead ? undefined : units[column]?.unit;
      this.#heads = isCell ? [...heads, ...(units[column]?.heads ?? [])] : [];
      this.read(child, within, units);
      if ('tagName' in child) column += Number(attributeOf(child, 'colspan') ?? 1);
    }
    this.#unit = undefined;
    this.#heads = [];
  }

  #close(): void {
    const unit = this.#unit;
    if (this.#open.some(({ text }) => text.trim() !== ''))
      this.blocks.push({
        stretches: this.#open,
        ...(unit === undefined ? {} : { unit }),
        ...(this.#heads.length === 0 ? {} : { heads: this.#heads }),
      });
    this.#open = [];
  }
}

function asides(element: Element, within: readonly Element[]): readonly Block[] {
  const isDescription = element.tagName === 'meta' && attributeOf(element, 'name') === 'description';
  return element.attrs
    .filter(({ name, value }) => value !== '' && (ASIDE.has(name) || (isDescription && name === 'content')))
    .map(({ value }) => ({ stretches: [{ text: value, within }] }));
}

/** By column: its unit, where its head ends in one. */
function columnsOf(table: Element): readonly Column[] {
  const [head] = named(table, 'thead').flatMap((part) => named(part, 'tr'));
  return (head === undefined ? [] : [...named(head, 'th'), ...named(head, 'td')]).flatMap((cell) => {
    const span = Number(attributeOf(cell, 'colspan') ?? 1);
    return new Array<Column>(span).fill({ unit: UNIT.exec(textOf(cell).trim())?.[1], heads: leadsTo(cell) });
  });
}

/** The ids of sessions, bodies and rigs whose pages its links lead to. */
function leadsTo(head: Element): readonly string[] {
  return named(head, 'a').flatMap((link) => RECORD_PAGE.exec(attributeOf(link, 'href') ?? '')?.[1] ?? []);
}

function named(within: Element, name: string): readonly Element[] {
  return elementsOf(within, ({ tagName }) => tagName === name);
}
