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
