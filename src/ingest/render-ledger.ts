/** The files of the ledger, as text: sorted, one figure or input a line, so that they diff and merge by line. */
import { Document, isMap, isSeq } from 'yaml';
import type { Inputs, LedgerEntry, Published } from '../model/ledger.ts';
import { ANALYSIS_INPUT, FIGURE_COLUMNS, INPUT_COLUMNS } from './read-ledger.ts';

export function renderFigures(figures: readonly Published[]): string {
  const rows = figures
    .toSorted((a, b) => (a.id < b.id ? -1 : 1))
    .map(({ id, text, value, low, high, files }) =>
      [id, text, value, low, high, files].map((cell) => String(cell ?? '')),
    );
  return renderCsv(FIGURE_COLUMNS, rows);
}

export function renderInputs({ analysis, checksums }: Inputs): string {
  return renderCsv(INPUT_COLUMNS, [
    [ANALYSIS_INPUT, analysis],
    ...Object.entries(checksums).sort(([a], [b]) => (a < b ? -1 : 1)),
  ]);
}

/** As YAML; what is empty is left out. */
export function renderEntry({ causes, moved, gone, added, ...rest }: Omit<LedgerEntry, 'id'>): string {
  const lists = { causes, moved, gone };
  const full = Object.entries(lists).filter(([, list]) => list.length > 0);
  const document = new Document({
    ...rest,
    ...Object.fromEntries(full),
    ...(Object.keys(added).length > 0 ? { added } : {}),
  });
  for (const name of ['moved', 'gone']) {
    const list = document.get(name);
    if (isSeq(list)) for (const item of list.items) if (isMap(item)) item.flow = true;
  }
  return document.toString({ lineWidth: 0 });
}

/** RFC 4180. */
function renderCsv(columns: readonly string[], rows: readonly (readonly string[])[]): string {
  return [columns, ...rows].map((cells) => `${cells.map(quoteCell).join(',')}\n`).join('');
}

function quoteCell(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
