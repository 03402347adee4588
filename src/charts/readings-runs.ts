import type { ReadingsInput } from './readings-input.ts';

/** Beyond this many, runs are too narrow to be told apart and follow each other without a gap. */
export const MOST_RUNS = 24;
const WIDEST_GAP = 22;

/** A stretch of the horizontal axis. */
export interface RunSpan {
  /** Undefined where runs are not drawn apart. */
  readonly run: number | undefined;
  readonly left: number;
  readonly right: number;
  /** Indices of its readings, in the order taken. */
  readonly indices: readonly number[];
}

/** Divides the width among the runs, in proportion to their readings, with a gap between them. */
export function layOutRuns(readings: ReadingsInput['readings'], width: number): RunSpan[] {
  const byRun = Map.groupBy(readings.keys(), (i) => readings[i]?.run ?? 0);
  const spans: [number | undefined, number[]][] =
    byRun.size > MOST_RUNS ? [[undefined, [...readings.keys()]]] : [...byRun].sort(([a], [b]) => a - b);
  const gap = Math.min(WIDEST_GAP, width / (4 * spans.length));
  const step = (width - gap * (spans.length - 1)) / readings.length;
  let left = 0;
  return spans.map(([run, indices]) => {
    const span = { run, left, right: left + indices.length * step, indices };
    left = span.right + gap;
    return span;
  });
}

/** Horizontal place of the k-th reading of a run (0-based), or of the middle of the readings k to k + count − 1. */
export function placeInRun(span: RunSpan, k: number, count = 1): number {
  const last = Math.min(k + count, span.indices.length);
  return span.left + (((k + last) / 2) * (span.right - span.left)) / span.indices.length;
}
