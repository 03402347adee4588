import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { ViteUserConfig } from 'astro';
import { loadSite, publicationFolder, TOOL } from 'lagfolio/site';

type Plugin = NonNullable<ViteUserConfig['plugins']>[number];

/** What pages import: `writeUps`, from the path of each to its text as a component. */
const LIST = 'virtual:write-ups';
const LIST_ID = `\0${LIST}`;
/** The folder in which the bundler believes write-ups to stand. There is none: the names of real ones may hold `#` or `?`. */
const PLACE = join(TOOL, '.publication').replaceAll('\\', '/');

/**
 * That a module is content of authors and no code, as Astro marks its own: it draws no page anew. The page of a
 * write-up has the digest of its text in its view.
 */
const OF_AUTHORS = { astroIncremental: { kind: 'content-data' } };

/**
 * Hands the write-ups of a publication to the bundler, from wherever it stands. A bundler takes `#`, `?` and spaces
 * in a path for something else, so it sees a path of the tool's and gets the text of the author's file.
 */
export function writeUps(): Plugin {
  return {
    name: 'write-ups',
    enforce: 'pre',
    resolveId: {
      order: 'pre',
      filter: { id: /^virtual:write-ups(?:\/|$)/ },
      handler: (id) => (id === LIST ? LIST_ID : `${PLACE}${id.slice(LIST.length)}`),
    },
    load: {
      order: 'pre',
      async handler(id) {
        if (id === LIST_ID) {
          const { bench } = await loadSite();
          const lines = [...bench.methods, ...bench.reports].map(
            ({ file }) => `  ${JSON.stringify(file.path)}: () => import(${JSON.stringify(`${LIST}/${file.path}`)}),\n`,
          );
          return { code: `export const writeUps = {\n${lines.join('')}};\n`, meta: OF_AUTHORS };
        }
        const path = publishedPath(id);
        return path === undefined ? undefined : await readFile(join(publicationFolder(), path), 'utf8');
      },
    },
  };
}

/** Whether a module was made of what authors write, so that it is to be made again when a file changes. */
export function isOfWriteUps(id: string): boolean {
  return id === LIST_ID || publishedPath(id) !== undefined;
}

/** `content/reports/a.mdx`, of the module that it becomes. */
export function publishedPath(id: string): string | undefined {
  return id.startsWith(`${PLACE}/`) ? id.slice(PLACE.length + 1) : undefined;
}
