import { readdir, readFile } from 'node:fs/promises';
import { join, sep } from 'node:path';

const READ = /\.(?:md|mdx|yaml|csv)$/;

/** Every text of `data/` and `content/` by its path, but the ledger, which is written by `npm run record` alone. */
export async function publicationTexts(root: string): Promise<ReadonlyMap<string, string>> {
  const texts = new Map<string, string>();
  for (const top of ['data', 'content']) {
    const entries = await readdir(join(root, top), { recursive: true, withFileTypes: true });
    const paths = entries
      .filter((entry) => entry.isFile() && READ.test(entry.name) && !entry.name.startsWith('.'))
      .map(({ parentPath, name }) =>
        join(parentPath, name)
          .slice(root.length + 1)
          .split(sep)
          .join('/'),
      )
      .filter((path) => !/^content\/ledger\/|^data\/sources\//.test(path))
      .sort();
    for (const path of paths) texts.set(path, await readFile(join(root, path), 'utf8'));
  }
  return texts;
}
