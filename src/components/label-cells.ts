/** Names of the parts of a table, for readers aloud: a browser that lays rows out otherwise may forget them. */
const ROLES: Readonly<Record<string, string>> = {
  table: 'table',
  thead: 'rowgroup',
  tbody: 'rowgroup',
  tfoot: 'rowgroup',
  tr: 'row',
  td: 'cell',
};
const TAG = /<(\/?)(table|thead|tbody|tfoot|tr|th|td)\b((?:"[^"]*"|[^>"])*)>/g;

/**
 * The HTML of one table with the label of its column on each cell (`data-label`), the number of columns on the table
 * (`data-columns`), and the role of each part, so that its rows can be stacked where they do not fit side by side.
 */
export function labelCells(html: string): string {
  const labels = columnLabels(html);
  let column = 0;
  return html.replace(TAG, (tag, closes: string, name: string, attributes: string) => {
    if (closes) return tag;
    if (name === 'tr') column = 0;
    if (name === 'td' || name === 'th') column += spanOf(attributes);
    if (/\brole=/.test(attributes)) return tag;
    const label = name === 'td' ? labels[column - spanOf(attributes)] : undefined;
    return [
      `<${name}${attributes}`,
      ` role="${name === 'th' ? headerRole(attributes) : ROLES[name]}"`,
      name === 'table' ? ` data-columns="${labels.length}"` : '',
      label ? ` data-label="${label}"` : '',
      '>',
    ].join('');
  });
}

/** What stands in the cells of the head, without markup; entities stay as they are. */
function columnLabels(html: string): readonly string[] {
  const [, head = ''] = /<thead\b[^>]*>([\s\S]*?)<\/thead>/.exec(html) ?? [];
  return [...head.matchAll(/<th\b([^>]*)>([\s\S]*?)<\/th>/g)].flatMap(([, attributes = '', inside = '']) => [
    inside
      .replace(/<[^>]*>/g, '')
      .replaceAll('"', '&quot;')
      .replace(/\s+/g, ' ')
      .trim(),
    ...Array<string>(spanOf(attributes) - 1).fill(''),
  ]);
}

function spanOf(attributes: string): number {
  return Number(/\bcolspan="(\d+)"/.exec(attributes)?.[1] ?? 1);
}

function headerRole(attributes: string): string {
  return /\bscope="row/.test(attributes) ? 'rowheader' : 'columnheader';
}
