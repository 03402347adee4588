import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import type { Bench } from '../model/bench.ts';
import type { Register } from '../register/register.ts';
import { computedFiles, copiedPaths } from './package-files.ts';
import { latestDay, packageFacts } from './package-facts.ts';
import { roCrate, RO_CRATE_FILE } from './ro-crate.ts';

/** Files in it carry no time of their own; the first that a zip can state, in whatever zone. */
const noTime = (): Date => new Date(1980, 0, 1);

/**
 * One archive, the same bytes whenever and wherever it is made.
 *
 * @param root folder of the publication, with `data/` and `content/`
 */
export async function zipPackage(root: string, bench: Bench, register: Register): Promise<Uint8Array> {
  const copied = await Promise.all(
    copiedPaths(bench).map(async (path) => [path, new Uint8Array(await readFile(join(root, path)))] as const),
  );
  const computed = [...computedFiles(bench, register)].map(
    ([path, text]) => [path, new TextEncoder().encode(text)] as const,
  );
  const files = new Map([...computed, ...copied].sort(([a], [b]) => (a < b ? -1 : 1)));
  const facts = packageFacts(bench, register.analysis);
  const crate = new TextEncoder().encode(roCrate(files, { ...facts, day: latestDay(bench) }));
  return zipSync(Object.fromEntries([[RO_CRATE_FILE, crate], ...files]), { mtime: noTime(), level: 9, os: 3 });
}
