import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const TOOL = fileURLToPath(new URL('../../', import.meta.url));
/** What else decides: packages, which of them are taken, and how pages are bundled. */
const SETTINGS = ['package-lock.json', 'package.json', 'astro.config.mjs'];

/** The version of a computation: a digest of the code in these folders of the tool, of its packages and of the runtime. */
export function codeVersion(folders: readonly string[]): string {
  const files = folders.flatMap((folder) =>
    readdirSync(join(TOOL, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => relative(TOOL, join(parentPath, name)).split(sep).join('/')),
  );
  const hash = createHash('sha256').update(process.version);
  for (const file of [...SETTINGS, ...files.sort()]) hash.update(`\n${file}\n`).update(readFileSync(join(TOOL, file)));
  return hash.digest('hex');
}
