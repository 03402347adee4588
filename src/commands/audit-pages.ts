import { readdir, readFile } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { auditPage, type PageAudit, type Unaccounted } from '../audit/audit-page.ts';
import type { Site } from '../audit/site-facts.ts';

/** Every page of a built site, in the order of their paths. */
export async function auditPages(folder: string, site: Site): Promise<PageAudit> {
  const files = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith('.html')).sort();
  let read = 0;
  const unaccounted: Unaccounted[] = [];
  for (const file of files) {
    const page = `/${file
      .split(sep)
      .join('/')
      .replace(/(^|\/)index\.html$/, '$1')}`;
    const audit = auditPage(page, await readFile(join(folder, file), 'utf8'), site);
    read += audit.read;
    unaccounted.push(...audit.unaccounted);
  }
  return { read, unaccounted };
}
