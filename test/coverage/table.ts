/** The published table of the coverage bench: its shape, where it is kept, and what tells that it is stale. */
import { analyse, simulateSession, type Verdict } from './judge.ts';
import { FAULTS } from './faults.ts';
import { ROWS, type Row } from './rows.ts';
import { worldRandom } from './world.ts';

export const TABLE_FILE = new URL('../../src/analysis/coverage-table.json', import.meta.url);

/** Nominal level, and the share of truths that every row must hold. */
export const LEVEL = 0.95;
export const ACCEPTED = { low: 0.93, high: 0.98 };
/** The same where the bench does not behave as the model says; more does no harm there. */
const ACCEPTED_FAULTY = 0.88;

export const ALL_ROWS: readonly Row[] = [...ROWS, ...FAULTS];
/** Sessions of each row in the published table. */
export const SESSIONS = { sound: 1000, faulty: 200 };

/**
 * Whether a share counted in `trials` agrees with the accepted ones: within them, or beyond by no more than two
 * standard errors. A row on the safe side may hold more.
 */
export function isAccepted(
  coverage: number,
  trials: number,
  { safeSide = false, fault = false }: { safeSide?: boolean | undefined; fault?: boolean | undefined } = {},
): boolean {
  const slack = (p: number): number => 2 * Math.sqrt((p * (1 - p)) / trials);
  if (fault) return coverage >= ACCEPTED_FAULTY - slack(ACCEPTED_FAULTY);
  return (
    coverage >= ACCEPTED.low - slack(ACCEPTED.low) && (safeSide || coverage <= ACCEPTED.high + slack(ACCEPTED.high))
  );
}

export interface TableRow extends Verdict {
  readonly rig: string;
  readonly method: string;
  readonly runs: number;
  readonly readings: number;
  readonly spacingMs: number;
  /** Why the interval is as wide as it is, where more readings would not help. */
  readonly note?: string;
  readonly safeSide?: true;
  readonly fault?: true;
  /** The row's first session: any change of the analysis or of the world shows here. */
  readonly first: { readonly valueMs: number; readonly halfWidthMs: number };
}

export interface CoverageTable {
  readonly level: number;
  readonly rows: readonly TableRow[];
}

/** Every row has numbers of its own. */
export function seedOf(index: number): number {
  return 20_260_000 + index;
}

export function firstSession(row: Row, index: number): TableRow['first'] {
  const estimate = analyse(row, simulateSession(row, worldRandom(seedOf(index))));
  return { valueMs: estimate.value, halfWidthMs: estimate.expandedUncertainty };
}

export function tableRow(row: Row, index: number, verdict: Verdict): TableRow {
  const { name, method, runs, readings, spacingMs, note, safeSide, fault } = row;
  return {
    rig: name,
    method,
    runs,
    readings,
    spacingMs,
    ...(note && { note }),
    ...(safeSide && { safeSide }),
    ...(fault && { fault }),
    ...verdict,
    first: firstSession(row, index),
  };
}
