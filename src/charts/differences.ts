import type { Chart } from './chart.ts';
import { describeDifferences } from './differences-text.ts';
import { type EstimateRow, plotRow, refuseMixtures } from './estimate-row.ts';
import { renderRowPlot } from './row-plot.ts';

export interface DifferencesInput {
  /** Unique on the page: letters, digits, `-`, `_`. */
  readonly id: string;
  /** In the order in which they are drawn; each figure is a difference. */
  readonly rows: readonly EstimateRow[];
  /** Differences inside ± this, in the figures' unit, count as none; with its published text, `10 ms`. */
  readonly margin?: { readonly halfWidth: number; readonly text: string };
  readonly title?: string;
}

/** Differences as points with their intervals about a zero line, with the equivalence margin shaded. */
export async function renderDifferences({ id, rows, margin, title }: DifferencesInput): Promise<Chart> {
  refuseMixtures(id, rows);
  if (margin && !(margin.halfWidth > 0))
    throw new RangeError(`chart '${id}': a margin is wider than zero, not ${String(margin.halfWidth)}`);
  return renderRowPlot({
    id,
    rows: rows.map(plotRow),
    ...(margin
      ? {
          shaded: { low: -margin.halfWidth, high: margin.halfWidth },
          notes: [`Shaded: less than ${margin.text} either way.`],
        }
      : {}),
    ...describeDifferences(rows, margin, title),
  });
}
