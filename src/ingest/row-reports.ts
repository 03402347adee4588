import type { Problem } from '../model/problem.ts';
import type { Report } from './source.ts';

type Found = Omit<Problem, 'file'>;

/** Mistakes of one kind in one column that are shown each; a file with more has one cause, not many. */
const SHOWN = 4;

/**
 * Gathers the mistakes of a file's rows: many of one kind are one problem, at the first row, that counts the others.
 */
export class RowReports {
  readonly #report: Report;
  readonly #groups = new Map<string, Found[]>();
  readonly #counts = new Map<string, number>();

  constructor(report: Report) {
    this.#report = report;
  }

  readonly add: Report = (problem) => {
    const kind = `${problem.code} ${problem.key ?? ''}`;
    this.#counts.set(kind, (this.#counts.get(kind) ?? 0) + 1);
    const group = this.#groups.get(kind) ?? [];
    if (group.length <= SHOWN) group.push(problem);
    this.#groups.set(kind, group);
  };

  /** Reports what was gathered. */
  flush(): void {
    for (const [kind, group] of this.#groups) {
      const first = group[0];
      if (first === undefined) continue;
      const all = this.#counts.get(kind) ?? 0;
      if (all <= SHOWN) group.forEach(this.#report);
      else this.#report({ ...first, alike: all - 1 });
    }
  }
}
