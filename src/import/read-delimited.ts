import { CsvError, parse } from 'csv-parse/sync';
import { ImportError } from './mistakes.ts';
import type { Book, Cell } from './sheet.ts';

export interface DelimitedOptions {
  readonly separator?: string | undefined;
  readonly encoding?: string | undefined;
}

export const SEPARATORS: Readonly<Record<string, string>> = { comma: ',', semicolon: ';', tab: '\t', bar: '|' };
const NAMES: Readonly<Record<string, string>> = { comma: 'commas', semicolon: 'semicolons', tab: 'tabs', bar: 'bars' };

/** Text in columns, once for each character that may separate them: which one does is told by where the columns are found. */
export function readDelimited(bytes: Uint8Array, options: DelimitedOptions): readonly Book[] {
  const text = decode(bytes, options.encoding);
  const books = Object.entries(SEPARATORS)
    .filter(([name, separator]) => (options.separator ?? name) === name && text.includes(separator))
    .flatMap(([name, separator]): Book[] => {
      const rows = split(text, separator);
      return rows === undefined ? [] : [{ kind: `text with ${NAMES[name]}`, separator: name, ...asBook(rows) }];
    });
  if (books.length > 0) return books;
  throw fail(
    'has no columns. Save it with semicolons, commas or tabs between them, or say which character stands there with --separator',
  );
}

function asBook(rows: readonly (readonly string[])[]): Omit<Book, 'kind'> {
  return {
    date1904: false,
    isText: true,
    sheets: [
      {
        name: '',
        rows: rows.map((cells) =>
          cells.map((cell): Cell | undefined => (cell.trim() === '' ? undefined : { kind: 'text', text: cell.trim() })),
        ),
        hiddenRows: [],
        isHidden: false,
        merged: new Map(),
      },
    ],
  };
}

function decode(bytes: Uint8Array, encoding: string | undefined): string {
  const bom =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? 'utf-16le'
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? 'utf-16be'
        : undefined;
  try {
    return new TextDecoder(encoding ?? bom ?? 'utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (error instanceof RangeError)
      throw fail(`--encoding ${encoding} is none that is known, such as utf-8 or windows-1252`);
    throw fail(
      encoding === undefined
        ? 'is no UTF-8 text. Say how its letters are stored, for example --encoding windows-1252, or save it as UTF-8'
        : `is no text in ${encoding}. Say another --encoding, or save it as UTF-8`,
    );
  }
}

/** Every line in its place, empty ones too; undefined where its quotes do not fit this separator. */
function split(text: string, delimiter: string): readonly (readonly string[])[] | undefined {
  try {
    return parse(text, { delimiter, relax_column_count: true, record_delimiter: ['\r\n', '\n', '\r'], bom: true });
  } catch (error) {
    if (error instanceof CsvError) return undefined;
    throw error;
  }
}

function fail(says: string): ImportError {
  return new ImportError([{ where: '', says }]);
}
