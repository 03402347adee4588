import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.woff2': 'font/woff2',
};

export interface FolderServer extends AsyncDisposable {
  /** `http://127.0.0.1:PORT` */
  readonly origin: string;
  /** Origin and prefix, with a final slash. */
  readonly home: string;
}

/** Serves the files of a folder below a prefix, as the plainest web server would: nothing above it, no guesses. */
export async function serveFolder(folder: string, prefix = '/'): Promise<FolderServer> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const path = normalize(decodeURIComponent(pathname));
    const file = path.startsWith(prefix)
      ? join(folder, path.slice(prefix.length), path.endsWith('/') ? 'index.html' : '')
      : undefined;
    void (file === undefined ? Promise.reject(new Error('outside')) : readFile(file)).then(
      (bytes) =>
        response
          .writeHead(200, { 'Content-Type': TYPES[extname(file ?? '')] ?? 'text/plain; charset=utf-8' })
          .end(bytes),
      () => response.writeHead(404, { 'Content-Type': 'text/plain' }).end('not found'),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return {
    origin,
    home: `${origin}${prefix}`,
    async [Symbol.asyncDispose]() {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
