import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { build } from 'astro';
import { auditProblems } from '../audit/audit-page.ts';
import { siteFacts } from '../audit/site-facts.ts';
import { checkIllustrations } from '../illustrations/illustration-file.ts';
import { checkLedger } from '../ledger/check.ts';
import { compareWithLedger } from '../ledger/compare.ts';
import { describeChanges } from '../ledger/describe.ts';
import { codeVersion, keepResultsIn, sweepResults } from 'lagfolio/memory';
import { loadSite, watchProgress } from 'lagfolio/site';
import { problemsError } from '../model/problem-text.ts';
import { ProblemsError } from '../model/problem.ts';
import { describeByReport } from '../write-ups/changes-by-report.ts';
import { checkTyped } from '../write-ups/prose/typed-quantities.ts';
import { auditPages } from './audit-pages.ts';
import { cacheFolder } from './cache-folder.ts';
import { finishEarlier } from './finish-earlier.ts';
import { putOutCharts } from './put-out-charts.ts';
import { checkOutput, replaceSite, type OutputFolder } from './output-folder.ts';
import { withPageCache } from './page-cache.ts';
import { TOOL } from '../site/publication.ts';
import { sayMeanwhile } from './say.ts';
import { countPages, type BuildSummary } from './summary.ts';

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
 * The pages take the place of the last site only when all of them are done: a build that fails leaves that
 * as it was, or none. Throws a ProblemsError before any page is written when the output folder is not ours
 * to replace or the author's files hold mistakes; a strict build, also when a number moved that nobody has
 * recorded, or a quantity was typed by hand, and
 * when a finished page says a number with a unit that nothing accounts for.
 */
export async function buildSite({
  root,
  output,
  strict = false,
  fresh: fromNothing = false,
}: BuildOptions): Promise<BuildSummary> {
  const start = performance.now();
  await finishEarlier(root);
  await checkOutput(output, [join(root, 'data'), join(root, 'content')]);
  watchProgress((what, done, of) => sayMeanwhile(`${what}: ${done} of ${of}`));
  keepResultsIn(join(cacheFolder(root), 'results'), { fresh: fromNothing });
  return await replaceSite(output, async (fresh) => {
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
    await withPageCache(cacheFolder(root), { version: codeVersion(['src']), fresh: fromNothing }, (cacheDir) =>
      build({ root: TOOL, outDir: fresh, cacheDir, force: fromNothing, logLevel: 'error' }, { devOutput: false }),
    );
    sayMeanwhile();
    await putOutCharts(fresh, site);
    sweepResults();
    const audit = await auditPages(fresh, siteFacts(site, site.precision));
    if (strict && audit.unaccounted.length > 0) throw problemsError(auditProblems(audit));
    const byReport = describeByReport(changes, site);
    return {
      bench,
      register,
      changes,
      byReport,
      audit,
      pages: await countPages(fresh),
      seconds: (performance.now() - start) / 1000,
    };
  });
}
