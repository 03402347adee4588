/** Hooks the page into the development server, and into nothing else: a build knows neither its address nor its code. */
import { randomBytes } from 'node:crypto';
import type { AstroIntegration } from 'astro';
import { publicationFolder } from 'lagfolio/site';
import { readingsServer, type Server } from './handle.ts';
import { renderPage } from './page/render-page.ts';

const PAGE_PATH = '/take-readings/';
const LARGEST_BODY = 64 * 1024;

/** As node and the development server have it. */
interface Incoming extends AsyncIterable<Uint8Array> {
  readonly method?: string | undefined;
  readonly url?: string | undefined;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly socket: { readonly remoteAddress?: string | undefined };
}

interface Outgoing {
  writeHead(status: number, headers: Readonly<Record<string, string>>): unknown;
  end(text: string): unknown;
}

export function takeReadings(): AstroIntegration {
  return {
    name: 'take-readings',
    hooks: {
      'astro:config:setup': ({ command, updateConfig }) => {
        if (command !== 'dev') return;
        const token = randomBytes(24).toString('base64url');
        const server = readingsServer(publicationFolder(), token, renderPage(token));
        updateConfig({
          vite: {
            optimizeDeps: { include: ['mediabunny'] },
            plugins: [
              {
                name: 'take-readings',
                apply: 'serve',
                // before everything else, so that nobody else answers or allows anything here
                configureServer: ({ middlewares }) => {
                  middlewares.use((request, response, next) => {
                    serve(server, request, response).then((done) => (done ? undefined : next()), next);
                  });
                },
              },
            ],
          },
        });
      },
      'astro:server:start': ({ address, logger }) =>
        logger.info(`readings are taken at http://localhost:${address.port}${PAGE_PATH}`),
    },
  };
}

/** Whether the request was for the page or its server part. */
async function serve(server: Server, request: Incoming, response: Outgoing): Promise<boolean> {
  const url = new URL(request.url ?? '/', 'http://localhost');
  const isPage = url.pathname === PAGE_PATH.slice(0, -1) || url.pathname === PAGE_PATH;
  if (!isPage && !url.pathname.startsWith(`${PAGE_PATH}api/`)) return false;
  const body = await textOf(request);
  const {
    status,
    type,
    body: text,
  } = body === undefined
    ? { status: 413, type: 'application/json', body: '{"kind":"refused","says":["That is too much."]}' }
    : await server.answer({
        method: request.method ?? 'GET',
        path: isPage ? '/' : url.pathname.slice(`${PAGE_PATH}api`.length).replace(/\/$/, ''),
        query: url.searchParams,
        headers: Object.fromEntries(Object.entries(request.headers).map(([name, value]) => [name, value?.toString()])),
        from: request.socket.remoteAddress,
        body,
      });
  response.writeHead(status, {
    'Content-Type': `${type}; charset=utf-8`,
    'Cache-Control': 'no-store',
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    'Content-Security-Policy': POLICY,
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Resource-Policy': 'same-origin',
  });
  response.end(text);
  return true;
}

/** Nothing from elsewhere and nothing to elsewhere: the clip stays on this machine. */
const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; connect-src 'self'; img-src 'self' data: blob:; media-src blob:; worker-src 'self' blob:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** Undefined where it is larger than anything that the page sends. */
async function textOf(request: Incoming): Promise<string | undefined> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of request) {
    size += chunk.length;
    if (size > LARGEST_BODY) return undefined;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString('utf8');
}
