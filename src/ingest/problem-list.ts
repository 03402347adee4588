import { problemsError } from '../model/problem-text.ts';
import type { Problem } from '../model/problem.ts';
import { UnsoundBenchError, type Inventory } from './inventory.ts';

/** Gathers the problems of a whole bench, so that they are reported at once. */
export class ProblemList {
  readonly #problems: Problem[] = [];

  add(problem: Problem): void {
    this.#problems.push(problem);
  }

  get all(): readonly Problem[] {
    return this.#problems;
  }

  /** Throws one ProblemsError with all of them, if there are any. */
  throwIfAny(): void {
    if (this.#problems.length > 0) throw problemsError(this.#problems);
  }

  /** Throws one UnsoundBenchError with all of them, and with what was found besides, if there are any. */
  throwIfUnsound(inventory: Inventory): void {
    if (this.#problems.length > 0) throw new UnsoundBenchError(this.#problems, inventory);
  }
}
