import { hash } from 'node:crypto';
import { Store } from 'lagfolio/memory';
import { auditPage, type PageAudit } from '../audit/audit-page.ts';
import type { Facts, Site } from '../audit/site-facts.ts';
import { watched } from '../audit/watch.ts';
import { builtPages } from './built-pages.ts';

/** What is kept of the audits of all pages: each holds as long as its page and all that it asked of the site is the same. */
interface Kept {
  readonly pages: ReadonlyMap<string, KeptAudit>;
  /** Digests of facts, by their names. */
  readonly facts: ReadonlyMap<string, string>;
}

interface KeptAudit {
  /** Of the page. */
  readonly sha256: string;
  readonly audit: PageAudit;
  readonly asked: readonly Facts[];
}

const store = new Store('audits', ['src']);

/** Every page of a built site, in the order of their paths; what was found of a page before is taken over where it still holds. */
export async function auditPages(folder: string, site: Site): Promise<PageAudit> {
  const before = keptAudits();
  const facts = new Map<string, string>();
  const digestOf = (asked: Facts): string => {
    const name = nameOf(asked);
    const digest = facts.get(name) ?? site.digestOf(asked);
    facts.set(name, digest);
    return digest;
  };
  const pages = new Map<string, KeptAudit>();
  for await (const { path: page, html } of builtPages(folder)) {
    const sha256 = hash('sha256', html);
    const known = before?.pages.get(page);
    const holds =
      known?.sha256 === sha256 && known.asked.every((asked) => digestOf(asked) === before?.facts.get(nameOf(asked)));
    pages.set(page, holds ? known : auditAnew(page, html, sha256, site));
  }
  const audits = [...pages.values()];
  for (const { asked } of audits) asked.forEach(digestOf);
  store.put(store.nameOf('all'), { pages, facts } satisfies Kept);
  return {
    read: audits.reduce((sum, { audit: { read } }) => sum + read, 0),
    unaccounted: audits.flatMap(({ audit: { unaccounted } }) => unaccounted),
  };
}

function keptAudits(): Kept | undefined {
  return store.get(store.nameOf('all')) as Kept | undefined;
}

function auditAnew(page: string, html: string, sha256: string, site: Site): KeptAudit {
  const watch = watched(site);
  const audit = auditPage(page, html, watch.site);
  return { sha256, audit, asked: watch.asked() };
}

function nameOf({ of, name }: Facts): string {
  return `${of} ${name}`;
}
