/** Files at the root of the site by which it is found and cited. */
import { absolute } from '../citation/absolute.ts';
import { renderCitationFile } from '../citation/citation-file.ts';
import { FEED, renderFeed } from '../citation/feed.ts';
import { renderSitemap } from '../citation/sitemap.ts';
import { pagePathsOf } from './pages.ts';
import { loadSite } from './site.ts';

export interface FoundFile {
  readonly name: string;
  readonly type: string;
  readonly text: string;
}

/** Without an address of the site, only what needs none. */
export async function foundFiles(): Promise<readonly FoundFile[]> {
  const site = await loadSite();
  const addresses = pagePathsOf(site)
    .flatMap((path) => absolute(site.bench.site, path) ?? [])
    .sort();
  const feed = renderFeed(site.bench);
  return [
    { name: 'CITATION.cff', type: 'text/yaml', text: renderCitationFile(site.bench) },
    ...(addresses.length === 0
      ? []
      : [{ name: 'sitemap.xml', type: 'application/xml', text: renderSitemap(addresses) }]),
    ...(feed === undefined ? [] : [{ name: FEED.slice(1), type: 'application/atom+xml', text: feed }]),
  ];
}
