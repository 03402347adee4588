/**
 * A readings file as text, changed in some rows: every other row stays as it is, byte for byte.
 *
 * Rows are found as RFC 4180 says, so that a line break inside quotes ends none.
 */
import { parse } from 'csv-parse/sync';
import { inQuotes, quoteCell } from '../model/csv-text.ts';

interface Row {
  /** 1-based line on which it starts. */
  readonly line: number;
  /** With its line ending; the last may have none. */
  readonly text: string;
}

/** The text with a row more: after the last of its run, or at the end where it is the first of a run. */
export function addRow(text: string, cells: readonly string[]): string {
  const rows = splitRows(text);
  const filled = rows.filter((row) => bare(row) !== '');
  const after = filled.findLast((row) => firstCell(row) === cells[0]) ?? filled.at(-1);
  const ending = endingOf(rows);
  return rows
    .flatMap((row) => (row === after ? [ended(row.text, ending), renderRow(cells) + ending] : [row.text]))
    .join('');
}

/** The text with other cells in the row that starts on a line; undefined where none does. */
export function replaceRow(text: string, line: number, cells: readonly string[]): string | undefined {
  const rows = splitRows(text);
  const old = rows.find((row) => row.line === line && bare(row) !== '' && line > 1);
  if (old === undefined) return undefined;
  const ending = old.text.slice(bare(old).length);
  return rows.map((row) => (row === old ? renderRow(cells) + ending : row.text)).join('');
}

/** New cells by the line on which their row starts, then by column. */
export type CellEdits = ReadonlyMap<number, Readonly<Record<string, string>>>;

/** The text with these cells. It is taken to be one that a build accepts, with a row on every line that is named. */
export function replaceCells(text: string, edits: CellEdits): string {
  const rows = splitRows(text);
  const columns = rows[0] === undefined ? [] : cellsOf(rows[0]);
  return rows
    .map((row) => {
      const edit = edits.get(row.line);
      if (edit === undefined) return row.text;
      const cells = cellsOf(row);
      const ending = row.text.slice(bare(row).length);
      return renderRow(columns.map((column, at) => edit[column] ?? cells[at] ?? '')) + ending;
    })
    .join('');
}

/** Blanks at an end stand in quotes too, so that they are seen. */
function renderRow(cells: readonly string[]): string {
  return cells.map((cell) => (/^\s|\s$/.test(cell) ? inQuotes(cell) : quoteCell(cell))).join(',');
}

function splitRows(text: string): readonly Row[] {
  const rows: Row[] = [];
  let [start, line, startLine, isQuoted] = [0, 1, 1, false];
  for (let at = 0; at < text.length; at += 1) {
    const char = text[at];
    if (char === '"') isQuoted = !isQuoted;
    if (char !== '\n' && char !== '\r') continue;
    if (char === '\r' && text[at + 1] === '\n') at += 1;
    line += 1;
    if (isQuoted) continue;
    rows.push({ line: startLine, text: text.slice(start, at + 1) });
    [start, startLine] = [at + 1, line];
  }
  return start < text.length ? [...rows, { line: startLine, text: text.slice(start) }] : rows;
}

function bare({ text }: Row): string {
  return text.replace(/(?:\r\n|\n|\r)$/, '');
}

function cellsOf(row: Row): readonly string[] {
  return parse(bare(row))[0] ?? [];
}

function firstCell(row: Row): string {
  return (bare(row).split(',')[0] ?? '').replaceAll('"', '');
}

function endingOf([header]: readonly Row[]): string {
  return header?.text.slice(bare(header).length) || '\n';
}

function ended(text: string, ending: string): string {
  return /[\r\n]$/.test(text) ? text : text + ending;
}
