/** Other values in the front matter of a file, everything else as its author wrote it. */
import { parseDocument } from 'yaml';

export interface FrontMatterEdit {
  /** `['observer', 'readout']` */
  readonly path: readonly string[];
  /** As an author would write it; undefined takes the key away. */
  readonly to: string | undefined;
}

const BLOCK = /^(---[ \t]*\r?\n)([\s\S]*?\n)??(---[ \t]*(?:\r?\n|$))/;

/** The file with these values. Its front matter is taken to be one that `parseFrontMatter` accepts. */
export function restateFrontMatter(bytes: Uint8Array, edits: readonly FrontMatterEdit[]): Uint8Array {
  const text = new TextDecoder().decode(bytes);
  const [block = '', open = '', yaml = '', close = ''] = BLOCK.exec(text) ?? [];
  if (block === '') throw new Error('a file without front matter cannot be edited');
  const document = parseDocument(yaml);
  for (const { path, to } of edits) {
    if (to === undefined) document.deleteIn(path);
    else document.setIn(path, to);
  }
  return new TextEncoder().encode(`${open}${document.toString({ lineWidth: 0 })}${close}${text.slice(block.length)}`);
}
