/** A table of the data package: its columns say what stands in them, once for CSV, CSVW and Table Schema. */
import { renderCsv } from '../model/csv-text.ts';

export type Cell = string | number | boolean | undefined;
export type Datatype = 'string' | 'number' | 'integer' | 'boolean' | 'date';

export interface Column<Row> {
  /** Lower-case words with underscores. */
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly datatype: Datatype;
  readonly required?: boolean;
  readonly of: (row: Row) => Cell;
}

export interface Table {
  /** File beside the others: `figures.csv`. */
  readonly file: string;
  readonly title: string;
  readonly description: string;
  readonly columns: readonly Omit<Column<never>, 'of'>[];
  readonly primaryKey: readonly string[];
  /** Columns of this table that name rows of another. */
  readonly references: readonly { readonly column: string; readonly file: string; readonly to: string }[];
  readonly csv: string;
}

export function tableOf<Row>(
  facts: Omit<Table, 'columns' | 'csv'>,
  columns: readonly Column<Row>[],
  rows: readonly Row[],
): Table {
  return {
    ...facts,
    columns: columns.map(({ of, ...column }) => column),
    csv: renderCsv(
      columns.map(({ name }) => name),
      rows.map((row) => columns.map(({ of }) => render(of(row)))),
    ),
  };
}

/** Numbers to the last digit; endless ones as XML Schema and Table Schema write them. */
function render(cell: Cell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : cell > 0 ? 'INF' : '-INF';
  return String(cell);
}
