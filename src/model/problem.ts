/** What is wrong in a file an author wrote: typed data. The words are in `problem-text.ts`. */

/** Every kind of mistake, with what only that kind carries. */
export type ProblemCode = string;

export interface Problem {
  /** Stable name of the kind of mistake, e.g. `unknown-body`. */
  readonly code: ProblemCode;
  /** Path as the author knows it, with forward slashes: `data/sessions/x.csv`. */
  readonly file: string;
  /** 1-based, where the mistake has a place in the file. */
  readonly line?: number;
  /** 1-based. */
  readonly column?: number;
  /** Dotted path of the key in front matter or YAML, or the name of the CSV column. */
  readonly key?: string;
  readonly found?: string;
  readonly expected?: string;
  /** Valid choices nearest to what was found, best first. */
  readonly nearest?: readonly string[];
  /** What to do, where the expectation does not already say it. */
  readonly hint?: string;
}

/** Thrown once per command or build, with every problem that was found. */
export class ProblemsError extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[], text: string) {
    super(text);
    this.name = 'ProblemsError';
    this.problems = problems;
  }
}

/** By file, then line, then column, then code: the order in which a build reports. */
export function compareProblems(a: Problem, b: Problem): number {
  return (
    compareText(a.file, b.file) ||
    (a.line ?? 0) - (b.line ?? 0) ||
    (a.column ?? 0) - (b.column ?? 0) ||
    compareText(a.code, b.code)
  );
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
