import { build } from 'astro';
import { codeVersion, sweepResults } from 'lagfolio/memory';
import { loadSite, watchProgress } from 'lagfolio/site';
import { auditProblems } from '../audit/audit-page.ts';
import { siteFacts } from '../audit/site-facts.ts';
import { checkIllustrations } from '../illustrations/illustration-file.ts';
import { checkLedger } from '../ledger/check.ts';
import { compareWithLedger, type Changes } from '../ledger/compare.ts';
import { describeChanges } from '../ledger/describe.ts';
import type { Bench } from '../model/bench.ts';
import { problemsError } from '../model/problem-text.ts';
import { ProblemsError, type Problem } from '../model/problem.ts';
import { TOOL } from '../site/publication.ts';
import { describeByReport } from '../write-ups/changes-by-report.ts';
import { checkTyped } from '../write-ups/prose/typed-quantities.ts';
import { auditPages } from './audit-pages.ts';
import { countPages } from './built-pages.ts';
import { cacheFolder } from './cache-folder.ts';
import { withPageCache } from './page-cache.ts';
import { putOutCharts } from './put-out-charts.ts';
import { sayMeanwhile } from './say.ts';
import type { BuildSummary } from './summary.ts';

export { reportOf } from './summary.ts';

export interface WriteOptions {
  /** Of the publication. */
  readonly root: string;
  /** Refuses to publish what moved and was not recorded, and quantities typed by hand. */
  readonly strict?: boolean;
  /** Computes and draws everything, whatever was kept of earlier builds. */
  readonly fresh?: boolean;
}

/**
 * Writes all pages and files of a publication's site into a folder, and reads the pages as a reader would. Throws a
 * ProblemsError as `buildSite` does.
 */
export async function writeSite(
  folder: string,
  { root, strict = false, fresh = false }: WriteOptions,
): Promise<BuildSummary> {
  watchProgress((what, done, of) => sayMeanwhile(`${what}: ${done} of ${of}`));
  const site = await loadSite();
  const { register, bench } = site;
  const changes = compareWithLedger(bench, register);
  if (strict) refuse(strictProblems(bench, changes), changes);
  await checkIllustrations(root, bench);
  await withPageCache(cacheFolder(root), { version: codeVersion(['src']), fresh }, (cacheDir) =>
    build({ root: TOOL, outDir: folder, cacheDir, force: fresh, logLevel: 'error' }, { devOutput: false }),
  );
  sayMeanwhile();
  await putOutCharts(folder, site);
  sweepResults();
  const audit = await auditPages(folder, siteFacts(site, site.precision));
  if (strict && audit.unaccounted.length > 0) throw problemsError(auditProblems(audit));
  return {
    bench,
    register,
    changes,
    byReport: describeByReport(changes, site),
    audit,
    pages: await countPages(folder),
  };
}

/** Whether a strict build would have written this. */
export function holdsStrictly({ bench, changes, audit }: BuildSummary): boolean {
  return audit.unaccounted.length === 0 && strictProblems(bench, changes).length === 0;
}

/** What only a strict build refuses before it writes. */
function strictProblems(bench: Bench, changes: Changes): readonly Problem[] {
  return [...checkLedger(bench, changes), ...checkTyped(bench)];
}

/** First by cause, as any build shows what moved: a long list of problems is cut. */
function refuse(refused: readonly Problem[], changes: Changes): void {
  if (refused.length === 0) return;
  const { problems, message } = problemsError(refused);
  throw new ProblemsError(problems, [describeChanges(changes), message].filter(Boolean).join('\n\n'));
}
