/**
 * A workbook → the readings of one session, with every conversion by name:
 *
 *     bytes → sheets → one table → rows → clips, times, reasons → rows of a session
 *
 * Pure. What cannot be known is a mistake that names the option which settles it; nothing is guessed in silence.
 */
import { isReason } from '../ingest/reasons.ts';
import type { AmountOptions } from './amounts.ts';
import { chooseTable } from './choose-table.ts';
import { cellAt, numberClips, type ClipManner } from './clips.ts';
import { NEEDED, placeIn, type ColumnOptions, type Role, type Table } from './columns.ts';
import { ImportError, type ImportMistake } from './mistakes.ts';
import { cellName, columnName, describeCell, type Book, type Cell } from './sheet.ts';
import { convertTimes, type PlacedCell, type Times } from './times.ts';

export interface ImportOptions extends ColumnOptions, AmountOptions {
  readonly sheet?: string | undefined;
  /** 1-based, both included. */
  readonly rows?: readonly [from: number, to: number] | undefined;
  readonly clips?: ClipManner | undefined;
  /** What stands for marks under `exclude` that say no reason. */
  readonly reason?: string | undefined;
  /** Whether readings may be computed by the workbook. */
  readonly computed?: boolean | undefined;
}

export interface UnderstoodRow {
  /** 1-based row of the sheet. */
  readonly row: number;
  readonly run: number;
  /** Of the columns that the method needs: as found and as taken. */
  readonly values: readonly { readonly found: string; readonly taken: string }[];
  readonly exclude: string;
  readonly note: string;
}

export interface Understood {
  readonly book: Book;
  readonly table: Table;
  readonly rows: readonly UnderstoodRow[];
  readonly conversions: readonly string[];
}

export function understand(books: readonly Book[], options: ImportOptions): Understood {
  const { book, table } = chooseTable(books, options.sheet, options);
  const { rows, conversions: leftOut } = rowsOf(table, options);
  if (rows.length === 0)
    throw new ImportError([{ where: placeIn(table.sheet.name), says: 'no readings stand below the headings' }]);
  const clips = numberClips(table.sheet, table.columns.get('run'), rows, options.clips);
  const values = valuesOf(table, book, rows, options);
  const reasons = reasonsOf(table, rows, options.reason);
  const mistakes = [
    ...computedCells(table, rows, options.computed === true),
    ...clips.mistakes,
    ...values.mistakes,
    ...reasons.mistakes,
  ];
  if (mistakes.length > 0) throw new ImportError(mistakes);
  const textOf = (row: number, role: Role): string => describeCell(cellAt(table.sheet, row, table.columns.get(role)));
  return {
    book,
    table,
    conversions: [...leftOut, ...clips.conversions, ...values.conversions, ...reasons.conversions],
    rows: rows.map((row) => ({
      row: row + 1,
      run: clips.runs.get(row) ?? 1,
      values: NEEDED[table.method].map((role) => {
        const cell = cellAt(table.sheet, row, table.columns.get(role));
        return { found: describeCell(cell), taken: (cell && values.texts.get(cell)) ?? '' };
      }),
      exclude: reasons.texts.get(row) ?? '',
      note: textOf(row, 'note'),
    })),
  };
}

/** Rows that hold a reading, or say why there is none; what else stands below the headings is named. */
function rowsOf(
  table: Table,
  { rows: said }: ImportOptions,
): { rows: readonly number[]; conversions: readonly string[] } {
  const { sheet, columns, headingRow, method } = table;
  const [from, to] = said ?? [headingRow + 2, sheet.rows.length];
  const rows: number[] = [];
  const conversions: string[] = [];
  for (let row = Math.max(from - 1, headingRow + 1); row < Math.min(to, sheet.rows.length); row += 1) {
    const filled = (sheet.rows[row] ?? []).some((cell) => cell !== undefined);
    const holds = [...NEEDED[method], 'exclude' as const].some(
      (role) => cellAt(sheet, row, columns.get(role)) !== undefined,
    );
    if (holds) rows.push(row);
    else if (filled) conversions.push(`row ${row + 1} not read, it holds no reading: ${rowText(table, row)}`);
  }
  const hidden = sheet.hiddenRows.filter((row) => rows.includes(row - 1));
  if (hidden.length > 0) conversions.push(`hidden rows read too: ${hidden.join(', ')}`);
  if (sheet.isHidden) conversions.push('the sheet is hidden in the workbook');
  if (said !== undefined) conversions.push(`only rows ${from} to ${to} read, as --rows says`);
  return { rows, conversions };
}

function rowText({ sheet }: Table, row: number): string {
  const texts = (sheet.rows[row] ?? []).map(describeCell).filter((text) => text !== '');
  return texts.join(' | ').slice(0, 80);
}

