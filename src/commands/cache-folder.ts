import { hash } from 'node:crypto';
import { join } from 'node:path';
import { TOOL } from '../site/publication.ts';

/** What commands worked out before of a publication, beside what Astro keeps: it can be deleted at any time. */
export function cacheFolder(root: string, tool: string = TOOL): string {
  return join(tool, '.astro', 'lagfolio', hash('sha256', root).slice(0, 16));
}

/** Results of the analysis, among them. */
export function resultsFolder(root: string): string {
  return join(cacheFolder(root), 'results');
}
