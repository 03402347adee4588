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
import { readBench, type BenchFolders } from '../ingest/read-bench.ts';
import type { Bench } from '../model/bench.ts';
import { describeProblems } from '../model/problem-text.ts';
import { ProblemsError } from '../model/problem.ts';
import { benchFigures } from './bench-figures.ts';
import { checkWriteUps } from './check-write-ups.ts';
import { findingsOf } from './findings.ts';
import { lookup } from './lookup.ts';
import type { Register } from './register.ts';
import { compileSession } from './session-figures.ts';

/** Throws a ProblemsError that holds every mistake of the bench, or else every mistake of the write-ups. */
export async function compileSite(folders: BenchFolders): Promise<{ bench: Bench; register: Register }> {
  const bench = await readBench(folders); // 1
  const register = compileRegister(bench); // 2 to 4
  const problems = checkWriteUps(bench, register); // 5
  if (problems.length > 0) throw new ProblemsError(problems, describeProblems(problems));
  return { bench, register };
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
