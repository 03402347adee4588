import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { TOOL } from '../site/publication.ts';
import { filesOf } from './files-of.ts';
import type { NewFile } from './write-all.ts';

/** Files whose names, as they are to be, would mean something in the tool's own folder. */
const HIDDEN: Readonly<Record<string, string>> = { gitignore: '.gitignore', gitattributes: '.gitattributes' };
const METHODS = 'content/methods';

/**
 * What a publication begins with: the files of `src/begun`, and the demonstration's notes on method, which describe how
 * readings are taken whoever takes them, without its author.
 */
export async function filesToBegin(): Promise<readonly NewFile[]> {
  const own = await filesIn(join(TOOL, 'src', 'begun'));
  const notes = await filesIn(join(TOOL, METHODS));
  return [
    ...own.map(({ path, text }) => ({ path: HIDDEN[path] ?? path, text })),
    ...notes.map(({ path, text }) => ({ path: `${METHODS}/${path}`, text: text.replace(/^author: .*\n/m, '') })),
  ];
}

async function filesIn(folder: string): Promise<readonly { readonly path: string; readonly text: string }[]> {
  const paths = await filesOf(folder);
  return Promise.all(paths.map(async (path) => ({ path, text: await readFile(join(folder, path), 'utf8') })));
}
