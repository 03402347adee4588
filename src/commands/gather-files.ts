import type { Stats } from 'node:fs';
import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { publishedPath } from '../ingest/files-in-hand.ts';
import { fromCaller } from '../site/publication.ts';
import { CallError } from './run.ts';

const LIMIT_BYTES = 64 * 2 ** 20;
const SKIPPED = /^\.|^node_modules$/;

/**
 * Files and folders that somebody names → the files of `data/` among them, by their published paths. In folders,
 * whatever else is there is passed over; a file that was named and is none of `data/` is a mistake in the call.
 */
export async function gatherFiles(paths: readonly string[]): Promise<ReadonlyMap<string, Uint8Array>> {
  const found = new Map<string, { readonly path: string; readonly bytes: Uint8Array }>();
  for (const named of paths) {
    const isFolder = (await statOf(named)).isDirectory();
    for (const path of isFolder ? await filesIn(await dataIn(named)) : [named]) {
      if ((await statOf(path)).size > LIMIT_BYTES) throw new CallError(`${path} is larger than 64 MiB.`);
      const bytes = new Uint8Array(await readFile(fromCaller(path)));
      const published = publishedPath({ path, bytes });
      if (published === undefined && !isFolder)
        throw new CallError(`${path} is no file of a session: name its pair, and the files that its page lists.`);
      if (published === undefined) continue;
      const other = found.get(published);
      if (other !== undefined && !equal(other.bytes, bytes))
        throw new CallError(`${other.path} and ${path} would both be ${published} and differ: name one of them.`);
      found.set(published, { path, bytes });
    }
  }
  return new Map([...found].map(([published, { bytes }]) => [published, bytes]));
}

/** Of a data package or a publication, the folder with its data. */
async function dataIn(folder: string): Promise<string> {
  const data = join(folder, 'data');
  try {
    return (await statOf(data)).isDirectory() ? data : folder;
  } catch (error) {
    if (error instanceof CallError) return folder;
    throw error;
  }
}

async function filesIn(folder: string): Promise<readonly string[]> {
  const entries = await readdir(fromCaller(folder), { withFileTypes: true });
  const inside = entries
    .filter(({ name }) => !SKIPPED.test(name))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map((entry) => {
      const path = join(folder, entry.name);
      return entry.isDirectory()
        ? filesIn(path)
        : Promise.resolve(entry.isFile() && /\.(?:md|csv|yaml)$/.test(path) ? [path] : []);
    });
  return (await Promise.all(inside)).flat();
}

async function statOf(path: string): Promise<Stats> {
  try {
    return await stat(fromCaller(path));
  } catch {
    throw new CallError(`${path} is not there.`);
  }
}

function equal(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}
