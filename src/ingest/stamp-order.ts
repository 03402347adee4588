import type { Reading } from '../model/bench.ts';
import type { Report } from './source.ts';

interface Stamps {
  readonly sourceMs: number;
  readonly shownMs: number;
  readonly line: number;
}

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
  /** The latest of the run. */
  #latestMs = -Infinity;
  /**
   * Lines by their pair of stamps; those not entered yet, since a reading later than all before is none of them again.
   */
  #seen = new Map<string, number>();
  #notEntered: Stamps[] = [];

  constructor(wrapsAfterMs: number | undefined, report: Report) {
    this.#wrapsAfterMs = wrapsAfterMs;
    this.#report = report;
  }

  check({ run, line, sourceMs, shownMs, excluded, cells }: Reading): void {
    if (run !== this.#run) {
      this.#run = run;
      this.#lastMs = -Infinity;
      this.#latestMs = -Infinity;
      this.#seen = new Map();
      this.#notEntered = [];
    }
    if (sourceMs === undefined || shownMs === undefined || excluded !== undefined) return;
    const found = cells['source'] ?? '';
    const stamps = { sourceMs, shownMs, line };
    const before = sourceMs > this.#latestMs ? undefined : this.#lineOf(stamps);
    if (before !== undefined) {
      this.#report({ code: 'stamp-twice', line, key: 'source', found, expected: String(before) });
      return;
    }
    this.#notEntered.push(stamps);
    this.#latestMs = Math.max(this.#latestMs, sourceMs);
    if (this.#isBack(sourceMs))
      this.#report({ code: 'stamps-back', line, key: 'source', found, expected: this.#lastCell });
    else [this.#lastMs, this.#lastCell] = [sourceMs, found];
  }

  #lineOf(stamps: Stamps): number | undefined {
    for (const earlier of this.#notEntered) this.#seen.set(pairOf(earlier), earlier.line);
    this.#notEntered = [];
    return this.#seen.get(pairOf(stamps));
  }

  #isBack(sourceMs: number): boolean {
    if (sourceMs >= this.#lastMs) return false;
    return this.#wrapsAfterMs === undefined || sourceMs + this.#wrapsAfterMs - this.#lastMs > this.#wrapsAfterMs / 2;
  }
}

function pairOf({ sourceMs, shownMs }: Stamps): string {
  return `${sourceMs} ${shownMs}`;
}
