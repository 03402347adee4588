/**
 * Whether readings were taken at exactly regular steps: then their moments are as good as an observer's ticks, and a step
 * that suits the body's rate shows the same phase again and again.
 */
import { evenSpeeds, type Speed } from './speeds.ts';

export interface RegularStep {
  readonly stepMs: number;
  /** What the step may be off by. */
  readonly speeds: readonly Speed[];
}

/** Who reads at regular steps has mostly set a round one: how likely, and in ms. A judgement, no source. */
const ROUND = { share: 0.8, toMs: 100 };

/** Fewer readings lie on a grid by chance. */
const FEWEST = 5;
/** Stamps count whole refreshes: this far off a straight line, in ms, they may still be regular (a refresh of 50 a second). */
const OFF_MS = 21;

/**
 * Stamps in ms, in the order of time or the other way round; undefined where the steps differ. Neighbouring speeds move a
 * moment by at most `moveMs`.
 */
export function regularStep(stampsMs: readonly number[], moveMs: number): RegularStep | undefined {
  if (stampsMs.length < FEWEST) return undefined;
  const stamps = Float64Array.from(stampsMs).sort();
  const steps = Float64Array.from(stamps.subarray(1), (stamp, i) => stamp - stamps[i]!).sort();
  const usual = steps[Math.floor(steps.length / 2)]!;
  if (usual < 4 * OFF_MS) return undefined;
  // readings left out leave gaps of whole steps
  const counts = [0];
  for (let i = 1; i < stamps.length; i += 1)
    counts.push(counts[i - 1]! + Math.round((stamps[i]! - stamps[i - 1]!) / usual));
  const last = counts.at(-1)!;
  const meanCount = counts.reduce((sum, k) => sum + k, 0) / counts.length;
  const meanStamp = stamps.reduce((sum, stamp) => sum + stamp, 0) / stamps.length;
  const slope =
    counts.reduce((sum, k, i) => sum + (k - meanCount) * (stamps[i]! - meanStamp), 0) /
    counts.reduce((sum, k) => sum + (k - meanCount) ** 2, 0);
  const off = counts.map((k, i) => stamps[i]! - meanStamp - slope * (k - meanCount));
  if (Math.max(...off) - Math.min(...off) > OFF_MS) return undefined;
  const [spanMs, round] = [last * slope, Math.round(slope / ROUND.toMs) * ROUND.toMs];
  const speeds = evenSpeeds(OFF_MS / spanMs, spanMs, moveMs);
  if (Math.abs(round - slope) * last > OFF_MS) return { stepMs: slope, speeds };
  return {
    stepMs: round,
    speeds: [
      { fast: 0, weight: ROUND.share },
      ...speeds.map(({ fast, weight }) => ({
        fast: (round / slope) * (1 + fast) - 1,
        weight: weight * (1 - ROUND.share),
      })),
    ],
  };
}
