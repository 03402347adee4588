/**
 * The whole way from files to the register:
 *
 *     data/, content/ → bench → sessions' figures → register → site
 *
 *     1. read       every file an author wrote, checked          (ingest/read-bench.ts)
 *     2. estimate   each session, on its own rig                 (compilation.ts, session-figures.ts)
 *     3. compile    what sessions say together, kind by kind     (register/contributions.ts)
 *     4. check      that every write-up asks for what exists     (check-write-ups.ts)
 *                   and claims what the data support             (claims/check-claims.ts)
 */
import { ANALYSIS_VERSION } from '../analysis/version.ts';
import { inventoryOf, UnsoundBenchError } from '../ingest/inventory.ts';
import { readBench, type BenchFolders } from '../ingest/read-bench.ts';
import type { Bench } from '../model/bench.ts';
import { ProblemsError } from '../model/problem.ts';
import { problemsError } from '../model/problem-text.ts';
import { checkWriteUps, expectedOf, knownOf } from '../write-ups/check-write-ups.ts';
import { askedFamilies } from '../write-ups/asked-families.ts';
import { checkClaims } from '../write-ups/claims/check-claims.ts';
import { compileSessions, type Computing } from '../register/compilation.ts';
import { contributionsOf } from '../register/contributions.ts';
import { located } from '../register/located.ts';
import { typedFindings } from '../write-ups/prose/typed-quantities.ts';
import { publish, type Published } from '../register/published.ts';
import { findRateLaws } from '../register/rate-law/rate-laws.ts';
import type { Register } from '../register/register.ts';

interface SiteOptions extends Computing {
  /** What is done with the bench before its sessions are estimated one after the other. */
  readonly ahead?: (bench: Bench) => Promise<void>;
}

/** Throws one ProblemsError with every mistake of the bench and of its write-ups. */
export async function compileSite(
  folders: BenchFolders,
  { ahead = async () => {}, ...computing }: SiteOptions = {},
): Promise<Published> {
  const bench = await readSound(folders); // 1
  await ahead(bench);
  const published = compileSound(bench, computing); // 2 and 3
  const problems = [...checkWriteUps(knownOf(published)), ...checkClaims(published)]; // 4
  if (problems.length > 0) throw problemsError(problems);
  return published;
}

/** Where files are faulty, write-ups are checked against what the bench would hold, so that all mistakes come at once. */
async function readSound(folders: BenchFolders): Promise<Bench> {
  try {
    return await readBench(folders);
  } catch (error) {
    if (!(error instanceof UnsoundBenchError)) throw error;
    throw problemsError([...error.problems, ...checkWriteUps(expectedOf(error.inventory))]);
  }
}

/** What the analysis refuses is a problem like any other: write-ups are checked against the names of the bench. */
function compileSound(bench: Bench, computing: Computing): Published {
  try {
    return compileBench(bench, computing);
  } catch (error) {
    if (!(error instanceof ProblemsError)) throw error;
    throw problemsError([...error.problems, ...checkWriteUps(expectedOf(inventoryOf(bench)))]);
  }
}

/** The register of a bench that ingest has found sound. Pure. */
export function compileRegister(bench: Bench): Register {
  return compileBench(bench).register;
}

/** A bench that ingest has found sound, with everything that is computed from it. Pure. */
export function compileBench(bench: Bench, computing?: Computing): Published {
  const compilation = compileSessions(bench, computing); // 2
  const laws = located('rate laws', findRateLaws, compilation);
  const contributions = [
    ...contributionsOf(compilation, laws, (standing) => askedFamilies(bench, standing)), // 3
    { figures: [], findings: located('quantities typed by hand', (of) => typedFindings(of.bench), compilation) },
  ];
  const register = {
    analysis: ANALYSIS_VERSION,
    figures: contributions.flatMap(({ figures }) => figures),
    findings: contributions.flatMap(({ findings }) => findings),
  };
  return publish(compilation, register, laws);
}
