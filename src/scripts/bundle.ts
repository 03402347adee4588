/**
 * The scripts of pages that have one: modules, bundled for browsers.
 *
 * Imported by its name in package.json, `lagfolio/scripts`, so that it finds its own folder wherever pages are bundled.
 */
import { fileURLToPath } from 'node:url';
import { build } from 'rolldown';
import { Store } from '../memory/memory.ts';

/** Where each begins. */
const BEGINS = {
  recompute: '../recompute/browser/main.ts',
  offline: '../recompute/browser/offline.ts',
  search: '../search/browser/main.ts',
};

/** What a script is made of, with the packages that the lockfile names. */
const bundles = new Store('scripts', [
  'src/analysis',
  'src/ingest',
  'src/model',
  'src/recompute',
  'src/register',
  'src/scripts',
  'src/search',
]);

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The same bytes from the same modules: no name of a folder, no time, no chance. */
export async function bundle(script: keyof typeof BEGINS): Promise<string> {
  const name = bundles.nameOf(script);
  const kept = bundles.get(name);
  if (typeof kept === 'string') return kept;
  const code = await bundleAnew(script);
  bundles.put(name, code);
  return code;
}

async function bundleAnew(script: keyof typeof BEGINS): Promise<string> {
  const { output } = await build({
    cwd: here('../../'),
    input: here(BEGINS[script]),
    platform: 'browser',
    write: false,
    logLevel: 'silent',
    resolve: {
      alias: {
        'csv-parse/sync': 'csv-parse/browser/esm/sync',
        // What reads files and what parses YAML in the splitter of front matter: neither is ever asked.
        fs: here('../recompute/browser/no-files.ts'),
        'js-yaml': here('../recompute/browser/no-yaml.ts'),
      },
    },
    // A plain script, which browsers run from a disk too.
    output: { format: 'iife', minify: true, comments: false },
  });
  return output[0].code;
}
