/**
 * The published table of displays side by side: how often their intervals hold the truth, and what tells that it is
 * stale.
 */
import { estimateDisplayPair, type PairEstimate } from '../../src/analysis/display-pair.ts';
import { Tally, textbookInterval, type Score } from './judge.ts';
import { inputOf, PAIR_ROWS, PAIR_SPACING_MS, type PairRow } from './pair-rows.ts';
import { isAccepted, type LEVEL } from './table.ts';
import { worldRandom } from './world.ts';

export const PAIR_TABLE_FILE = new URL('../../src/analysis/pair-coverage-table.json', import.meta.url);

/** Sessions of each row in the published table. */
export const PAIR_SESSIONS = 600;

export interface PairTableRow {
  readonly rig: string;
  readonly runs: number;
  readonly readings: number;
  readonly spacingMs: number;
  readonly fault?: true;
  readonly sessions: number;
  readonly difference: Score;
  /** mean ± t·s/√n over all readings. */
  readonly textbook: Score;
  /** The row's first session: any change of the analysis or of the world shows here. */
  readonly first: { readonly valueMs: number; readonly halfWidthMs: number };
}

export interface PairCoverageTable {
  readonly level: typeof LEVEL;
  readonly rows: readonly PairTableRow[];
}

/** The least share of truths that a row must hold where the bench does not behave as the model says. */
const ACCEPTED_FAULTY = 0.92;

/** Whether a row holds as many truths as it must, or falls short by no more than two standard errors. */
export function isAcceptedPair({ difference: { coverage }, sessions, fault }: PairTableRow): boolean {
  if (!fault) return isAccepted(coverage, sessions);
  return coverage >= ACCEPTED_FAULTY - 2 * Math.sqrt((ACCEPTED_FAULTY * (1 - ACCEPTED_FAULTY)) / sessions);
}

/** No constant of the analysis was chosen on these. */
export function pairSeedOf(index: number): number {
  return 20_270_000 + index;
}

export function judgePairs(index: number, sessions: number): PairTableRow {
  const row = PAIR_ROWS[index]!;
  const draw = worldRandom(pairSeedOf(index));
  const [difference, textbook] = [new Tally(), new Tally()];
  for (let i = 0; i < sessions; i += 1) {
    const { estimate, differenceMs, runs } = oneSession(row, draw);
    difference.add(estimate.value - differenceMs, estimate.expandedUncertainty);
    textbook.add(...textbookInterval({ runs, totalMs: differenceMs }));
  }
  const { name, runs, readings, fault } = row;
  return {
    rig: name,
    runs,
    readings,
    spacingMs: PAIR_SPACING_MS,
    ...(fault && { fault }),
    sessions,
    difference: difference.score(),
    textbook: textbook.score(),
    first: firstPair(index),
  };
}

export function firstPair(index: number): PairTableRow['first'] {
  const { estimate } = oneSession(PAIR_ROWS[index]!, worldRandom(pairSeedOf(index)));
  return { valueMs: estimate.value, halfWidthMs: estimate.expandedUncertainty };
}

function oneSession(row: PairRow, draw: () => number) {
  const { world, session } = row.draw(draw);
  const estimate: PairEstimate = estimateDisplayPair(inputOf(row, world, session));
  return { estimate, ...session };
}
