/** Which clip each row is of, numbered from 1 as sessions number them. */
import { placeIn } from './columns.ts';
import type { ImportMistake } from './mistakes.ts';
import { cellName, describeCell, type Cell, type Sheet } from './sheet.ts';

export const CLIP_MANNERS = ['one', 'blank-rows', 'fill-down', 'labels'] as const;
export type ClipManner = (typeof CLIP_MANNERS)[number];

export interface Clips {
  /** By 0-based row of the sheet. */
  readonly runs: ReadonlyMap<number, number>;
  readonly conversions: readonly string[];
  readonly mistakes: readonly ImportMistake[];
}

const CHOICES = '--clips one if all rows are of one clip, --clips blank-rows if an empty row stands between clips';

export function numberClips(
  sheet: Sheet,
  column: number | undefined,
  rows: readonly number[],
  manner: ClipManner | undefined,
): Clips {
  const says = (text: string, row?: number): Clips => ({
    runs: new Map(),
    conversions: [],
    mistakes: [{ where: placeIn(sheet.name, row === undefined ? undefined : cellName(row, column ?? 0)), says: text }],
  });
  const asOne = (how: string, runs: readonly number[]): Clips => ({
    runs: new Map(rows.map((row, at) => [row, runs[at] ?? 1])),
    conversions: [how],
    mistakes: [],
  });
  if (manner === 'one') return asOne('all rows taken for one clip, as --clips one says', []);
  if (manner === 'blank-rows') {
    let run = 1;
    const runs = rows.map((row, at) => {
      if (at > 0 && row > (rows[at - 1] ?? row) + 1) run += 1;
      return run;
    });
    return asOne(`clips told by the rows between them, as --clips blank-rows says: ${run}`, runs);
  }
  if (column === undefined)
    return says(`no column says of which clip a reading is. Say which does, with --column run=HEADING; or ${CHOICES}`);
  return fromLabels(sheet, column, rows, manner, says);
}

function fromLabels(
  sheet: Sheet,
  column: number,
  rows: readonly number[],
  manner: ClipManner | undefined,
  says: (text: string, row?: number) => Clips,
): Clips {
  const labels: string[] = [];
  const conversions: string[] = [];
  let filled = 0;
  for (const row of rows) {
    const label = describeCell(cellAt(sheet, row, column));
    const isMerged = label === '' && sheet.merged.has(cellName(row, column));
    if (label === '' && !isMerged && manner !== 'fill-down')
      return says(
        'does not say of which clip the row is. Fill it in; or say --clips fill-down if it is that of the row above',
        row,
      );
    if (label === '') filled += 1;
    labels.push(label === '' ? (labels.at(-1) ?? '') : label);
  }
  if (filled > 0) conversions.push(`${filled} ${filled === 1 ? 'row' : 'rows'}: clip taken from the row above`);
  const strange = labels.findIndex((label) => !/^\d+$/.test(label));
  if (strange >= 0 && manner !== 'labels' && !labels.every((label) => !/^\d+$/.test(label)))
    return says(
      `'${labels[strange]}' is no clip number like the others. Leave such rows out with --rows FROM-TO, or say --clips labels`,
      rows[strange],
    );
  if (strange >= 0 && manner !== 'labels')
    return says(
      `clips have names, not numbers ('${labels[strange]}'). Say --clips labels to number them in their order`,
      rows[strange],
    );
  const order = [...new Set(labels)];
  const back = labels.findIndex((label, at) => at > 0 && label !== labels[at - 1] && labels.indexOf(label) < at);
  if (back >= 0)
    return says(
      `clip '${labels[back]}' begins again after another. Sort the rows by clip, or correct the number`,
      rows[back],
    );
  const renamed = order.flatMap((label, at) => (label === String(at + 1) ? [] : [`${label} is ${at + 1}`]));
  if (renamed.length > 0) conversions.push(`clips numbered from 1: ${renamed.join(', ')}`);
  return {
    runs: new Map(rows.map((row, at) => [row, order.indexOf(labels[at] ?? '') + 1])),
    conversions,
    mistakes: [],
  };
}

export function cellAt(sheet: Sheet, row: number, column: number | undefined): Cell | undefined {
  return column === undefined ? undefined : sheet.rows[row]?.[column];
}
