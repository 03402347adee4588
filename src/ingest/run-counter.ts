import type { Report } from './source.ts';

const RUN = /^[1-9]\d{0,8}$/;

/** Checks that the runs of a file start at 1 and count up without gaps. */
export class RunCounter {
  readonly #report: Report;
  #cell = '';
  #run = 0;

  constructor(report: Report) {
    this.#report = report;
  }

  /** The run of the next row; 0 where it is no run number. */
  parse(line: number, cell: string): number {
    if (cell === this.#cell) return this.#run;
    if (!RUN.test(cell)) {
      this.#report({ code: 'bad-run', line, key: 'run', found: cell });
      return 0;
    }
    const run = Number(cell);
    if (run !== this.#run + 1) {
      const expected = this.#run === 0 ? '1' : `${this.#run} or ${this.#run + 1}`;
      this.#report({ code: 'run-order', line, key: 'run', found: cell, expected });
    }
    this.#run = run;
    this.#cell = cell;
    return run;
  }
}
