import { mkdir, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { build } from 'astro';
import { checkLedger } from '../ledger/check.ts';
import { compareWithLedger } from '../ledger/compare.ts';
import { describeChanges } from '../ledger/describe.ts';
import { loadSite } from 'lagfolio/site';
import { problemsError } from '../model/problem-text.ts';
import { ProblemsError } from '../model/problem.ts';
import { countPages, type BuildSummary } from './summary.ts';

/**
 * Compiles the site of a folder into its `dist/`.
 *
 * The pages are written beside it and take its place only when all of them are done: a build that fails
 * leaves the last good site as it was, or none. Throws a ProblemsError before any page is written when
 * the author's files hold mistakes; a strict build, also when a number moved that nobody has recorded.
 */
export async function buildSite(root: string, { strict = false } = {}): Promise<BuildSummary> {
  const start = performance.now();
  const { register, bench } = await loadSite();
  const changes = compareWithLedger(bench, register);
  const unrecorded = strict ? checkLedger(bench, changes) : [];
  if (unrecorded.length > 0) {
    const { problems, message } = problemsError(unrecorded);
    // First by cause, as any build shows it: a long list of problems is cut.
    throw new ProblemsError(problems, [describeChanges(changes), message].filter(Boolean).join('\n\n'));
  }
  const fresh = join(root, '.astro', 'dist');
  const dist = join(root, 'dist');
  await rm(fresh, { recursive: true, force: true });
  await mkdir(join(root, '.astro'), { recursive: true });
  // `force`: the content cache outlives changes of the code that fills it.
  await build({ root, outDir: fresh, logLevel: 'error' }, { devOutput: false });
  await rm(dist, { recursive: true, force: true });
  await rename(fresh, dist);
  return { bench, register, changes, pages: await countPages(dist), seconds: (performance.now() - start) / 1000 };
}
