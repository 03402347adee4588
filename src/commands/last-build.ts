/**
 * What the last build of a publication read and wrote. Where a build would read the same, and its output folder holds
 * every file as it was left, the site in it is the one that the build would write: two builds of the same are equal byte
 * for byte.
 */
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Store } from 'lagfolio/memory';
import type { BuildReport } from './build-report.ts';
import { filesOf } from './files-of.ts';
import { isAsMarked, markOf } from './site-mark.ts';

/** What is said of a site that stands. */
export interface Standing {
  readonly report: BuildReport;
  /** Whether a strict build would have written it, too. */
  readonly isStrict: boolean;
}

interface Kept extends Standing {
  /** Digest of the mark of the site. */
  readonly mark: string;
}

const store = new Store('builds', ['src']);

/** The name of all that a build of these folders reads; the code that reads it is part of it. */
export async function nameOfBuild(folders: readonly string[]): Promise<string> {
  const hash = createHash('sha256');
  for (const folder of folders)
    for (const file of await filesOf(folder)) {
      const bytes = await readFile(join(folder, file));
      hash.update(JSON.stringify([folder, file, bytes.length])).update(bytes);
    }
  return store.nameOf(hash.digest('hex'));
}

/** Of the site in this folder, if it is what a build of this name left there, untouched. */
export async function lastBuild(name: string, site: string): Promise<Standing | undefined> {
  const kept = store.get(name) as Kept | undefined;
  return kept !== undefined && kept.mark === (await markOf(site)) && (await isAsMarked(site)) ? kept : undefined;
}

/** Remembers what a build of this name left in a folder. */
export async function keepBuild(name: string, site: string, { report, isStrict }: Standing): Promise<void> {
  const mark = await markOf(site);
  if (mark !== undefined) store.put(name, { report, isStrict, mark } satisfies Kept);
}
