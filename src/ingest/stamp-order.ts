import type { Reading } from '../model/bench.ts';
import type { Report } from './source.ts';

/**
 * Checks that the source stamps of a run go on as the clip does. On a timer that starts again at zero a step back is
 * taken for that only where it is the shorter way: no clip pauses for half the timer's period.
 */
export class StampOrder {
  readonly #wrapsAfterMs: number | undefined;
  readonly #report: Report;
  #run = 0;
  #lastMs = -Infinity;
  #lastCell = '';
  #seen = new Map<string, number>();

  constructor(wrapsAfterMs: number | undefined, report: Report) {
    this.#wrapsAfterMs = wrapsAfterMs;
    this.#report = report;
  }

  check({ run, line, sourceMs, shownMs, excluded, cells }: Reading): void {
    if (run !== this.#run) {
      this.#run = run;
      this.#lastMs = -Infinity;
      this.#seen = new Map();
    }
    if (sourceMs === undefined || shownMs === undefined || excluded !== undefined) return;
    const found = cells['source'] ?? '';
    const pair = `${sourceMs} ${shownMs}`;
    const before = this.#seen.get(pair);
    if (before !== undefined) {
      this.#report({ code: 'stamp-twice', line, key: 'source', found, expected: String(before) });
      return;
    }
    this.#seen.set(pair, line);
    if (this.#isBack(sourceMs))
      this.#report({ code: 'stamps-back', line, key: 'source', found, expected: this.#lastCell });
    else [this.#lastMs, this.#lastCell] = [sourceMs, found];
  }

  #isBack(sourceMs: number): boolean {
    if (sourceMs >= this.#lastMs) return false;
    return this.#wrapsAfterMs === undefined || sourceMs + this.#wrapsAfterMs - this.#lastMs > this.#wrapsAfterMs / 2;
  }
}
