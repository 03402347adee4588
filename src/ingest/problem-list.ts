import { compareProblems, ProblemsError, type Problem } from '../model/problem.ts';
import { describeProblems } from '../model/problem-text.ts';

/** Gathers the problems of a whole bench, so that they are reported at once. */
export class ProblemList {
  readonly #problems: Problem[] = [];

  add(problem: Problem): void {
    this.#problems.push(problem);
  }

  /** Throws one ProblemsError with all of them, sorted, if there are any. */
  throwIfAny(): void {
    if (this.#problems.length === 0) return;
    const sorted = this.#problems.toSorted(compareProblems);
    throw new ProblemsError(sorted, describeProblems(sorted));
  }
}
