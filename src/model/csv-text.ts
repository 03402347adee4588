/** Text as CSV, by RFC 4180; lines end in a line feed, as those of the raw files do, unless another end is asked for. */
export function renderCsv(columns: readonly string[], rows: readonly (readonly string[])[], lineEnd = '\n'): string {
  return [columns, ...rows].map((cells) => `${cells.map(quoteCell).join(',')}${lineEnd}`).join('');
}

/** A cell as it stands in a line: in quotes where it has to be. */
export function quoteCell(cell: string): string {
  return /[",\r\n]/.test(cell) ? inQuotes(cell) : cell;
}

export function inQuotes(cell: string): string {
  return `"${cell.replaceAll('"', '""')}"`;
}
