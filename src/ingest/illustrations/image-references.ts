/** The pictures that a text asks for: `![what it shows](balcony.jpg "its caption")`. */
import type { ProblemCode } from '../../model/problem.ts';
import type { Visited } from '../mdx-node.ts';
import type { Report } from '../source.ts';

export interface ImageReference {
  /** The path as written, percent escapes read. */
  readonly to: string;
  readonly line: number;
  readonly column: number;
}

/**
 * Every picture of a Markdown tree. Reported are those without words for whoever does not see them, those asked of
 * another host, and those within a sentence: one has a paragraph or a cell of a table, several may share it.
 */
export function imagesOf(tree: Visited, report: Report): readonly ImageReference[] {
  const found: ImageReference[] = [];
  const visit = (node: Visited, isAlone: boolean): void => {
    const { line = 1, column = 1 } = node.position?.start ?? {};
    const at = { line, column };
    if (node.type === 'imageReference') report({ code: 'picture-by-reference', ...at });
    if (node.type === 'image') {
      const to = readEscapes(node.url ?? '');
      const faults = faultsOf(to, node.alt ?? '', isAlone);
      for (const code of faults) report({ code, ...at, found: to });
      if (!faults.includes('picture-elsewhere')) found.push({ to, ...at });
    }
    const children = node.children ?? [];
    const mayHold = (node.type === 'paragraph' || node.type === 'tableCell') && children.every(isImageOrBlank);
    for (const child of children) visit(child, mayHold);
  };
  visit(tree, false);
  return found;
}

function faultsOf(to: string, alt: string, isAlone: boolean): readonly ProblemCode[] {
  return [
    ...(isAlone ? [] : (['picture-in-sentence'] as const)),
    ...(alt.trim() === '' ? (['picture-without-words'] as const) : []),
    ...(isElsewhere(to) ? (['picture-elsewhere'] as const) : []),
  ];
}

/** `my%20rig.jpg` is `my rig.jpg`; what is no escape stays as it is. */
function readEscapes(url: string): string {
  try {
    return decodeURIComponent(url);
  } catch {
    return url;
  }
}

function isImageOrBlank({ type, value }: Visited): boolean {
  return type === 'image' || type === 'break' || (type === 'text' && String(value).trim() === '');
}

/** Another host, a scheme, or the root of a site: no path from the folder of the text. */
function isElsewhere(to: string): boolean {
  return /^(?:[a-z][a-z0-9+.-]*:|[/\\])/i.test(to);
}
