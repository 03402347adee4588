import { findTable, NEEDED, placeIn, type ColumnOptions, type Table } from './columns.ts';
import { ImportError } from './mistakes.ts';
import { describeCell, type Book, type Sheet } from './sheet.ts';

export interface Chosen {
  readonly book: Book;
  readonly table: Table;
}

/** Rows shown where no headings were found. */
const SHOWN_ROWS = 3;

/** The one table of readings; throws an ImportError that names the option where there is none, or several. */
export function chooseTable(books: readonly Book[], sheetName: string | undefined, options: ColumnOptions): Chosen {
  const found = books.flatMap((book) =>
    sheetsOf(book, sheetName).flatMap((sheet): Chosen[] => {
      const table = findTable(sheet, options);
      return table === undefined ? [] : [{ book, table }];
    }),
  );
  const [first, ...others] = found;
  if (first === undefined) throw noTable(books, sheetName, options);
  if (others.length === 0) return first;
  const isText = first.book.isText;
  const choices = found.map(({ book, table }) =>
    isText ? `--separator ${book.separator}` : `--sheet "${table.sheet.name}"`,
  );
  throw new ImportError([
    {
      where: '',
      says: `holds readings ${isText ? 'by several separators' : 'on several sheets'}. Say which: ${choices.join(' or ')}`,
    },
  ]);
}

function sheetsOf(book: Book, name: string | undefined): readonly Sheet[] {
  if (name === undefined) return book.sheets;
  const sheets = book.sheets.filter((sheet) => sheet.name === name);
  if (sheets.length > 0) return sheets;
  const names = book.sheets.map((sheet) => `'${sheet.name}'`).join(', ');
  throw new ImportError([{ where: '', says: `has no sheet '${name}'; it has ${names}` }]);
}

function noTable(
  books: readonly Book[],
  sheetName: string | undefined,
  { method, headingRow }: ColumnOptions,
): ImportError {
  const needed = NEEDED[method];
  const example = needed.map((role) => `--column ${role}=HEADING`).join(' ');
  const sheets = books.flatMap((book) => sheetsOf(book, sheetName));
  const where = headingRow === undefined ? 'no row has' : `row ${headingRow} has not`;
  const rows = sheets.slice(0, SHOWN_ROWS).flatMap((sheet) =>
    sheet.rows
      .map((cells, row) => ({ row, texts: cells.map(describeCell).filter((text) => text !== '') }))
      .filter(({ texts }) => texts.length > 1)
      .slice(0, SHOWN_ROWS)
      .map(({ row, texts }) => `${placeIn(sheet.name, `row ${row + 1}`)}: ${texts.join(' | ')}`),
  );
  return new ImportError([
    {
      where: '',
      says: `${where} the headings ${needed.join(' and ')}. Say what stands where: ${example}, with a heading or the letter of a column; --heading-row 0 where there are no headings. It holds\n  ${rows.join('\n  ')}\n`,
    },
  ]);
}
