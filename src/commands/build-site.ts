import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { keepResultsIn } from 'lagfolio/memory';
import type { BuildReport } from './build-report.ts';
import { resultsFolder } from './cache-folder.ts';
import { finishEarlier } from './finish-earlier.ts';
import { keepBuild, lastBuild, nameOfBuild } from './last-build.ts';
import { checkOutput, replaceSite, type OutputFolder } from './output-folder.ts';
import type { BuildSummary } from './summary.ts';
import type { WriteOptions } from './write-site.ts';

export interface BuildOptions extends WriteOptions {
  readonly output: OutputFolder;
}

interface Built {
  readonly report: BuildReport;
  readonly seconds: number;
}

/**
 * Compiles the site of a folder into its output folder.
 *
 * The pages take the place of the last site only when all of them are done: a build that fails leaves that as it was, or
 * none. Where nothing has changed since the last build, its site stays. Throws a ProblemsError before any page is written
 * when the output folder is not ours to replace or the author's files hold mistakes; a strict build, also when a number
 * moved that nobody has recorded, or a quantity was typed by hand, and when a finished page says a number with a unit that
 * nothing accounts for.
 */
export async function buildSite(options: BuildOptions): Promise<Built> {
  const { output, strict = false } = options;
  const start = performance.now();
  const folders = await makeReady(options);
  const name = await nameOfBuild(folders);
  let summary: BuildSummary | undefined;
  const standing = await replaceSite(
    output,
    async (fresh) => {
      const { writeSite, reportOf, holdsStrictly } = await writing();
      summary = await writeSite(fresh, options);
      return { report: reportOf(summary), isStrict: strict || holdsStrictly(summary) };
    },
    async () => {
      const last = await lastBuild(name, output.path);
      return strict && last?.isStrict === false ? undefined : last;
    },
  );
  // Files that were saved meanwhile may be part of the site or not: only the next build knows. Nor does anybody know
  // what code in a write-up reads.
  if (summary?.bench.site.writeUpsRunCode === false && name === (await nameOfBuild(folders)))
    await keepBuild(name, output.path, standing);
  return { report: standing.report, seconds: (performance.now() - start) / 1000 };
}

/** The same, whether something has changed or not, with all that was found. */
export async function buildAnew(options: BuildOptions): Promise<BuildSummary> {
  await makeReady(options);
  return replaceSite(options.output, async (fresh) => (await writing()).writeSite(fresh, options));
}

/** What writes a site takes longer to load than it takes to find that nothing has changed. */
const writing = () => import('./write-site.ts');

/** Settles where results are kept, and that the output folder may be replaced. The folders that are read. */
async function makeReady({ root, output, fresh = false }: BuildOptions): Promise<readonly string[]> {
  await finishEarlier(root);
  const folders = [join(root, 'data'), join(root, 'content')];
  await checkOutput(output, folders);
  keepResultsIn(resultsFolder(root), { fresh });
  return folders;
}
