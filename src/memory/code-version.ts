import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const SOURCE = fileURLToPath(new URL('../', import.meta.url));
const LOCKFILE = new URL('../../package-lock.json', import.meta.url);

/** The version of a computation: a digest of the code in these folders of `src`, of the packages and of the runtime. */
export function codeVersion(folders: readonly string[]): string {
  const hash = createHash('sha256').update(process.version).update(readFileSync(LOCKFILE));
  const files = folders.flatMap((folder) =>
    readdirSync(join(SOURCE, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => relative(SOURCE, join(parentPath, name)).split(sep).join('/')),
  );
  for (const file of files.sort()) hash.update(`\n${file}\n`).update(readFileSync(join(SOURCE, file)));
  return hash.digest('hex');
}
