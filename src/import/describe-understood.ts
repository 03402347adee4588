/** What was understood, as a terminal shows it: where it stands, every conversion, and every reading as found and as taken. */
import { NEEDED, placeIn } from './columns.ts';
import { columnName } from './sheet.ts';
import type { Understood, UnderstoodRow } from './understand.ts';

/** More rows than these are shown by their first and last. */
const ALL = 60;
const ENDS = 20;

export function describeUnderstood(file: string, { book, table, rows, conversions }: Understood): string {
  const { sheet, headingRow, columns, unread, method } = table;
  const place = placeIn(sheet.name);
  const read = [...columns].map(([role, at]) => {
    const heading = sheet.rows[headingRow]?.[at];
    return `${role} from ${columnName(at)}${heading?.kind === 'text' ? ` '${heading.text}'` : ''}`;
  });
  const clips = new Set(rows.map(({ run }) => run)).size;
  return [
    `${file}: ${book.kind}${place === '' ? '' : `, ${place}`}, ${headingRow < 0 ? 'no headings' : `headings in row ${headingRow + 1}`}`,
    `  read: ${read.join(', ')}`,
    ...(unread.length === 0 ? [] : [`  not read: ${unread.map((heading) => `'${heading}'`).join(', ')}`]),
    ...conversions.map((each) => `  ${each}`),
    `  ${rows.length} ${rows.length === 1 ? 'reading' : 'readings'} in ${clips} ${clips === 1 ? 'clip' : 'clips'}`,
    '',
    ...tableOf(rows, NEEDED[method]),
  ].join('\n');
}

function tableOf(rows: readonly UnderstoodRow[], roles: readonly string[]): readonly string[] {
  const hidden = rows.length > ALL ? rows.length - 2 * ENDS : 0;
  const shown = hidden === 0 ? rows : [...rows.slice(0, ENDS), ...rows.slice(-ENDS)];
  const head = ['row', 'run', ...roles.flatMap((role) => [`${role} as found`, role]), 'exclude', 'note'];
  const cells = [
    head,
    ...shown.map(({ row, run, values, exclude, note }) => [
      String(row),
      String(run),
      ...values.flatMap(({ found, taken }) => [found, taken]),
      exclude,
      note,
    ]),
  ].map((line) => line.map((text) => text.replaceAll(/\s+/g, ' ')));
  const widths = head.map((_, at) => Math.max(...cells.map((line) => [...(line[at] ?? '')].length)));
  const lines = cells.map((line) => `  ${line.map((text, at) => text.padEnd(widths[at] ?? 0)).join('  ')}`.trimEnd());
  return hidden === 0 ? lines : [...lines.slice(0, ENDS + 1), `  … ${hidden} more …`, ...lines.slice(ENDS + 1)];
}
