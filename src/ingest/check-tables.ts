import type { Report } from './source.ts';

/**
 * A reader's table has hundreds of cells; every row of one is filled up to its header, so few bytes can mean millions.
 */
const MOST_CELLS = 20_000;
const DELIMITER = /^[ \t>]*\|?[ \t]*:?-+:?[ \t]*(?:\|[ \t]*:?-+:?[ \t]*)*\|?[ \t]*$/;

/**
 * Reports Markdown tables with more cells than any page can show.
 *
 * @param firstLine the line of the file on which `text` begins
 */
export function checkTables(text: string, firstLine: number, report: Report): void {
  const lines = text.split('\n');
  for (let at = 1; at < lines.length; at += 1) {
    const delimiter = lines[at] ?? '';
    if (!delimiter.includes('|') || !DELIMITER.test(delimiter)) continue;
    const columns = delimiter.split('|').length - 1;
    let end = at + 1;
    while (end < lines.length && (lines[end] ?? '').trim() !== '') end += 1;
    const cells = columns * (end - at);
    if (cells > MOST_CELLS)
      report({
        code: 'table-too-large',
        line: firstLine + at - 1,
        found: String(cells),
        expected: String(MOST_CELLS),
      });
    at = end;
  }
}
