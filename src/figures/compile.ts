/**
 * The whole way from files to the register:
 *
 *     data/, content/ → bench → sessions' figures → register → site
 *
 *     1. read       every file an author wrote, checked          (ingest/read-bench.ts)
 *     2. estimate   each session, on its own rig                 (session-figures.ts)
 *     3. count      what the bench holds                         (bench-figures.ts)
 *     4. find       what a careful editor would want to know     (findings.ts)
 *     5. check      that every write-up asks for what exists     (check-write-ups.ts)
 */
import { ANALYSIS_VERSION } from '../analysis/version.ts';
import { UnsoundBenchError } from '../ingest/inventory.ts';
import { readBench, type BenchFolders } from '../ingest/read-bench.ts';
import type { Bench } from '../model/bench.ts';
import { problemsError } from '../model/problem-text.ts';
import { benchFigures } from './bench-figures.ts';
import { checkWriteUps, expectedOf, knownOf } from './check-write-ups.ts';
import { findingsOf } from './findings.ts';
import { lookup } from './lookup.ts';
import type { Register } from './register.ts';
import { compileSession } from './session-figures.ts';

/** Throws one ProblemsError with every mistake of the bench and of its write-ups. */
export async function compileSite(folders: BenchFolders): Promise<{ bench: Bench; register: Register }> {
  const bench = await readSound(folders); // 1
  const register = compileRegister(bench); // 2 to 4
  const problems = checkWriteUps(knownOf(bench, register)); // 5
  if (problems.length > 0) throw problemsError(problems);
  return { bench, register };
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

/** The register of a bench that ingest has found sound. Pure. */
export function compileRegister(bench: Bench): Register {
  const find = lookup(bench);
  const sessions = bench.sessions.map((session) => compileSession(session, find)); // 2
  return {
    analysis: ANALYSIS_VERSION,
    figures: [...sessions.flatMap(({ figures }) => figures), ...benchFigures(bench)], // 3
    findings: findingsOf(sessions), // 4
  };
}
