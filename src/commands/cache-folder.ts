import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { TOOL } from '../site/publication.ts';

/** What commands worked out before of a publication, beside what Astro keeps: it can be deleted at any time. */
export function cacheFolder(root: string): string {
  return join(TOOL, '.astro', 'lagfolio', createHash('sha256').update(root).digest('hex').slice(0, 16));
}
