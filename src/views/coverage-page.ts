import { describeCoverageTable, type CoverageRow, type CoverageSummary, type PairCoverageRow } from './coverage.ts';

/** What the page about the coverage bench prints. */
export interface CoveragePage {
  readonly level: string;
  readonly summary: readonly CoverageSummary[];
  readonly pairSummary: readonly CoverageSummary[];
  /** With the number of the note that says why the interval is wide. */
  readonly rows: readonly (CoverageRow & { readonly noteNumber: number | undefined })[];
  readonly notes: readonly string[];
  /** Two displays side by side. */
  readonly pairs: readonly PairCoverageRow[];
}

export function coveragePage(): CoveragePage {
  const { level, summary, pairSummary, rows, pairs } = describeCoverageTable();
  const notes = [...new Set(rows.map(({ note }) => note).filter(Boolean))];
  return {
    level,
    summary,
    pairSummary,
    rows: rows.map((row) => ({ ...row, noteNumber: row.note === '' ? undefined : notes.indexOf(row.note) + 1 })),
    notes,
    pairs,
  };
}
