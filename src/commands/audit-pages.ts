import { readdir, readFile } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { Store } from 'lagfolio/memory';
import { auditPage, type PageAudit } from '../audit/audit-page.ts';
import type { Facts, Site } from '../audit/site-facts.ts';
import { watched } from '../audit/watch.ts';

/** What is kept of the audit of a page: it holds as long as all that it asked of the site is the same. */
interface Kept {
  readonly audit: PageAudit;
  readonly asked: readonly (Facts & { readonly digest: string })[];
}

const kept = new Store('audits', ['src']);

/** Every page of a built site, in the order of their paths; what was found of a page before is taken over where it still holds. */
export async function auditPages(folder: string, site: Site): Promise<PageAudit> {
  const files = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith('.html')).sort();
  const known = new Map<string, string>();
  const digestOf = ({ of, name }: Facts): string => {
    const key = `${of} ${name}`;
    const digest = known.get(key) ?? site.digestOf({ of, name });
    known.set(key, digest);
    return digest;
  };
  const audits: PageAudit[] = [];
  for (const file of files) {
    const page = `/${file
      .split(sep)
      .join('/')
      .replace(/(^|\/)index\.html$/, '$1')}`;
    const html = await readFile(join(folder, file), 'utf8');
    const name = kept.nameOf([page, html]);
    const before = kept.get(name) as Kept | undefined;
    if (before?.asked.every((facts) => digestOf(facts) === facts.digest)) audits.push(before.audit);
    else {
      const watch = watched(site);
      const audit = auditPage(page, html, watch.site);
      const asked = watch.asked().map((facts) => ({ ...facts, digest: digestOf(facts) }));
      kept.put(name, { audit, asked } satisfies Kept);
      audits.push(audit);
    }
  }
  return {
    read: audits.reduce((sum, { read }) => sum + read, 0),
    unaccounted: audits.flatMap(({ unaccounted }) => unaccounted),
  };
}
