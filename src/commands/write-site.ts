import { build } from 'astro';
import { codeVersion, sweepResults } from 'lagfolio/memory';
import { siteFacts } from '../audit/site-facts.ts';
import { TOOL } from '../site/publication.ts';
import type { Site } from '../site/site.ts';
import { auditPages } from './audit-pages.ts';
import { countPages } from './built-pages.ts';
import { cacheFolder } from './cache-folder.ts';
import type { Written } from './last-build.ts';
import { withPageCache } from './page-cache.ts';
import { putOutCharts } from './put-out-charts.ts';
import { sayMeanwhile } from './say.ts';

interface WriteOptions {
  /** Of the publication. */
  readonly root: string;
  /** Takes over no page of an earlier build. */
  readonly fresh: boolean;
}

/**
 * Writes all pages and files of a site into a folder, and reads the pages as a reader would. A module of its own, since
 * what prints pages takes longer to load than it takes to find that nothing has changed.
 */
export async function writeSite(site: Site, folder: string, { root, fresh }: WriteOptions): Promise<Written> {
  await withPageCache(cacheFolder(root), { version: codeVersion(['src']), fresh }, (cacheDir) =>
    build({ root: TOOL, outDir: folder, cacheDir, force: fresh, logLevel: 'error' }, { devOutput: false }),
  );
  sayMeanwhile();
  await putOutCharts(folder, site);
  sweepResults();
  return { audit: await auditPages(folder, siteFacts(site, site.precision)), pages: await countPages(folder) };
}
