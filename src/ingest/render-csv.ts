/** RFC 4180, with a line feed at the end of each line. */
export function renderCsv(columns: readonly string[], rows: readonly (readonly string[])[]): string {
  return [columns, ...rows].map((cells) => `${cells.map(quoteCell).join(',')}\n`).join('');
}

function quoteCell(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
