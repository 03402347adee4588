import { read, utils, type CellObject, type WorkSheet } from '@e965/xlsx';
import { unzipSync } from 'fflate';
import { readOds } from 'hucre/ods';
import { ImportError } from './mistakes.ts';
import { readDelimited, type DelimitedOptions } from './read-delimited.ts';
import { cellName, type Book, type Cell, type Sheet } from './sheet.ts';

/** More rows than anybody types; what has more is no list of readings. */
const MOST_ROWS = 20_000;

/**
 * The sheets of a file, told by what it holds and not by its name: an Excel workbook, an OpenDocument spreadsheet, or text,
 * which may be split in several ways. Both libraries are needed: each loses digits of times in the other's format.
 * Throws an ImportError where it is none of them.
 */
export async function readBook(bytes: Uint8Array, options: DelimitedOptions): Promise<readonly Book[]> {
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, 4));
  const isZip = start.startsWith('PK\u0003\u0004');
  const isCompound = start.startsWith('\u00d0\u00cf\u0011\u00e0');
  if (!isZip && !isCompound) return readDelimited(bytes, options);
  const book = await readWorkbook(bytes, isZip && isOpenDocument(bytes));
  // one that is cut would look whole
  const long = book.sheets.find(({ rows }) => rows.length > MOST_ROWS);
  if (long !== undefined)
    throw new ImportError([
      {
        where: long.name,
        says: `has more than ${MOST_ROWS} rows, which no list of readings has. Take out what is not part of it, or split it`,
      },
    ]);
  return [book];
}

/**
 * Whether a zip archive holds the content of an OpenDocument package (OpenDocument 1.3, part 2). Its `mimetype` need
 * not come first: archives that were packed again have it anywhere.
 */
function isOpenDocument(bytes: Uint8Array): boolean {
  const names: string[] = [];
  try {
    unzipSync(bytes, {
      filter: ({ name }) => {
        names.push(name);
        return false;
      },
    });
  } catch {
    // what is no archive at all is told by the reader of workbooks
    return false;
  }
  return names.includes('content.xml') && !names.includes('[Content_Types].xml');
}

async function readWorkbook(bytes: Uint8Array, isOpen: boolean): Promise<Book> {
  try {
    return isOpen ? await readOpenDocument(bytes) : readExcel(bytes);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new ImportError([
      {
        where: '',
        says: `cannot be read as a workbook (${why}). Open it in the program that it comes from, without a password, and save it as .xlsx, .ods or .csv`,
      },
    ]);
  }
}

function readExcel(bytes: Uint8Array): Book {
  const book = read(bytes, {
    type: 'array',
    cellNF: true,
    cellFormula: true,
    cellStyles: true,
    cellHTML: false,
    cellDates: false,
    sheetRows: MOST_ROWS + 1,
  });
  return {
    kind: 'Excel workbook',
    date1904: book.Workbook?.WBProps?.date1904 === true,
    isText: false,
    sheets: book.SheetNames.flatMap((name, at): Sheet[] => {
      const sheet = book.Sheets[name];
      // a sheet that is only a chart has no cells
      if (sheet === undefined || sheet['!ref'] === undefined) return [];
      return [{ ...excelSheet(sheet), name, isHidden: (book.Workbook?.Sheets?.[at]?.Hidden ?? 0) !== 0 }];
    }),
  };
}

function excelSheet(sheet: WorkSheet): Omit<Sheet, 'name' | 'isHidden'> {
  const { e: end } = utils.decode_range(sheet['!ref'] ?? 'A1');
  const rows = Array.from({ length: end.r + 1 }, (_, row) =>
    Array.from({ length: end.c + 1 }, (_cell, column) => excelCell(sheet[cellName(row, column)])),
  );
  const merged = new Map<string, string>();
  for (const { s: from, e: to } of sheet['!merges'] ?? []) {
    for (let row = from.r; row <= to.r; row += 1)
      for (let column = from.c; column <= to.c; column += 1)
        if (row !== from.r || column !== from.c) merged.set(cellName(row, column), cellName(from.r, from.c));
  }
  const hiddenRows = (sheet['!rows'] ?? []).flatMap((row, at) => (row?.hidden === true ? [at + 1] : []));
  return { rows, merged, hiddenRows };
}

function excelCell(cell: CellObject | undefined): Cell | undefined {
  if (cell === undefined) return undefined;
  const formula = cell.f === undefined ? {} : { formula: cell.f };
  if (cell.t === 'n' && typeof cell.v === 'number')
    return { kind: 'number', value: cell.v, format: String(cell.z ?? 'General'), ...formula };
  if (cell.t === 'b') return { kind: 'flag', value: cell.v === true, ...formula };
  if (cell.t === 'e') return { kind: 'error', text: cell.w ?? 'an error', ...formula };
  if (cell.t === 's' && typeof cell.v === 'string')
    return cell.v.trim() === '' ? undefined : { kind: 'text', text: cell.v.trim(), ...formula };
  return cell.f === undefined
    ? undefined
    : { kind: 'error', text: 'a formula without a stored value', formula: cell.f };
}

async function readOpenDocument(bytes: Uint8Array): Promise<Book> {
  const { sheets } = await readOds(bytes);
  return {
    kind: 'OpenDocument spreadsheet',
    date1904: false,
    isText: false,
    sheets: sheets.map((sheet): Sheet => {
      const merged = new Map<string, string>();
      for (const { startRow, startCol, endRow, endCol } of sheet.merges ?? []) {
        for (let row = startRow; row <= endRow; row += 1)
          for (let column = startCol; column <= endCol; column += 1)
            if (row !== startRow || column !== startCol)
              merged.set(cellName(row, column), cellName(startRow, startCol));
      }
      return {
        name: sheet.name,
        rows: sheet.rows.map((cells, row) =>
          cells.map((value, column) => openCell(value, sheet.cells?.get(`${row},${column}`)?.formula)),
        ),
        hiddenRows: [],
        isHidden: sheet.hidden === true,
        merged,
      };
    }),
  };
}

function openCell(value: unknown, computedWith: string | undefined): Cell | undefined {
  const formula = computedWith === undefined ? {} : { formula: computedWith };
  if (typeof value === 'number') return { kind: 'number', value, format: 'General', ...formula };
  if (typeof value === 'boolean') return { kind: 'flag', value, ...formula };
  if (value instanceof Date) return { kind: 'day', text: value.toISOString().slice(0, -1), ...formula };
  if (typeof value !== 'string' || value.trim() === '') return undefined;
  const text = value.trim();
  if (/^-?PT[\dHMS.]+$/.test(text)) return { kind: 'duration', text, ...formula };
  return /^#[A-Z/0!?]+|^Err:\d+$/.test(text) ? { kind: 'error', text, ...formula } : { kind: 'text', text, ...formula };
}
