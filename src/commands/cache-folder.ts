import { join } from 'node:path';

/** What commands worked out before, beside what Astro keeps: it can be deleted at any time. */
export function cacheFolder(root: string): string {
  return join(root, '.astro', 'lagfolio');
}
