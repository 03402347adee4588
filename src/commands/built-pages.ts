import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pageOfFile } from '../register/paths.ts';
import { filesOf } from './files-of.ts';

export interface BuiltPage {
  /** Site path: `/sessions/a/`. */
  readonly path: string;
  readonly html: string;
}

/** The pages of a built site, one after the other, in the order of their files: many small ones, read faster so. */
export async function* builtPages(dist: string): AsyncGenerator<BuiltPage> {
  for (const file of await pageFiles(dist))
    yield { path: pageOfFile(file), html: readFileSync(join(dist, file), 'utf8') };
}

/** How many pages a built site has. */
export async function countPages(dist: string): Promise<number> {
  return (await pageFiles(dist)).length;
}

async function pageFiles(dist: string): Promise<readonly string[]> {
  return (await filesOf(dist)).filter((file) => file.endsWith('.html'));
}
