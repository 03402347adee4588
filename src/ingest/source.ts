import type { SourceFile } from '../model/bench.ts';
import type { Problem } from '../model/problem.ts';
import type { ProblemList } from './problem-list.ts';

/** A problem of one file, still without its name. */
export type Report = (problem: Omit<Problem, 'file'>) => void;

/** A file that was read: its bytes as text, and what is published about it. */
export interface Source {
  readonly file: SourceFile;
  /** UTF-8 without its byte order mark, valid and free of NUL. */
  readonly bytes: Uint8Array;
  readonly report: Report;
}

/** The same report, and how many mistakes went through it. */
export function tally(report: Report): { readonly report: Report; count(): number } {
  let mistakes = 0;
  return {
    report(problem) {
      mistakes += 1;
      report(problem);
    },
    count: () => mistakes,
  };
}

export function reportOn(file: string, problems: ProblemList): Report {
  return (problem) => problems.add({ ...problem, file });
}
