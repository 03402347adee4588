/** A sheet as it was read: every cell with what is stored in it, and nothing interpreted. */

export type Cell = (
  | { readonly kind: 'text'; readonly text: string }
  /** `format` is the code in which it is shown, as in ECMA-376-1, 18.8.30: `mm:ss.000`. */
  | { readonly kind: 'number'; readonly value: number; readonly format: string }
  /** A time of day or duration that the file states as such, as `PT00H00M31.482S`. */
  | { readonly kind: 'duration'; readonly text: string }
  /** A day that the file states as such, with the time that follows it. */
  | { readonly kind: 'day'; readonly text: string }
  | { readonly kind: 'flag'; readonly value: boolean }
  | { readonly kind: 'error'; readonly text: string }
) & {
  /** What it was computed with, where it was. */
  readonly formula?: string;
};

export interface Sheet {
  readonly name: string;
  /** From the first row and column on; what is empty is undefined. */
  readonly rows: readonly (readonly (Cell | undefined)[])[];
  /** 1-based. */
  readonly hiddenRows: readonly number[];
  readonly isHidden: boolean;
  /** Every cell but the first of each block of merged cells, by its name, with the name of the first. */
  readonly merged: ReadonlyMap<string, string>;
}

export interface Book {
  /** `Excel workbook`, `text with semicolons`. */
  readonly kind: string;
  /** What separates columns of text: `semicolon`. */
  readonly separator?: string;
  readonly sheets: readonly Sheet[];
  /** Whether days are counted from 1904. */
  readonly date1904: boolean;
  /** Whether every cell is text as typed, so that its digits are those that were read. */
  readonly isText: boolean;
}

/** `B7`, of 0-based places. */
export function cellName(row: number, column: number): string {
  return `${columnName(column)}${row + 1}`;
}

/** `A`, `Z`, `AA`, of a 0-based place. */
export function columnName(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : columnName(Math.floor(column / 26) - 1) + last;
}

/** What is stored, as somebody would type it. */
export function describeCell(cell: Cell | undefined): string {
  if (cell === undefined) return '';
  return cell.kind === 'number' || cell.kind === 'flag' ? String(cell.value) : cell.text;
}
