/**
 * The scripts of the page that recomputes: the modules that a build runs, bundled for browsers.
 *
 * Imported by its name in package.json, `lagfolio/recompute`, so that it finds its own folder wherever pages are bundled.
 */
import { fileURLToPath } from 'node:url';
import { build } from 'rolldown';
import { Store } from '../memory/memory.ts';

/** What a script is made of, with the packages that the lockfile names. */
const bundles = new Store('scripts', ['src/analysis', 'src/ingest', 'src/model', 'src/recompute', 'src/register']);

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The same bytes from the same modules: no name of a folder, no time, no chance. */
export async function bundle(script: 'main' | 'offline'): Promise<string> {
  const name = bundles.nameOf(script);
  const kept = bundles.get(name);
  if (typeof kept === 'string') return kept;
  const code = await bundleAnew(script);
  bundles.put(name, code);
  return code;
}

async function bundleAnew(script: string): Promise<string> {
  const { output } = await build({
    cwd: here('../../'),
    input: here(`./browser/${script}.ts`),
    platform: 'browser',
    write: false,
    logLevel: 'silent',
    resolve: {
      alias: {
        'csv-parse/sync': 'csv-parse/browser/esm/sync',
        // What reads files and what parses YAML in the splitter of front matter: neither is ever asked.
        fs: here('./browser/no-files.ts'),
        'js-yaml': here('./browser/no-yaml.ts'),
      },
    },
    // A plain script, which browsers run from a disk too.
    output: { format: 'iife', minify: true, comments: false },
  });
  return output[0].code;
}
