import type { ComparedRows } from './compared-rows.ts';

/** Several families in one table, each under its own heading; each keeps its own adjustment. */
export function joinCompared(
  parts: readonly { readonly condition: string; readonly comparisons: ComparedRows }[],
): ComparedRows {
  return {
    rows: parts.flatMap(({ condition, comparisons }) => comparisons.rows.map((row) => ({ ...row, group: condition }))),
    shared: '',
    familySizes: parts.flatMap(({ comparisons }) => comparisons.familySizes),
  };
}
