import type { SourceTimer } from '../model/bench.ts';
import { LONGEST_MS, type ReadingParser } from './reading-parser.ts';
import type { Report } from './source.ts';
import { parseTime, stepsToMs, type TimerTime } from './time.ts';

/** Periods after which running clocks commonly start again at zero; common practice, no source. */
const USUAL_WRAPS = [
  { text: '60 s', ms: 60_000 },
  { text: '60 min', ms: 3_600_000 },
  { text: '24 h', ms: 86_400_000 },
];

/**
 * Readings of two timers in one picture: `source − shown`, in whole steps of the last decimal.
 *
 * On a timer that starts again at zero the difference is taken modulo its period; more than half of it
 * cannot be told from a shown time later than the source, and is taken for that.
 */
export class TimerPairs implements ReadingParser {
  readonly columns = ['source', 'shown'];
  readonly #timer: SourceTimer;
  readonly #report: Report;
  readonly #signed: boolean;
  #decimals: number | undefined;
  #mixed = false;

  /** @param signed whether the shown time may be the later one: two displays read against each other */
  constructor(timer: SourceTimer, report: Report, signed = false) {
    this.#timer = timer;
    this.#report = report;
    this.#signed = signed;
  }

  get resolutionMs(): number | undefined {
    return this.#timer.resolutionMs ?? (this.#decimals === undefined ? undefined : stepsToMs(1, this.#decimals));
  }

  parse(
    line: number,
    cells: readonly string[],
    excluded: boolean,
  ): { sourceMs?: number; shownMs?: number; latencyMs?: number } {
    const source = this.#parseCell(line, 'source', cells[1] ?? '', excluded);
    const shown = this.#parseCell(line, 'shown', cells[2] ?? '', excluded);
    if (source === undefined || shown === undefined || source.decimals !== shown.decimals) {
      return { ...(source && { sourceMs: toMs(source) }), ...(shown && { shownMs: toMs(shown) }) };
    }
    const latencyMs = this.#latencyMs(source, shown);
    if (latencyMs !== undefined) return { sourceMs: toMs(source), shownMs: toMs(shown), latencyMs };
    if (!excluded) this.#reportLater(line, cells[1] ?? '', cells[2] ?? '', toMs(shown) - toMs(source));
    return { sourceMs: toMs(source), shownMs: toMs(shown) };
  }

  #parseCell(line: number, key: string, cell: string, excluded: boolean): TimerTime | undefined {
    if (cell === '') {
      if (!excluded) this.#report({ code: 'empty-cell', line, key });
      return undefined;
    }
    const time = parseTime(cell);
    if (time === undefined) {
      this.#report({ code: 'bad-time', line, key, found: cell });
      return undefined;
    }
    this.#decimals ??= time.decimals;
    if (time.decimals !== this.#decimals) {
      if (!this.#mixed)
        this.#report({ code: 'mixed-decimals', line, key, found: cell, expected: String(this.#decimals) });
      this.#mixed = true;
      return undefined;
    }
    if (time.steps < 0) {
      if (!excluded) this.#report({ code: 'negative-value', line, key, found: cell });
      return undefined;
    }
    const wrapsAfterMs = this.#timer.wrapsAfterMs;
    if (wrapsAfterMs !== undefined && toMs(time) >= wrapsAfterMs) {
      if (!excluded)
        this.#report({ code: 'time-past-wrap', line, key, found: cell, expected: `${wrapsAfterMs / 1000} s` });
      return undefined;
    }
    return time;
  }

  /** Undefined where the shown time is later than the source. */
  #latencyMs(source: TimerTime, shown: TimerTime): number | undefined {
    const { decimals } = source;
    const steps = source.steps - shown.steps;
    const wrapsAfterMs = this.#timer.wrapsAfterMs;
    if (wrapsAfterMs === undefined) return steps < 0 && !this.#signed ? undefined : stepsToMs(steps, decimals);
    const period = Math.round(wrapsAfterMs / stepsToMs(1, decimals));
    const ahead = steps < 0 ? steps + period : steps;
    if (this.#signed) return stepsToMs(ahead > period / 2 ? ahead - period : ahead, decimals);
    return ahead > period / 2 ? undefined : stepsToMs(ahead, decimals);
  }

  #reportLater(line: number, source: string, shown: string, laterMs: number): void {
    const wrap =
      this.#timer.wrapsAfterMs === undefined && USUAL_WRAPS.find(({ ms }) => laterMs < ms && ms - laterMs < LONGEST_MS);
    if (wrap) this.#report({ code: 'timer-wrapped', line, key: 'shown', found: shown, expected: wrap.text });
    else this.#report({ code: 'shown-later', line, key: 'shown', found: shown, expected: source });
  }
}

function toMs({ steps, decimals }: TimerTime): number {
  return stepsToMs(steps, decimals);
}