/** A sum or an average below the readings looks like one of them. */
function computedCells(
  { sheet, columns, method }: Table,
  rows: readonly number[],
  mayBe: boolean,
): readonly ImportMistake[] {
  if (mayBe) return [];
  return NEEDED[method].flatMap((role) =>
    rows.flatMap((row): ImportMistake[] => {
      const at = columns.get(role) ?? 0;
      if (cellAt(sheet, row, at)?.formula === undefined) return [];
      return [
        {
          where: placeIn(sheet.name, cellName(row, at)),
          says: 'is computed by a formula, and a reading is typed. Leave such rows out with --rows FROM-TO; or say --computed if it is what was read',
        },
      ];
    }),
  );
}

function valuesOf(table: Table, book: Book, rows: readonly number[], options: ImportOptions): Times {
  const { sheet, columns, method } = table;
  const mistakes: ImportMistake[] = [];
  const cells = NEEDED[method].flatMap((role) =>
    rows.flatMap((row): PlacedCell[] => {
      const at = columns.get(role) ?? 0;
      const [cell, where] = [cellAt(sheet, row, at), placeIn(sheet.name, cellName(row, at))];
      if (cell !== undefined) return [{ cell, where }];
      if (cellAt(sheet, row, columns.get('exclude')) === undefined)
        mistakes.push({
          where,
          says: `is empty, and the row has no reason under exclude. Fill it in, or leave the row out with --rows FROM-TO`,
        });
      return [];
    }),
  );
  if (book.isText) mistakes.push(...tooWide(table, rows));
  if (mistakes.length > 0) return { texts: new Map(), conversions: [], mistakes };
  return method === 'two-timers' ? convertTimes(cells, book.date1904, options) : plainValues(cells, method, options);
}

/** More cells than headings: most likely a decimal comma that was taken for the end of a cell. */
function tooWide({ sheet, headingRow, columns }: Table, rows: readonly number[]): readonly ImportMistake[] {
  const width = Math.max(sheet.rows[headingRow]?.length ?? 0, ...[...columns.values()].map((at) => at + 1));
  return rows
    .filter((row) => (sheet.rows[row] ?? []).slice(width).some((cell) => cell !== undefined))
    .map((row) => ({
      where: placeIn(sheet.name, `row ${row + 1}`),
      says: `has more cells than the ${width} columns that have a heading. Where a decimal comma was taken for a separator, save the file with semicolons`,
    }));
}

/** Counted frames and latencies stay the numbers that they are. */
function plainValues(cells: readonly PlacedCell[], method: Table['method'], options: ImportOptions): Times {
  const texts = new Map<Cell, string>();
  const mistakes: ImportMistake[] = [];
  const conversions = new Set<string>();
  for (const { cell, where } of cells) {
    const found = describeCell(cell);
    const isComma = cell.kind === 'text' && /^\d+,\d+$/.test(found);
    const says = plainMistake(cell, isComma, method, options);
    if (says !== undefined) mistakes.push({ where, says });
    else texts.set(cell, isComma ? found.replace(',', '.') : found);
    if (isComma) conversions.add('decimal commas made points');
  }
  return { texts, mistakes, conversions: [...conversions] };
}

function plainMistake(
  cell: Cell,
  isComma: boolean,
  method: Table['method'],
  { decimal, unit }: ImportOptions,
): string | undefined {
  const found = describeCell(cell);
  const asksMark = isComma && decimal !== 'comma';
  const asksUnit = method === 'instrument' && unit === undefined;
  if (asksMark)
    return `holds '${found}'. Say whether its comma stands before decimals: --decimal comma${asksUnit ? '; and that it counts milliseconds: --unit ms' : ''}`;
  if ((cell.kind !== 'number' && cell.kind !== 'text') || (!isComma && !/^\d+(?:\.\d+)?$/.test(found)))
    return `holds '${found}', no number such as ${method === 'instrument' ? '163.4' : '12'}`;
  if (method !== 'instrument' || unit === 'ms') return undefined;
  return asksUnit
    ? 'holds a plain number. Say that it counts milliseconds: --unit ms'
    : 'counts seconds, and latencies are written in milliseconds. Convert it in the workbook';
}

interface Reasons {
  readonly texts: ReadonlyMap<number, string>;
  readonly conversions: readonly string[];
  readonly mistakes: readonly ImportMistake[];
}

function reasonsOf({ sheet, columns }: Table, rows: readonly number[], reason: string | undefined): Reasons {
  const at = columns.get('exclude');
  const texts = new Map<number, string>();
  const mistakes: ImportMistake[] = [];
  let marks = 0;
  for (const row of rows) {
    const cell = cellAt(sheet, row, at);
    const text = describeCell(cell);
    if (cell === undefined || (cell.kind === 'flag' && !cell.value)) continue;
    if (isReason(text) && cell.kind === 'text') texts.set(row, text);
    else if (reason === undefined)
      mistakes.push({
        where: placeIn(sheet.name, `${columnName(at ?? 0)}${row + 1}`),
        says: `'${text}' does not say why the reading is left out. Write the reason there, or say it once for all such marks: --reason "digits overlap"`,
      });
    else {
      texts.set(row, reason);
      marks += 1;
    }
  }
  const conversions =
    marks === 0 ? [] : [`${marks} ${marks === 1 ? 'mark' : 'marks'} under exclude: written as '${reason}'`];
  return { texts, conversions, mistakes };
}
