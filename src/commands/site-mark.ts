/**
 * What a build wrote, in the folder that it wrote: a line for each file, its SHA-256 and its path, as
 * `sha256sum --check` reads them. It is how the next build knows that the folder is a site to be replaced.
 */
import { hash } from 'node:crypto';
import { lstat, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { errorCode } from '../ingest/read-source.ts';
import { filesOf, sha256Of } from './files-of.ts';

export const MARK = 'lagfolio.sha256';

const LINE = /^[0-9a-f]{64} {2}(.+)$/;

/** Marks a folder as the site that it is now. */
export async function markSite(folder: string): Promise<void> {
  await writeFile(join(folder, MARK), await listFiles(folder));
}

/** Digest of the mark of a folder; undefined where it has none. */
export async function markOf(folder: string): Promise<string | undefined> {
  const mark = await readFile(join(folder, MARK), 'utf8').catch(() => undefined);
  return mark === undefined ? undefined : hash('sha256', mark);
}

/** Whether the files of a folder are what its mark says. */
export async function isAsMarked(folder: string): Promise<boolean> {
  const mark = await readFile(join(folder, MARK), 'utf8').catch(() => undefined);
  return mark !== undefined && mark === (await listFiles(folder).catch(() => undefined));
}

/** A line for each file but the mark. */
async function listFiles(folder: string): Promise<string> {
  const files = (await filesOf(folder)).filter((file) => file !== MARK);
  return files.map((file) => `${sha256Of(join(folder, file))}  ${file}\n`).join('');
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
