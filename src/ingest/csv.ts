import { CsvError, parse } from 'csv-parse/sync';
import { nearest } from './nearest.ts';
import { tally, type Report } from './source.ts';

/** One record of an RFC 4180 file. */
export interface CsvRow {
  /** 1-based line on which it starts. */
  readonly line: number;
  readonly cells: readonly string[];
}

const LINE_ENDS = ['\r\n', '\n', '\r'];
const LINE_BREAK = /\r\n|\r|\n/g;
const OTHER_SEPARATORS = [';', '\t', '|'];

/**
 * Calls `onRow` for each record under the header, and returns how many there were; undefined, with the
 * mistakes reported, when the file is not comma-separated or its columns are not exactly `columns`.
 *
 * Lines are counted here: csv-parse counts a CRLF inside quotes twice (seen in 7.0.3), and its `info` per
 * record costs more than the parsing. Every record is one line more than the line breaks in its cells.
 */
export function parseCsv(
  bytes: Uint8Array,
  columns: readonly string[],
  report: Report,
  onRow: (row: CsvRow) => void,
): number | undefined {
  const records = parseRecords(bytes, columns, report);
  const header = records?.[0];
  if (records === undefined || header === undefined || !checkHeader(header, columns, report)) return undefined;
  const end = lastFilled(records) + 1;
  let line = 1 + lineBreaks(header);
  for (let at = 1; at < end; at += 1) {
    const cells = records[at] ?? [];
    line += 1;
    if (cells.length === columns.length && !cells.every(isEmpty)) onRow({ line, cells });
    else if (isSeparatedOtherwise(cells)) {
      report({ code: 'wrong-delimiter', line, found: separatorIn(cells[0] ?? '') ?? '' });
      return undefined;
    } else if (cells.every(isEmpty)) report({ code: 'blank-row', line });
    else report({ code: 'ragged-row', line, found: String(cells.length), expected: String(columns.length) });
    line += lineBreaks(cells);
  }
  return end - 1;
}

function parseRecords(bytes: Uint8Array, columns: readonly string[], report: Report): string[][] | undefined {
  const text = new TextDecoder().decode(bytes);
  // with three ends of lines to look for at every character, it takes twice the time
  const options = { record_delimiter: text.includes('\r') ? LINE_ENDS : '\n', relax_column_count: true };
  try {
    return parse(text, options);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const before = Number(error['records'] ?? 0);
    const records = before > 0 ? parse(text, { ...options, to: before }) : [];
    // quotes go wrong easily in a file that has other separators; then that is the mistake to report
    if (records[0] !== undefined && !checkHeader(records[0], columns, report)) return undefined;
    const line = records.reduce((lines, cells) => lines + 1 + lineBreaks(cells), 1);
    report({ code: error.code === 'CSV_QUOTE_NOT_CLOSED' ? 'unclosed-quote' : 'stray-quote', line });
    return undefined;
  }
}

function checkHeader(header: readonly string[], columns: readonly string[], report: Report): boolean {
  const separator = OTHER_SEPARATORS.find((char) => header.some((name) => name.includes(char)));
  if (separator !== undefined) {
    report({ code: 'wrong-delimiter', line: 1, found: separator });
    return false;
  }
  const expected = columns.join(',');
  const missing = new Set(columns.filter((name) => !header.includes(name)));
  const mistakes = tally(report);
  const mistake: Report = (problem) => mistakes.report({ line: 1, expected, ...problem });
  header.forEach((name, index) => {
    if (header.indexOf(name) < index) mistake({ code: 'duplicate-column', found: name });
    else if (!columns.includes(name)) {
      const likely = nearest(name, [...missing]);
      if (likely[0] !== undefined) missing.delete(likely[0]);
      mistake({ code: 'unknown-column', found: name, nearest: likely });
    }
  });
  for (const name of missing) mistake({ code: 'missing-column', key: name });
  if (mistakes.count() === 0 && header.join(',') !== expected) mistake({ code: 'column-order' });
  return mistakes.count() === 0;
}

/** A row in which another separator stands for most of the commas. */
function isSeparatedOtherwise(cells: readonly string[]): boolean {
  return cells.length <= 2 && separatorIn(cells[0] ?? '') !== undefined;
}

function separatorIn(text: string): string | undefined {
  return OTHER_SEPARATORS.find((char) => text.includes(char));
}

/** Index of the last record that is not a blank line. */
function lastFilled(records: readonly (readonly string[])[]): number {
  let last = records.length - 1;
  while (last > 0 && records[last]?.length === 1 && records[last]?.[0] === '') last -= 1;
  return last;
}

function isEmpty(cell: string): boolean {
  return cell === '';
}

function lineBreaks(cells: readonly string[]): number {
  let breaks = 0;
  for (const cell of cells) {
    if (cell.includes('\n') || cell.includes('\r')) breaks += cell.match(LINE_BREAK)?.length ?? 0;
  }
  return breaks;
}
