import type { Chart } from './chart.ts';
import { type EstimatesInput, plotRow, refuseMixtures } from './estimate-row.ts';
import { isFarFromZero } from './axis.ts';
import { describeEstimates } from './estimates-text.ts';
import { renderRowPlot } from './row-plot.ts';

export type { EstimateRow, EstimatesInput } from './estimate-row.ts';

/**
 * Figures as points with their intervals, on a common axis that starts at zero or is broken and says so: rows top to
 * bottom, the published text of each at the right. A figure without an interval is an open diamond and says so.
 */
export async function renderEstimates(input: EstimatesInput): Promise<Chart> {
  refuseMixtures(input.id, input.rows);
  const { id, rows, marked, reach, ownRange = false } = input;
  const values = rows.flatMap(({ figure: { value, interval } }) => [
    value,
    interval?.low ?? value,
    interval?.high ?? value,
  ]);
  const isBroken = ownRange && isFarFromZero(values);
  const plot = { id, rows: rows.map(plotRow), isBroken, ...(reach === undefined ? {} : { reach }) };
  const words = describeEstimates(input, isBroken);
  if (!marked) return renderRowPlot({ ...plot, ...words });
  return renderRowPlot({
    ...plot,
    ...words,
    marked: marked.values,
    notes: [marked.note],
    description: `${words.description} ${marked.note}`,
  });
}
