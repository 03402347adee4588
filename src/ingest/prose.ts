import type { Prose, ProsePiece } from '../model/bench.ts';
import { statedTexts } from './front-texts.ts';
import { isComment, literalValue } from './markup/literal-value.ts';
import type { Visited } from './mdx-node.ts';

/** Stands for what is no prose of the author's: a figure, a number marked as quoted. */
export const NO_PROSE = '\uFFFC';

/** Parts whose words are accounted for elsewhere: as a quotation, as a setting, or as a claim. */
const ACCOUNTED = new Set(['Quoted', 'Setting', 'Claim']);
/** What is read in one go. */
export const BLOCKS = new Set(['paragraph', 'heading', 'tableCell', 'code']);
const MARKUP = /^(?:html|mdxFlowExpression|mdxjsEsm|toml)$/;
/** Elements within a line; whatever else begins a block. */
const INLINE = new Set(
  'a abbr b bdi bdo cite code del dfn em i ins kbd mark q s samp small span strong sub sup time u var wbr'.split(' '),
);
/** Attributes of elements that no reader reads. */
const UNREAD = new Set('class className dir height href id lang src style width'.split(' '));

/**
 * Gathers what a text says in its author's own words, block by block: a number and its unit belong together even where
 * one of them is set in bold, or where the unit stands in the head of the column. Front matter, code, alternative texts
 * and tooltips are read too. Left out, with `NO_PROSE` in its place: what is marked, parts and expressions.
 */
export class ProseReader {
  readonly found: Prose[] = [];

  read(node: Visited): void {
    for (const text of aside(node)) this.#add([text]);
    const children = node.children ?? [];
    // the number that the first item of a list is given
    if (node.type === 'list' && (node.start ?? 1) > 1)
      this.#add([{ text: String(node.start), line: node.position?.start.line ?? 1 }]);
    if (node.type === 'yaml') for (const text of statedTexts(node)) this.#add(text);
    else if (node.type === 'table') this.#readTable(node);
    else if (BLOCKS.has(node.type) || node.type === 'text' || (isElement(node) && children.some(isWords))) {
      this.#add(piecesOf(node));
      for (const child of children) this.#readAsides(child);
    } else if (!isLeftOut(node)) for (const child of children) this.read(child);
  }

  /** A number without a unit takes the one that stands in the head of its column. */
  #readTable({ children: rows = [] }: Visited): void {
    const [head, ...body] = rows;
    const units = (head?.children ?? []).map((cell) => unitIn(textOf([cell])));
    for (const cell of head?.children ?? []) this.read(cell);
    for (const [index, cell] of body.flatMap(({ children = [] }) => [...children.entries()])) {
      // what stands at the end of a row is not read on in the next
      if (index === 0) this.found.push([]);
      const pieces = piecesOf(cell);
      const last = pieces.at(-1);
      const isBare = /\p{Nd}[\s.)]*$/u.test(pieces.map(({ text }) => text).join(''));
      const unit = units[index];
      this.#add(unit !== undefined && isBare && last ? [...pieces, { text: ` ${unit}`, line: last.line }] : pieces);
      for (const child of cell.children ?? []) this.#readAsides(child);
    }
  }

  #readAsides(node: Visited): void {
    for (const text of aside(node)) this.#add([text]);
    for (const child of node.children ?? []) this.#readAsides(child);
  }

  #add(pieces: readonly ProsePiece[]): void {
    if (pieces.some(({ text }) => text !== NO_PROSE && text !== '')) this.found.push(pieces);
  }
}

/** `Latency / ms`, `Delay (frames)`, `milliseconds`. */
function unitIn(head: string): string | undefined {
  const UNIT = '(ms|µs|s|milliseconds|seconds|frames|%|per cent|Hz)';
  const words = head.trim();
  return (new RegExp(`(?:^|[/([,]\\s?)${UNIT}\\s?[)\\]]?$`, 'i').exec(words) ??
    new RegExp(`\\bin\\s${UNIT}(?![\\p{L}\\p{N}])`, 'iu').exec(words))?.[1];
}

/** What a reader reads beside the text: alternative texts, titles of links, attributes of elements. */
function aside(node: Visited): readonly ProsePiece[] {
  const { line = 1 } = node.position?.start ?? {};
  const attributes = isElement(node) && /^[a-z]/.test(node.name ?? '') ? (node.attributes ?? []) : [];
  const written = attributes.flatMap(({ name = '', value }) => (UNREAD.has(name) ? [] : [textOfValue(value)]));
  return [node.title, node.alt, ...written].flatMap((text) =>
    typeof text === 'string' && text !== '' ? [{ text, line }] : [],
  );
}

function textOfValue(value: unknown): string | undefined {
  if (typeof value === 'string') return value;
  const literal = literalValue(String((value as { value?: unknown } | null | undefined)?.value ?? ''));
  return literal.known && typeof literal.value === 'string' ? literal.value : undefined;
}

/** The words of these nodes, on one line. */
export function textOf(nodes: readonly Visited[]): string {
  const inOrder = (node: Visited): string =>
    node.type === 'text' || node.type === 'inlineCode' || node.type === 'code'
      ? String(node.value ?? '')
      : (node.children ?? []).map(inOrder).join('');
  return nodes.map(inOrder).join('').replace(/\s+/g, ' ').trim();
}

function piecesOf(node: Visited): readonly ProsePiece[] {
  const { line = 1 } = node.position?.start ?? {};
  const { type, name, value, children = [] } = node;
  if (type === 'text' || type === 'inlineCode') return [{ text: String(value ?? ''), line }];
  // its first line is the fence
  if (type === 'code') return [{ text: String(value ?? ''), line: line + 1 }];
  if (type === 'break' || name === 'br') return [{ text: '\n', line }];
  if (type === 'mdxTextExpression') return [{ text: ofExpression(String(value ?? '')), line }];
  if (isLeftOut(node)) return [{ text: NO_PROSE, line }];
  return children.flatMap((child) =>
    // what stands in a block of its own is not read on in what follows
    isBlock(child) ? [{ text: '\n', line }, ...piecesOf(child), { text: '\n', line }] : piecesOf(child),
  );
}

function isBlock(node: Visited): boolean {
  return isElement(node) && /^[a-z]/.test(node.name ?? '') && !INLINE.has(node.name ?? '');
}

/** Nothing, of a comment; a text that is written out, as readers see it. */
function ofExpression(expression: string): string {
  if (isComment(expression)) return '';
  const literal = literalValue(expression);
  return literal.known && ['string', 'number'].includes(typeof literal.value) ? String(literal.value) : NO_PROSE;
}

function isElement({ type }: Visited): boolean {
  return type.startsWith('mdxJsx');
}

function isWords({ type, value }: Visited): boolean {
  return type === 'text' && String(value).trim() !== '';
}

/** Elements without words, such as `<b></b>`, are nothing; parts without words stand for something. */
function isLeftOut(node: Visited): boolean {
  if (!isElement(node)) return MARKUP.test(node.type);
  return ACCOUNTED.has(node.name ?? '') || ((node.children ?? []).length === 0 && /^[A-Z]/.test(node.name ?? ''));
}
