import type { EstimateRow } from './estimate-row.ts';
import { describeEstimates, type EstimatesWords } from './estimates-text.ts';

/** The words of a differences chart: those of an estimates chart, and where the intervals lie. */
export function describeDifferences(
  rows: readonly EstimateRow[],
  margin: { readonly halfWidth: number; readonly text: string } | undefined,
  title: string | undefined,
): EstimatesWords {
  const intervals = rows.flatMap(({ figure }) => figure.interval ?? []);
  const of = (count: number) =>
    `${count === intervals.length && count > 1 ? 'all' : String(count)} of ${String(intervals.length)}`;
  const apart = intervals.filter(({ low, high }) => low > 0 || high < 0).length;
  const clear = intervals.length === 0 ? [] : [`Intervals that leave out zero: ${of(apart)}.`];
  const within = margin
    ? intervals.filter(({ low, high }) => low > -margin.halfWidth && high < margin.halfWidth).length
    : 0;
  const equivalent =
    margin && intervals.length > 0
      ? [`Intervals wholly within the shaded margin of ${margin.text} either way: ${of(within)}.`]
      : [];
  const words = describeEstimates({ rows, ...(title === undefined ? {} : { title }) });
  return {
    ...words,
    description: [words.description.replace('starts at zero', 'includes zero'), ...clear, ...equivalent].join(' '),
  };
}
