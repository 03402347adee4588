/** Other cells in a readings file, row by row. */
import { quoteCell } from '../model/csv-text.ts';
import { parseCsv } from './csv.ts';

/** New cells by line, then by column. */
export type ReadingEdits = ReadonlyMap<number, Readonly<Record<string, string>>>;

/** The readings file with these cells. It is taken to be one that `parseCsv` accepts. */
export function correctReadings(bytes: Uint8Array, edits: ReadingEdits): Uint8Array {
  const [header = ''] = new TextDecoder().decode(bytes).split(/\r\n|\r|\n/, 1);
  const columns = header.split(',');
  const rows: string[] = [header];
  parseCsv(
    bytes,
    columns,
    ({ line, code }) => {
      throw new Error(`line ${line} of a readings file cannot be edited: ${code}`);
    },
    ({ line, cells }) => {
      const edit = edits.get(line) ?? {};
      rows.push(columns.map((column, at) => quoteCell(edit[column] ?? cells[at] ?? '')).join(','));
    },
  );
  return new TextEncoder().encode(`${rows.join('\n')}\n`);
}
