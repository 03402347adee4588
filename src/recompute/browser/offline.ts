/**
 * Answers for the page that recomputes where the network does not: with what it kept (`keep.ts`). Its scope is that
 * page.
 */

interface Event {
  respondWith(response: Promise<Response>): void;
  waitUntil(done: Promise<unknown>): void;
  readonly request: Request;
}
interface Scope {
  addEventListener(name: string, listener: (event: Event) => void): void;
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
}
const scope = globalThis as unknown as Scope;

scope.addEventListener('install', (event) => event.waitUntil(scope.skipWaiting()));
scope.addEventListener('activate', (event) => event.waitUntil(scope.clients.claim()));
scope.addEventListener('fetch', (event) => {
  if (event.request.method === 'GET') event.respondWith(networkFirst(event.request));
});

async function networkFirst(request: Request): Promise<Response> {
  try {
    return await fetch(request);
  } catch (error) {
    const kept = await caches.match(request, { ignoreSearch: true });
    if (kept === undefined) throw error;
    return kept;
  }
}

export {};
