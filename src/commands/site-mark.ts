/**
 * What a build wrote, in the folder that it wrote: a line for each file, its SHA-256 and its path, as
 * `sha256sum --check` reads them. It is how the next build knows that the folder is a site to be replaced.
 */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { lstat, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { errorCode } from '../ingest/read-source.ts';
import { filesOf } from './files-of.ts';

export const MARK = 'lagfolio.sha256';

const LINE = /^[0-9a-f]{64} {2}(.+)$/;

/** Marks a folder as the site that it is now. */
export async function markSite(folder: string): Promise<void> {
  await writeFile(join(folder, MARK), await listFiles(folder));
}

/** Digest of the mark of a folder; undefined where it has none, or its files are not what the mark says. */
export async function markOf(folder: string): Promise<string | undefined> {
  const mark = await readFile(join(folder, MARK), 'utf8').catch(() => undefined);
  if (mark === undefined || mark !== (await listFiles(folder))) return undefined;
  return createHash('sha256').update(mark).digest('hex');
}

/** A line for each file but the mark. */
async function listFiles(folder: string): Promise<string> {
  const lines = [];
  for (const file of await filesOf(folder))
    if (file !== MARK) lines.push(`${await sha256Of(join(folder, file))}  ${file}\n`);
  return lines.join('');
}

/** Files of a folder that no build wrote, links among them; all of them where it has no mark. */
export async function foreignFiles(folder: string): Promise<readonly string[]> {
  const marked = new Set([MARK, ...(await readMark(join(folder, MARK)))]);
  const files = await filesOf(folder);
  return marked.size === 1 ? files : files.filter((file) => !marked.has(file));
}

async function readMark(path: string): Promise<readonly string[]> {
  try {
    if (!(await lstat(path)).isFile()) return [];
    return (await readFile(path, 'utf8')).split('\n').flatMap((line) => LINE.exec(line)?.[1] ?? []);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return [];
    throw error;
  }
}

async function sha256Of(path: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(path), hash);
  return hash.digest('hex');
}
