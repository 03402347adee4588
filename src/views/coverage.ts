/** The coverage bench as published: how often intervals hold the truth, by simulation (`npm run coverage`). */
import table from '../analysis/coverage-table.json' with { type: 'json' };
import pairTable from '../analysis/pair-coverage-table.json' with { type: 'json' };
import { describeSignificant, roundTo } from '../register/text.ts';

/** Of two displays side by side: their difference. */
export interface PairCoverageRow {
  /** `shown free, observer 50/s`: which display runs on its own clock, and what else is peculiar. */
  readonly rig: string;
  /** `10 readings, 0.3 s apart`. */
  readonly readings: string;
  readonly sessions: number;
  readonly coverage: string;
  readonly halfWidth: string;
  readonly textbookCoverage: string;
  readonly textbookHalfWidth: string;
}

/** Of totals; the rig is `60000/1001 against 60`: body rate against source refresh, and what else is peculiar. */
export interface CoverageRow extends PairCoverageRow {
  readonly differenceCoverage: string;
  /** Why the interval is wide, where more readings would not help. */
  readonly note: string;
}

/** Many rows in one line: how seldom and how often intervals held, over all of them. */
export interface CoverageSummary {
  /** Whether all behaved as the analysis was told. */
  readonly asTold: boolean;
  readonly kinds: number;
  readonly holds: Spread;
  readonly textbookHolds: Spread;
}

export interface Spread {
  readonly least: string;
  readonly most: string;
}

export interface CoverageText {
  readonly level: string;
  readonly summary: readonly CoverageSummary[];
  readonly pairSummary: readonly CoverageSummary[];
  readonly rows: readonly CoverageRow[];
  readonly pairs: readonly PairCoverageRow[];
  /** The row in which the textbook interval promises most more than it keeps. */
  readonly worst: CoverageRow;
}

type Row = (typeof table.rows)[number];

export function describeCoverageTable(): CoverageText {
  // where clips or stamps are at fault no one expects the textbook to hold
  const [first, ...others] = table.rows.filter((row) => !('fault' in row));
  if (first === undefined) throw new Error('the coverage table has no rows; run npm run coverage');
  const worst = others.reduce((low, row) => (row.textbook.coverage < low.textbook.coverage ? row : low), first);
  return {
    level: percent(table.level, 0),
    summary: summarize(table.rows, ({ total }) => total.coverage),
    pairSummary: summarize(pairTable.rows, ({ difference }) => difference.coverage),
    rows: table.rows.map(describeRow),
    pairs: pairTable.rows.map((row) => describeScores(row, row.difference)),
    worst: describeRow(worst),
  };
}

/** In the order of the rows: those that behave as told come first. */
function summarize<One extends { readonly textbook: { readonly coverage: number } }>(
  rows: readonly One[],
  coverageOf: (row: One) => number,
): CoverageSummary[] {
  return [true, false].map((asTold) => {
    const these = rows.filter((row) => 'fault' in row !== asTold);
    return {
      asTold,
      kinds: these.length,
      holds: spread(these.map(coverageOf)),
      textbookHolds: spread(these.map(({ textbook }) => textbook.coverage)),
    };
  });
}

function spread(shares: readonly number[]): Spread {
  return { least: percent(Math.min(...shares), 1), most: percent(Math.max(...shares), 1) };
}

function describeRow(row: Row): CoverageRow {
  return {
    ...describeScores(row, row.total),
    differenceCoverage: percent(row.difference.coverage, 1),
    note: 'note' in row && typeof row.note === 'string' ? row.note : '',
  };
}

function describeScores(
  { rig, runs, readings, spacingMs, sessions, textbook }: Omit<Row, 'total' | 'difference' | 'method'>,
  own: Row['total'],
): PairCoverageRow {
  return {
    rig,
    readings: `${runs > 1 ? `${runs} × ` : ''}${readings} readings, ${spacingMs / 1000} s apart`,
    sessions,
    coverage: percent(own.coverage, 1),
    halfWidth: describeSignificant(own.halfWidthMs, 2, 'ms'),
    textbookCoverage: percent(textbook.coverage, 1),
    textbookHalfWidth: describeSignificant(textbook.halfWidthMs, 2, 'ms'),
  };
}

function percent(share: number, decimals: number): string {
  return `${roundTo(share * 100, decimals)} %`;
}
