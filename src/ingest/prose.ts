import type { Prose, ProsePiece } from '../model/bench.ts';
import type { Visited } from './mdx-node.ts';

/** Stands for what is no prose of the author's: code, a figure, a number marked as quoted. */
export const NO_PROSE = '\uFFFC';

/** Parts whose words are accounted for elsewhere: as a quotation, as a setting, or as a claim. */
const ACCOUNTED = new Set(['Quoted', 'Setting', 'Claim']);
const BLOCKS = new Set(['paragraph', 'heading', 'tableCell']);
const MARKUP =
  /^(?:inlineCode|code|html|image|imageReference|mdxTextExpression|mdxFlowExpression|mdxjsEsm|yaml|toml|definition)$/;

/**
 * Gathers what a write-up says in its own words, block by block: a number and its unit belong together even where one
 * of them is set in bold. Left out, with `NO_PROSE` in its place: code, expressions, pictures, and what is marked.
 */
export class ProseReader {
  readonly found: Prose[] = [];

  read(node: Visited): void {
    if (node.type === 'yaml') for (const text of statedIn(node)) this.#add([text]);
    else if (BLOCKS.has(node.type) || node.type === 'text') this.#add(piecesOf(node));
    else if (!isLeftOut(node)) for (const child of node.children ?? []) this.read(child);
  }

  #add(pieces: readonly ProsePiece[]): void {
    if (pieces.some(({ text }) => text !== NO_PROSE)) this.found.push(pieces);
  }
}

/** Title and summary stand in the front matter, and readers see them: a line each, on a line of the file each. */
function statedIn({ value, position }: Visited): readonly ProsePiece[] {
  const lines = String(value ?? '').split('\n');
  const keys = lines.map(
    (_, index) =>
      lines
        .slice(0, index + 1)
        .findLast((line) => /^\S/.test(line))
        ?.split(':')[0],
  );
  return lines.flatMap((line, index) =>
    ['title', 'summary'].includes(keys[index] ?? '')
      ? [{ text: line.replace(/^\w+:/, ''), line: (position?.start.line ?? 1) + 1 + index }]
      : [],
  );
}

/** The words of these nodes, on one line. */
export function textOf(nodes: readonly Visited[]): string {
  const inOrder = (node: Visited): string =>
    node.type === 'text' || node.type === 'inlineCode'
      ? String(node.value ?? '')
      : (node.children ?? []).map(inOrder).join('');
  return nodes.map(inOrder).join('').replace(/\s+/g, ' ').trim();
}

function piecesOf(node: Visited): readonly ProsePiece[] {
  const { line = 1 } = node.position?.start ?? {};
  if (node.type === 'text') return [{ text: String(node.value ?? ''), line }];
  if (node.type === 'break') return [{ text: '\n', line }];
  if (isLeftOut(node)) return [{ text: NO_PROSE, line }];
  return (node.children ?? []).flatMap(piecesOf);
}

function isLeftOut({ type, name, children = [] }: Visited): boolean {
  return MARKUP.test(type) || (type.startsWith('mdxJsx') && (ACCOUNTED.has(name ?? '') || children.length === 0));
}
