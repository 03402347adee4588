import { join, sep } from 'node:path';
import type { AstroIntegration, AstroIntegrationLogger } from 'astro';
import { forgetSite, loadSite, publicationFolder, TOOL } from 'lagfolio/site';
import { ProblemsError } from '../model/problem.ts';
import { renderProblemPage } from './problem-page.ts';
import { StalePages } from './stale-pages.ts';
import { isOfWriteUps } from './write-ups.ts';

/** Editors save in several steps: a file may be gone for a moment, or be written twice. */
const SETTLE_MS = 30;
/** The environments of the development server in which pages run. */
const PAGE_ENVIRONMENTS = ['ssr', 'prerender'];
/** Which the bundler does not read. */
const STYLES = join(TOOL, 'src/styles') + sep;
const RELOAD = { type: 'full-reload' } as const;

/**
 * In development, what is saved in `data/` or `content/` is read again and the open pages reload. While there
 * are mistakes, every page shows the list of them, and so does the terminal; pages come back when they are mended.
 */
export function reloadOnData(): AstroIntegration {
  return {
    name: 'reload-on-data',
    hooks: {
      'astro:server:setup': ({ server, logger }) => {
        const root = publicationFolder();
        const folders = ['data', 'content'].map((name) => join(root, name) + sep);
        const report = problemReporter(logger);
        const pages = new StalePages();
        let settling: NodeJS.Timeout | undefined;

        const reload = (): void => {
          pages.change();
          forgetSite();
          // sessions come and go: which pages there are is asked again
          for (const name of PAGE_ENVIRONMENTS) {
            const environment = server.environments[name];
            for (const module of environment?.moduleGraph.idToModuleMap.values() ?? [])
              if (module.id !== null && isOfWriteUps(module.id)) environment?.moduleGraph.invalidateModule(module);
            environment?.hot.send('astro:content-changed', {});
          }
          loadSite().then(() => report(undefined), report);
          server.ws.send(RELOAD);
        };
        server.watcher.add(folders);
        server.watcher.on('all', (_event, path) => {
          if (folders.some((folder) => path.startsWith(folder))) {
            clearTimeout(settling);
            settling = setTimeout(reload, SETTLE_MS);
          } else if (path.startsWith(STYLES)) server.ws.send(RELOAD);
        });

        // a page that was under way when a file was saved has missed the call to reload
        server.ws.on('connection', (socket) => {
          if (pages.takeStale()) socket.send(JSON.stringify(RELOAD));
        });
        server.middlewares.use((request, response, next) => {
          if (!wantsPage(request)) return next();
          pages.serve(request.url ?? '');
          loadSite().then(
            () => next(),
            (error: unknown) => {
              report(error);
              if (!(error instanceof ProblemsError)) return next();
              response
                .writeHead(500, { 'Content-Type': 'text/html; charset=utf-8', 'Cache-Control': 'no-store' })
                .end(renderProblemPage(error));
            },
          );
        });
        loadSite().catch(report);
      },
    },
  };
}

function wantsPage({
  method,
  headers,
}: {
  readonly method?: string | undefined;
  readonly headers: { readonly accept?: string | undefined };
}): boolean {
  return method === 'GET' && (headers.accept ?? '').includes('text/html');
}

/** Tells the terminal of mistakes, of each list once, and that they are mended. */
function problemReporter(logger: AstroIntegrationLogger): (error: unknown) => void {
  let last: string | undefined;
  return (error) => {
    // other errors are the program's own: the page that meets them shows them
    const message = error instanceof ProblemsError ? error.message : undefined;
    if (message === last) return;
    if (message !== undefined) logger.error(`\n${message}\n`);
    else if (error === undefined) logger.info('all mistakes are mended');
    last = message;
  };
}
