/**
 * The compiled site as pages see it: read and computed once per build, again when a file changes in development.
 *
 * Imported by its name in package.json, `lagfolio/site`, everywhere: the command and the pages that it bundles
 * then have one instance of this module (astro.config.mjs names it external), and nothing is computed twice.
 */
import { join } from 'node:path';
import { EstimateMemory } from '../register/estimate-memory.ts';
import { publish, type Published } from '../register/published.ts';
import { compileSite } from './compile.ts';

const memory = new EstimateMemory();
/** The latest reading of the files: under way, or done without a mistake. */
let latest: Promise<Published> | undefined;

/**
 * Reads `data/` and `content/` of the current folder, once until `forgetSite`. Rejects with a ProblemsError
 * when they hold mistakes; the next call reads them again.
 */
export function loadSite(): Promise<Published> {
  if (latest === undefined) {
    const reading = readSite(process.cwd());
    latest = reading;
    reading.catch(() => {
      if (latest === reading) forgetSite();
    });
  }
  return latest;
}

/** Makes the next `loadSite` read the files again. */
export function forgetSite(): void {
  latest = undefined;
}

async function readSite(root: string): Promise<Published> {
  const { bench, register } = await compileSite(
    { root, dataDir: join(root, 'data'), contentDir: join(root, 'content') },
    memory.estimate,
  );
  memory.forgetUnused();
  return publish(bench, register);
}
