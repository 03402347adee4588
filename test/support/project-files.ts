import { readdirSync } from 'node:fs';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Where the project stands, without a final slash. */
export const PROJECT = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');

/** What is installed, built or kept by version control, and so no part of the project's own text. */
const NOT_OURS = new Set(['.git', 'node_modules', 'dist', '.dist.building', '.astro']);

/** Every file of the project, committed or about to be: paths from its root with forward slashes, sorted. */
export function projectFiles(folder = '', root = PROJECT): readonly string[] {
  return readdirSync(join(root, folder), { withFileTypes: true })
    .filter(({ name }) => folder !== '' || !(NOT_OURS.has(name) || name.endsWith('.tsbuildinfo')))
    .flatMap((entry) => {
      const path = join(folder, entry.name);
      return entry.isDirectory() ? projectFiles(path, root) : [path.split(sep).join('/')];
    })
    .sort();
}
