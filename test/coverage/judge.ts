/** Judges the analysis on one row: how often its interval holds the truth, and how wide it is, beside the textbook's. */
import { estimateSession, type Estimate } from '../../src/analysis/estimate.ts';
import type { RunInput } from '../../src/analysis/session-input.ts';
import { estimateSessionDifference } from '../../src/analysis/session-difference.ts';
import type { Row } from './rows.ts';
import { countFrames, film, setUp, worldRandom } from './world.ts';

export interface Verdict {
  readonly name: string;
  readonly spacingMs: number;
  readonly sessions: number;
  readonly coverage: number;
  readonly halfWidthMs: number;
  readonly textbookCoverage: number;
  readonly textbookHalfWidthMs: number;
  readonly differenceCoverage: number;
  readonly differenceHalfWidthMs: number;
}

/** t(0.975, ν), JCGM 100:2008 Table G.2 and R's qt(); for the readings per session used here. */
const T_95: Readonly<Record<number, number>> = { 9: 2.262157, 11: 2.200985 };

export interface Simulated {
  readonly runs: RunInput[];
  readonly totalMs: number;
}

/** One session on a row's rig: what was read, and what is true. */
export function simulateSession(row: Row, draw: () => number): Simulated {
  const bench = setUp(row.world, 100 + 200 * draw(), draw);
  const runs = Array.from({ length: row.runs }, (): RunInput => {
    if (row.method === 'frame-count') {
      return { latenciesMs: countFrames(bench, row.readings, row.spacingMs, draw).map((frames) => (frames * 1000) / row.world.observer!.hz) };
    }
    const { sourceMs, shownMs } = film(bench, row.readings, row.spacingMs, draw);
    return { sourceMs, latenciesMs: sourceMs.map((source, i) => source - shownMs[i]!) };
  });
  return { runs, totalMs: bench.totalMs };
}

export function judge(row: Row, sessions: number, seed: number): Verdict {
  const draw = worldRandom(seed);
  const sums = { covered: 0, half: 0, bookCovered: 0, bookHalf: 0, differenceCovered: 0, differenceHalf: 0 };
  let previous: { estimate: Estimate; totalMs: number } | undefined;
  for (let i = 0; i < sessions; i += 1) {
    const { runs, totalMs } = simulateSession(row, draw);
    const estimate = estimateSession({ method: row.method, chain: row.chain, runs, resolutionMs: row.world.resolutionMs });
    const latencies = runs.flatMap(({ latenciesMs }) => latenciesMs);
    const mean = latencies.reduce((sum, x) => sum + x, 0) / latencies.length;
    const s = Math.sqrt(latencies.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (latencies.length - 1));
    const book = (T_95[latencies.length - 1]! * s) / Math.sqrt(latencies.length);
    sums.covered += Number(estimate.interval.low <= totalMs && totalMs <= estimate.interval.high);
    sums.half += (estimate.interval.high - estimate.interval.low) / 2;
    sums.bookCovered += Number(Math.abs(mean - totalMs) <= book);
    sums.bookHalf += book;
    if (previous) {
      const { value, expandedUncertainty } = estimateSessionDifference(estimate, previous.estimate, { rig: true, instrument: true });
      sums.differenceCovered += Number(Math.abs(value - (totalMs - previous.totalMs)) <= expandedUncertainty);
      sums.differenceHalf += expandedUncertainty;
      previous = undefined;
    } else {
      previous = { estimate, totalMs };
    }
  }
  return {
    name: row.name,
    spacingMs: row.spacingMs,
    sessions,
    coverage: sums.covered / sessions,
    halfWidthMs: sums.half / sessions,
    textbookCoverage: sums.bookCovered / sessions,
    textbookHalfWidthMs: sums.bookHalf / sessions,
    differenceCoverage: sums.differenceCovered / Math.floor(sessions / 2),
    differenceHalfWidthMs: sums.differenceHalf / Math.floor(sessions / 2),
  };
}
