import type { Chart } from './chart.ts';
import type { Range } from './row-plot-input.ts';
import { renderRowPlot } from './row-plot.ts';

export interface BracketRow {
  readonly label: string;
  readonly group?: string;
  /** The lowest and the highest that it can be. */
  readonly range: Range;
  /** As published: `40 ms to 58 ms`. */
  readonly text: string;
}

export interface BracketsInput {
  /** Unique on the page: letters, digits, `-`, `_`. */
  readonly id: string;
  readonly rows: readonly BracketRow[];
  /** What the rows are, and their unit: `Latency of the chain`, `ms`. */
  readonly quantity: string;
  readonly unit: string;
  readonly title?: string;
}

/** Limits, not uncertainties: each row from its lowest to its highest as square brackets, without a point. */
export async function renderBrackets({ id, rows, quantity, unit, title }: BracketsInput): Promise<Chart> {
  for (const { label, range } of rows) {
    if (range.low > range.high)
      throw new RangeError(`chart '${id}': row '${label}' has its low limit above its high one`);
  }
  return renderRowPlot({
    id,
    rows: rows.map(({ label, group, range, text }) => ({
      label,
      text,
      bracket: range,
      ...(group === undefined ? {} : { group }),
    })),
    axisTitle: `${quantity}, ${unit}`,
    notes: ['Brackets: lowest and highest possible, not an uncertainty.'],
    title: title ?? quantity,
    description: describeBrackets(rows, quantity, unit),
  });
}

function describeBrackets(rows: readonly BracketRow[], quantity: string, unit: string): string {
  const named = ({ label, group, text }: BracketRow) => `${group === undefined ? '' : `${group}, `}${label}, ${text}`;
  const shown = `${quantity} in ${unit}: the lowest and the highest possible as brackets, ${rows.length === 1 ? 'one row' : `${String(rows.length)} rows`}.`;
  const [first] = rows;
  if (!first) return shown;
  const lowest = rows.reduce((best, row) => (row.range.low < best.range.low ? row : best));
  const highest = rows.reduce((best, row) => (row.range.high > best.range.high ? row : best));
  return lowest === highest
    ? `${shown} ${rows.length === 1 ? 'It is' : 'Both the lowest and the highest are of'} ${named(first === lowest ? first : lowest)}.`
    : `${shown} The lowest limit is of ${named(lowest)}; the highest of ${named(highest)}.`;
}
