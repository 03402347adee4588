import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join, sep } from 'node:path';

/** Paths of everything in a folder that is no folder, links among them, with forward slashes, sorted. */
export async function filesOf(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => !entry.isDirectory())
    .map(({ parentPath, name }) =>
      join(parentPath, name)
        .slice(folder.length + 1)
        .split(sep)
        .join('/'),
    )
    .sort();
}

/** At a time: as much as most files of a site hold, and little of a long clip. */
const chunk = Buffer.allocUnsafe(2 ** 20);

/**
 * SHA-256 of a file, in hexadecimal digits. Read in one go, since the small files that a site is of are told faster so
 * than by streams.
 */
export function sha256Of(path: string): string {
  const hash = createHash('sha256');
  const file = openSync(path, 'r');
  try {
    for (let bytes = readSync(file, chunk); bytes > 0; bytes = readSync(file, chunk))
      hash.update(chunk.subarray(0, bytes));
  } finally {
    closeSync(file);
  }
  return hash.digest('hex');
}
