/**
 * Judges the analysis on one row: how often its intervals hold the truth, and how wide they are, beside the textbook's.
 */
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { estimateDifference } from '../../src/analysis/difference.ts';
import { estimateSession, type Estimate } from '../../src/analysis/estimate.ts';
import type { RunInput } from '../../src/analysis/session-input.ts';
import type { Row } from './rows.ts';
import { countFrames, film, setUp, worldRandom } from './world.ts';

/** Share of truths inside the intervals, and the mean half-width of these. */
export interface Score {
  readonly coverage: number;
  readonly halfWidthMs: number;
}

export interface Verdict {
  readonly sessions: number;
  readonly total: Score;
  /** mean ± t·s/√n over all readings. */
  readonly textbook: Score;
  /** Of two sessions on the same rig: half as many as sessions. */
  readonly difference: Score;
}

export interface SimulatedSession {
  readonly runs: readonly RunInput[];
  readonly totalMs: number;
}

/** One session on a row's rig: what was read, and what is true of these clips. */
export function simulateSession(
  { world, method, runs, readings, spacingMs }: Row,
  draw: () => number,
): SimulatedSession {
  const bench = setUp(world, 100 + 200 * draw(), draw);
  let offMs = 0;
  const film1 = (): { sourceMs: number[]; latenciesMs: number[] } => {
    const clip = film(bench, readings, spacingMs, draw);
    offMs += clip.offMs / runs;
    return { sourceMs: clip.sourceMs, latenciesMs: clip.sourceMs.map((source, i) => source - clip.shownMs[i]!) };
  };
  const count1 = (): { latenciesMs: number[] } => {
    const clip = countFrames(bench, readings, spacingMs, draw);
    offMs += clip.offMs / runs;
    return { latenciesMs: clip.frames.map((frames) => (frames * 1000) / world.observer!.hz) };
  };
  const taken = Array.from({ length: runs }, method === 'frame-count' ? count1 : film1);
  if (world.misreadMs) {
    const { latenciesMs } = taken[Math.floor(draw() * runs)]!;
    latenciesMs[Math.floor(draw() * readings)]! += world.misreadMs * (draw() < 0.5 ? 1 : -1);
  }
  // a frame that is shown twice makes the picture older, an exposure whose digits blend is as old as its middle
  const repeatedMs = (world.repeated ?? 0) * bench.bodyStepMs + (world.blendedMs ?? 0) / 2;
  return { runs: taken, totalMs: bench.totalMs + offMs + repeatedMs };
}

export function analyse({ method, chain, world }: Row, { runs }: SimulatedSession): Estimate {
  return estimateSession({ method, chain, runs, resolutionMs: world.resolutionMs });
}

/** `sessions` sessions of a row, drawn from `seed`. */
export function judge(row: Row, sessions: number, seed: number): Verdict {
  const draw = worldRandom(seed);
  const [total, textbook, difference] = [new Tally(), new Tally(), new Tally()];
  let previous: { estimate: Estimate; totalMs: number } | undefined;
  for (let i = 0; i < sessions; i += 1) {
    const session = simulateSession(row, draw);
    const estimate = analyse(row, session);
    total.add(estimate.value - session.totalMs, estimate.expandedUncertainty);
    textbook.add(...textbookInterval(session));
    if (previous) {
      const found = estimateDifference(estimate, previous.estimate);
      if (found.kind !== 'difference') throw new Error(`${row.name}: a difference has no interval (${found.reason})`);
      difference.add(
        found.value - (session.totalMs - previous.totalMs),
        (found.interval.high - found.interval.low) / 2,
      );
    }
    previous = previous ? undefined : { estimate, totalMs: session.totalMs };
  }
  return { sessions, total: total.score(), textbook: textbook.score(), difference: difference.score() };
}

export function textbookInterval({ runs, totalMs }: SimulatedSession): [errorMs: number, halfWidthMs: number] {
  const readings = runs.flatMap(({ latenciesMs }) => latenciesMs);
  const mean = readings.reduce((sum, x) => sum + x, 0) / readings.length;
  const variance = readings.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (readings.length - 1);
  return [mean - totalMs, tQuantile(0.975, readings.length - 1) * Math.sqrt(variance / readings.length)];
}

export class Tally {
  private inside = 0;
  private widths = 0;
  private count = 0;

  add(errorMs: number, halfWidthMs: number): void {
    this.inside += Number(Math.abs(errorMs) <= halfWidthMs);
    this.widths += halfWidthMs;
    this.count += 1;
  }

  score(): Score {
    return { coverage: this.inside / this.count, halfWidthMs: this.widths / this.count };
  }
}
