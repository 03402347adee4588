import { renderXml } from './xml.ts';

/** The site map of these addresses, as sitemaps.org 0.9 has it. */
export function renderSitemap(addresses: readonly string[]): string {
  return renderXml({
    urlset: {
      '@xmlns': 'http://www.sitemaps.org/schemas/sitemap/0.9',
      url: addresses.map((loc) => ({ loc })),
    },
  });
}
