import { readdir, readFile } from 'node:fs/promises';
import { join, sep } from 'node:path';

export interface BuiltPage {
  /** Site path: `/sessions/a/`. */
  readonly path: string;
  readonly html: string;
}

/** The pages of a built site, one after the other, in the order of their paths. */
export async function* builtPages(dist: string): AsyncGenerator<BuiltPage> {
  const names = (await readdir(dist, { recursive: true })).filter((name) => name.endsWith('.html')).sort();
  for (const name of names) yield { path: pathOf(name), html: await readFile(join(dist, name), 'utf8') };
}

function pathOf(name: string): string {
  return `/${name
    .split(sep)
    .join('/')
    .replace(/(^|\/)index\.html$/, '$1')}`;
}
