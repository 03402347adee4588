import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { forgetSite } from '../figures/site.ts';

/** In development, a saved session or write-up is read again and the open pages reload. */
export function reloadOnData(): AstroIntegration {
  let folders: string[] = [];
  return {
    name: 'reload-on-data',
    hooks: {
      'astro:config:setup': ({ config }) => {
        const root = fileURLToPath(config.root);
        folders = ['data', 'content'].map((name) => join(root, name) + sep);
      },
      'astro:server:setup': ({ server }) => {
        server.watcher.add(folders);
        server.watcher.on('all', (_event, path) => {
          if (!folders.some((folder) => path.startsWith(folder))) return;
          forgetSite();
          server.ws.send({ type: 'full-reload' });
        });
      },
    },
  };
}
