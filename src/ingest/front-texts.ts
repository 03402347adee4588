/** What front matter says to readers in words, and what it states besides. */
import { isPair, isScalar, parseDocument, visit } from 'yaml';
import type { Prose } from '../model/bench.ts';
import type { Visited } from './mdx-node.ts';
import type { Written } from './yaml.ts';

/** The keys whose value is free text that pages print. */
const TEXTS = new Set('title summary author tagline publisher name maker model source cut-short'.split(' '));

/** The texts of front matter, each with the lines of the file on which it stands. */
export function statedTexts({ value, position }: Visited): readonly Prose[] {
  const yaml = String(value ?? '');
  // the block begins on the line after the dashes
  const first = (position?.start.line ?? 1) + 1;
  const lineOf = (offset: number): number => first + (yaml.slice(0, offset).match(/\n/g) ?? []).length;
  const found: Prose[] = [];
  visit(parseDocument(yaml, { version: '1.2', schema: 'core', prettyErrors: false }), {
    Scalar(key, node, path) {
      const parent = path.at(-1);
      if (key !== 'value' || !isPair(parent) || !isScalar(parent.key) || !TEXTS.has(String(parent.key.value))) return;
      const [start = 0, end = 0] = node.range ?? [];
      const written = yaml.slice(start, end).trimEnd();
      const lines = written.split('\n').map((text, index) => ({ text: `${text}\n`, line: lineOf(start) + index }));
      // on one line, as its quotes and escapes read
      found.push(lines.length > 1 ? lines : [{ text: String(node.value ?? ''), line: lineOf(start) }]);
    },
  });
  return found;
}

/** The values of front matter that are no words, as written: `14 ms`, `60`. */
export function statedValues(value: Written): readonly string[] {
  if (typeof value === 'string') return /^[±+-]?\s?\d/.test(value) ? [value] : [];
  if (value === null) return [];
  return (Array.isArray(value) ? value : Object.values(value)).flatMap(statedValues);
}
