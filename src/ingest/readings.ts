import type { MethodId, Reading, Rig } from '../model/bench.ts';
import { parseCsv } from './csv.ts';
import { parseFrames, parseLatencies } from './number-readings.ts';
import { LONGEST_MS, type ReadingParser } from './reading-parser.ts';
import { hasInvisible } from './fields.ts';
import { isReason } from './reasons.ts';
import { RowReports } from './row-reports.ts';
import { RunCounter } from './run-counter.ts';
import type { Report, Source } from './source.ts';
import { StampOrder } from './stamp-order.ts';
import { TimerPairs } from './timer-pairs.ts';

export interface Readings {
  readonly readings: readonly Reading[];
  /** Step of the last digit that counts, in the source timer's values. */
  readonly resolutionMs?: number;
}

/**
 * Parses a readings file, row by row, in the form that the method has. Undefined, with the mistakes reported,
 * when it cannot be read at all; without readings only where it `mayBeEmpty`; where it is `signed`, the shown time may
 * be later than the source; a mistake in a row is reported and the row goes on, since the build stops anyway.
 */
export function parseReadings(
  { bytes, report: reportHere }: Source,
  method: MethodId,
  rig: Rig,
  mayBeEmpty = false,
  signed = false,
): Readings | undefined {
  const gathered = new RowReports(reportHere);
  const report = gathered.add;
  const parser = parserOf(method, rig, report, signed);
  if (parser === undefined) return undefined;
  const columns = ['run', ...parser.columns, 'exclude', 'note'];
  const [excludeAt, noteAt] = [columns.length - 2, columns.length - 1];
  const runs = new RunCounter(report);
  const order = new StampOrder(rig.sourceTimer?.wrapsAfterMs, report);
  const readings: Reading[] = [];
  let counted = 0;
  const rows = parseCsv(bytes, columns, report, ({ line, cells }) => {
    const run = runs.parse(line, cells[0] ?? '');
    const exclude = cells[excludeAt] ?? '';
    const note = cells[noteAt] ?? '';
    if (exclude === '') counted += 1;
    else reportReason(line, exclude, note, report);
    const reading: { -readonly [K in keyof Reading]: Reading[K] } = {
      line,
      run,
      ...parser.parse(line, cells, exclude !== ''),
      cells: nameCells(columns, cells),
    };
    if (exclude !== '') reading.excluded = exclude;
    if (note !== '') reading.note = note;
    if (reading.latencyMs !== undefined && Math.abs(reading.latencyMs) > LONGEST_MS && exclude === '') {
      report({
        code: 'too-long',
        line,
        found: `${Math.abs(reading.latencyMs) / 1000} s`,
        expected: `${LONGEST_MS / 1000} s`,
      });
    }
    if (run > 0) order.check(reading);
    readings.push(Object.freeze(reading));
  });
  gathered.flush();
  if (rows === undefined) return undefined;
  if (rows === 0 && !mayBeEmpty) reportHere({ code: 'no-readings' });
  else if (counted === 0 && rows > 0 && readings.length === rows) reportHere({ code: 'no-counted-reading' });
  return { readings, ...(parser.resolutionMs === undefined ? {} : { resolutionMs: parser.resolutionMs }) };
}

function reportReason(line: number, exclude: string, note: string, report: Report): void {
  const here = { line, key: 'exclude', found: exclude };
  if (hasInvisible(exclude) && exclude.replace(/[^\p{L}\p{N}]/gu, '') === '')
    report({ code: 'invisible-character', ...here });
  else if (exclude.trim() === '') report({ code: 'blank-reason', line, key: 'exclude' });
  else if (!isReason(exclude)) report({ code: 'no-reason', ...here });
  else if (/^\s/.test(note)) report({ code: 'reason-with-comma', line, key: 'note', found: note });
}

function parserOf(method: MethodId, rig: Rig, report: Source['report'], signed: boolean): ReadingParser | undefined {
  if (method === 'two-timers') return rig.sourceTimer && new TimerPairs(rig.sourceTimer, report, signed);
  if (method === 'frame-count') return rig.observer && parseFrames(rig.observer.rate, report);
  return parseLatencies(report);
}

function nameCells(columns: readonly string[], cells: readonly string[]): Readonly<Record<string, string>> {
  const named: Record<string, string> = {};
  for (let at = 0; at < columns.length; at += 1) named[columns[at] ?? ''] = cells[at] ?? '';
  return Object.freeze(named);
}
