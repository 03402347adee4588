/**
 * What the last build of a publication read and wrote. Where a build would read the same, and its output folder holds
 * every file as it was left, the site in it is the one that the build would write: two builds of the same are equal byte
 * for byte.
 */
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Store } from 'lagfolio/memory';
import type { PageAudit } from '../audit/audit-page.ts';
import { filesOf } from './files-of.ts';
import { markOf } from './site-mark.ts';

/** What a build found out of the pages that it wrote. */
export interface Written {
  readonly audit: PageAudit;
  readonly pages: number;
}

interface Kept extends Written {
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
export async function lastBuild(name: string, site: string): Promise<Written | undefined> {
  const kept = store.get(name) as Kept | undefined;
  return kept !== undefined && kept.mark === (await markOf(site)) ? kept : undefined;
}

/** Remembers what a build of this name left in a folder. */
export async function keepBuild(name: string, site: string, { audit, pages }: Written): Promise<void> {
  const mark = await markOf(site);
  if (mark !== undefined) store.put(name, { audit, pages, mark } satisfies Kept);
}
