import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { auditProblems } from '../audit/audit-page.ts';
import { checkIllustrations } from '../illustrations/illustration-file.ts';
import { checkLedger } from '../ledger/check.ts';
import { compareWithLedger, type Changes } from '../ledger/compare.ts';
import { describeChanges } from '../ledger/describe.ts';
import { keepResultsIn } from 'lagfolio/memory';
import { loadSite, watchProgress } from 'lagfolio/site';
import { problemsError } from '../model/problem-text.ts';
import { ProblemsError } from '../model/problem.ts';
import { describeByReport } from '../write-ups/changes-by-report.ts';
import { checkTyped } from '../write-ups/prose/typed-quantities.ts';
import { cacheFolder } from './cache-folder.ts';
import { finishEarlier } from './finish-earlier.ts';
import { keepBuild, lastBuild, nameOfBuild, type Written } from './last-build.ts';
import { checkOutput, replaceSite, type OutputFolder } from './output-folder.ts';
import type { Site } from '../site/site.ts';
import { sayMeanwhile } from './say.ts';
import type { BuildSummary } from './summary.ts';

export interface BuildOptions {
  readonly root: string;
  readonly output: OutputFolder;
  readonly strict?: boolean;
  /** Computes and draws everything, whatever was kept of earlier builds. */
  readonly fresh?: boolean;
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
export async function buildSite({
  root,
  output,
  strict = false,
  fresh: fromNothing = false,
}: BuildOptions): Promise<BuildSummary> {
  const start = performance.now();
  await finishEarlier(root);
  const folders = [join(root, 'data'), join(root, 'content')];
  await checkOutput(output, folders);
  watchProgress((what, done, of) => sayMeanwhile(`${what}: ${done} of ${of}`));
  keepResultsIn(join(cacheFolder(root), 'results'), { fresh: fromNothing });
  const name = await nameOfBuild(folders);
  let wrote: Written | undefined;
  const summary = await replaceSite(
    output,
    async (fresh) => {
      const { site, changes } = await loadChecked({ root, strict });
      const { writeSite } = await import('./write-site.ts');
      wrote = await writeSite(site, fresh, { root, fresh: fromNothing });
      if (strict && wrote.audit.unaccounted.length > 0) throw problemsError(auditProblems(wrote.audit));
      return summaryOf(site, changes, wrote);
    },
    async () => {
      const written = await lastBuild(name, output.path);
      if (written === undefined || (strict && written.audit.unaccounted.length > 0)) return undefined;
      const { site, changes } = await loadChecked({ root, strict });
      return site.bench.site.writeUpsRunCode ? undefined : summaryOf(site, changes, written);
    },
  );
  // Files that were saved meanwhile may be part of the site or not: only the next build knows.
  if (wrote !== undefined && name === (await nameOfBuild(folders))) await keepBuild(name, output.path, wrote);
  return { ...summary, seconds: (performance.now() - start) / 1000 };
}

/** The site, if what authors wrote and recorded lets it be built. */
async function loadChecked({ root, strict }: { readonly root: string; readonly strict: boolean }) {
  const site = await loadSite();
  const { register, bench } = site;
  const changes = compareWithLedger(bench, register);
  const refused = strict ? [...checkLedger(bench, changes), ...checkTyped(bench)] : [];
  if (refused.length > 0) {
    const { problems, message } = problemsError(refused);
    // First by cause, as any build shows it: a long list of problems is cut.
    throw new ProblemsError(problems, [describeChanges(changes), message].filter(Boolean).join('\n\n'));
  }
  await checkIllustrations(root, bench);
  return { site, changes };
}

function summaryOf(site: Site, changes: Changes, { audit, pages }: Written): Omit<BuildSummary, 'seconds'> {
  const { bench, register } = site;
  return { bench, register, changes, byReport: describeByReport(changes, site), audit, pages };
}
