import type { Part } from '../../model/bench.ts';
import type { Visited } from '../mdx-node.ts';

/** Where a sentence ends: what stands between it and the next. Ends of items and of lines end none. */
const END = /[.!?…]["”’»)\]]*\s+/gu;

/** What of its sentence stands before and after each element of a block, by the element. */
export function sentencesAround(block: Visited): ReadonlyMap<Visited, NonNullable<Part['sentence']>> {
  const elements: { readonly node: Visited; readonly from: number; readonly to: number }[] = [];
  let text = '';
  const read = (node: Visited): void => {
    const from = text.length;
    if (node.type === 'text' || node.type === 'inlineCode') text += String(node.value ?? '');
    else if (node.type === 'break') text += ' ';
    for (const child of node.children ?? []) read(child);
    if (/^[A-Z]/.test(node.name ?? '')) elements.push({ node, from, to: text.length });
  };
  read(block);
  const ends = [...text.matchAll(END)].map(({ 0: end, index }) => index + end.length);
  return new Map(
    elements.map(({ node, from, to }) => {
      const begin = ends.findLast((end) => end <= from) ?? 0;
      const end = ends.find((each) => each > to) ?? text.length;
      return [node, { before: oneLine(text.slice(begin, from)), after: oneLine(text.slice(to, end)) }];
    }),
  );
}

function oneLine(text: string): string {
  return text.replace(/\s+/gu, ' ');
}
