/** The compiled site: read and computed once per build, again when a file changes in development. */
import { precisionOfRig, simulateTable, type PrecisionOfRig } from '../planning/precision-of-rig.ts';
import { estimateSession, keepEstimate, runLikelihoods } from '../analysis/estimate.ts';
import type { BenchFolders } from '../ingest/read-bench.ts';
import { Memory } from '../memory/memory.ts';
import { lookup } from '../register/lookup.ts';
import type { Published } from '../register/published.ts';
import { sessionInput } from '../register/session-input.ts';
import { compileSite } from './compile.ts';
import { estimateAhead } from './estimate-ahead.ts';
import { reportProgress } from './progress.ts';
import { RememberedRatios } from './remembered-ratios.ts';
import { foldersOf, publicationFolder } from './publication.ts';

export interface Site extends Published {
  /** By rig; none for a rig without a session yet. */
  readonly precision: ReadonlyMap<string, PrecisionOfRig>;
}

const estimates = new Memory({
  name: 'estimates',
  code: ['src/analysis', 'src/model'],
  compute: estimateSession,
  keep: keepEstimate,
  restore: (estimate) => estimate,
});
const likelihoods = new Memory({
  name: 'likelihoods',
  code: ['src/analysis', 'src/model'],
  compute: runLikelihoods,
  keep: (runs) => runs,
  restore: (runs) => runs,
});
const precisions = new Memory({
  name: 'precision',
  code: ['src/analysis', 'src/model', 'src/planning'],
  compute: simulateTable,
  keep: (table) => table,
  restore: (table) => table,
});
const ratios = new RememberedRatios();
/** The latest reading of the files: under way, or done without a mistake. */
let latest: Promise<Site> | undefined;
let drafts = false;

/** From now on drafts are part of the site, as while they are written. */
export function showDrafts(): void {
  drafts = true;
}

/**
 * Reads `data/` and `content/` of the publication, once until `forgetSite`. Rejects with a ProblemsError
 * when they hold mistakes; the next call reads them again.
 */
export function loadSite(): Promise<Site> {
  if (latest === undefined) {
    const reading = readSite(publicationFolder());
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

/** `compileSite`, with what was computed before. */
export function compileRemembering(folders: BenchFolders): Promise<Published> {
  return compileSite(folders, {
    estimator: estimates.recall,
    ratios: ratios.recall,
    likelihoods: likelihoods.recall,
    async ahead(read) {
      const find = lookup(read);
      await estimateAhead(
        estimates,
        read.sessions.map((session) => sessionInput(session, find)),
        { report: (done, of) => reportProgress('Estimating sessions', done, of) },
      );
    },
  });
}

async function readSite(root: string): Promise<Site> {
  const published = await compileRemembering({ ...foldersOf(root), drafts });
  const { bench, find } = published;
  const precision = bench.rigs.flatMap((rig) => {
    const found = precisionOfRig(bench, rig, find, precisions.recall);
    return found === undefined ? [] : [[rig.id, found] as const];
  });
  estimates.forgetUnused();
  likelihoods.forgetUnused();
  precisions.forgetUnused();
  ratios.keepUsed();
  return { ...published, precision: new Map(precision) };
}
