/**
 * Where the publication stands that is built, planned or recorded: a folder with `data/` and `content/`, apart from
 * the tool. Without one that is said it is the demonstration, which stands in the tool's own folder.
 */
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The tool itself, with a final separator: pages, packages and the demonstration. */
export const TOOL = fileURLToPath(new URL('../../', import.meta.url));

/** Carries the folder from a command to everything that it starts. */
export const PUBLICATION_VARIABLE = 'LAGFOLIO_PUBLICATION';

/** The folder of the publication, absolute. */
export function publicationFolder(): string {
  const said = process.env[PUBLICATION_VARIABLE];
  return said === undefined || said === '' ? resolve(TOOL) : fromCaller(said);
}

/** Its three folders, as they are read. */
export function foldersOf(root: string): {
  readonly root: string;
  readonly dataDir: string;
  readonly contentDir: string;
} {
  return { root, dataDir: join(root, 'data'), contentDir: join(root, 'content') };
}

/** A path as whoever called the command meant it: npm runs commands in the tool's folder, wherever it was called. */
export function fromCaller(path: string): string {
  return resolve(process.env['INIT_CWD'] ?? process.cwd(), path);
}
