import type { Reading } from '../model/bench.ts';

/** Longer than any chain takes, and far shorter than the periods after which timers start again; in ms. */
export const LONGEST_MS = 10_000;

/** What a method adds to a reading, from the cells between `run` and `exclude`. */
export interface ReadingParser {
  /** Names of those columns. */
  readonly columns: readonly string[];
  parse(
    line: number,
    cells: readonly string[],
    excluded: boolean,
  ): Partial<Pick<Reading, 'sourceMs' | 'shownMs' | 'frames' | 'latencyMs'>>;
  readonly resolutionMs?: number | undefined;
}
