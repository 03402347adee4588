/** Markdown notes: of sessions, bodies, displays, links and rigs, and the introduction in `content/site.md`. */
import { markdownToMdast, type MdastNode } from 'satteri';
import type { Prose } from '../model/bench.ts';
import { parseNoteMark } from '../model/note-mark.ts';
import { imagesOf, type ImageReference } from './illustrations/image-references.ts';
import { checkLink } from './markup/check-markup.ts';
import type { Visited } from './mdx-node.ts';
import { NO_PROSE, ProseReader } from './prose.ts';
import type { Source } from './source.ts';

export interface Note {
  /** What it says in its author's own words, block by block, without what it marks. */
  readonly prose: readonly Prose[];
  readonly images: readonly ImageReference[];
}

/**
 * Reported are HTML, and links and pictures that are refused in write-ups too. Positions count from the first line of
 * the file.
 */
export function readNote({ bytes, report }: Source): Note {
  const tree = markdownToMdast(new TextDecoder().decode(bytes)) as MdastNode as Visited;
  const check = (node: Visited): Visited => {
    const { line = 1, column = 1 } = node.position?.start ?? {};
    if (node.type === 'link' || node.type === 'definition') checkLink(node.url ?? '', { line, column }, report);
    return node.children === undefined ? node : { ...node, children: unmarked(node.children, report).map(check) };
  };
  const prose = new ProseReader();
  prose.read(check(tree));
  return { prose: prose.found, images: imagesOf(tree, report) };
}

/** These nodes, with `NO_PROSE` in place of each that stands within a mark. */
function unmarked(nodes: readonly Visited[], report: Source['report']): readonly Visited[] {
  let open: Visited | undefined;
  const isUnclosed = (node: Visited): void =>
    report({ code: 'unclosed-mark', ...startOf(node), found: String(node.value) });
  const kept = nodes.map((node): Visited => {
    const mark = node.type === 'html' ? parseNoteMark(String(node.value)) : undefined;
    if (node.type === 'html' && mark === undefined)
      report({ code: 'html-in-note', ...startOf(node), found: String(node.value).split('\n')[0] ?? '' });
    const isInside = open !== undefined;
    if (mark?.opens === true) {
      if (open !== undefined) isUnclosed(open);
      open = node;
    } else if (mark !== undefined) {
      if (open === undefined || parseNoteMark(String(open.value))?.name !== mark.name) isUnclosed(node);
      open = undefined;
    }
    return isInside ? { type: 'text', value: NO_PROSE, ...(node.position ? { position: node.position } : {}) } : node;
  });
  if (open !== undefined) isUnclosed(open);
  return kept;
}

function startOf({ position }: Visited): { readonly line: number; readonly column: number } {
  return { line: position?.start.line ?? 1, column: position?.start.column ?? 1 };
}
