/** Keeps page, script and every published file, so that the page works again without a network. */
import type { PageFacts } from '../page-facts.ts';

/** Shared with `offline.ts`. */
const SHELF = 'recompute';

/** Where a browser has no such shelf (a plain http: address), nothing is kept. */
export async function keepForLater(root: URL, { files }: PageFacts): Promise<void> {
  if (!('caches' in globalThis) || !('serviceWorker' in navigator)) return;
  await navigator.serviceWorker.register(new URL('recompute/offline.js', root));
  const shelf = await caches.open(SHELF);
  const loaded = performance.getEntriesByType('resource').map(({ name }) => name);
  const here = loaded.filter((name) => name.startsWith(root.href));
  const all = [
    new URL('recompute/', root).href,
    new URL('figures.json', root).href,
    ...files.map(({ path }) => new URL(path, root).href),
    ...here.filter((name) => !name.includes('?')),
  ];
  await shelf.addAll([...new Set(all)]);
  document.documentElement.dataset['kept'] = String(new Set(all).size);
}
