/**
 * How many clips and readings a comparison of two displays needs: designs are simulated and analysed like real ones, as for
 * sessions (`plan.ts`).
 */
import { freeRunningIntervalMs } from './chain.ts';
import { estimateDisplayPair, type PairEstimate } from './display-pair.ts';
import type { PairInput } from './pair-input.ts';
import { CLIPS_ENOUGH, designsByWork, ladderOf, leastWork, type Ladder, type Plan } from './plan.ts';
import { spacingForBeat, type Design } from './precision.ts';
import { seededRandom } from './random.ts';
import { simulateDisplayPair } from './simulate.ts';
import { hypot } from './elementary.ts';

/** What two displays are to be compared with. */
export type PairSetup = Omit<PairInput, 'runs'>;

/** Clips and readings in each, from the least work on. */
const STEPS: readonly (readonly [runs: number, readings: number])[] = [
  [CLIPS_ENOUGH, 2],
  [CLIPS_ENOUGH, 4],
  [CLIPS_ENOUGH, 8],
  [8, 8],
];
const SESSIONS = 16;
/** Fixed, so that a command gives the same plan each time. */
const SEED = 5;
/** Delays of displays as they are found, in ms; common practice, no source. */
const DELAYS = { leastMs: 5, mostMs: 60 };

/** What ever more readings and clips give, and which to take. */
export function planPairLadder(setup: PairSetup): Ladder {
  return ladderOf(STEPS, (runs, readings) => assess(setup, { runs, readings }));
}

/** The plan of least work for an interval of ± `halfWidthMs`. Throws a RangeError unless that is above 0. */
export function planPair(setup: PairSetup, halfWidthMs: number): Plan {
  if (!(halfWidthMs > 0 && Number.isFinite(halfWidthMs)))
    throw new RangeError(`a plan needs a half-width above 0 ms, not ${halfWidthMs}`);
  return leastWork(
    designsByWork().map(([runs, readings]) => () => {
      const plan = assess(setup, { runs, readings });
      return { ...plan, reached: plan.halfWidthMs <= halfWidthMs };
    }),
  );
}

function assess(setup: PairSetup, { runs, readings }: Omit<Design, 'spacingMs'>): Plan {
  const spacingMs = spacingForBeat(setup.observer?.rate, setup.picture.rate, readings);
  const estimates = simulatePairs(setup, { runs, readings, spacingMs }, SESSIONS);
  const [first] = estimates;
  const fixed = (first?.components ?? []).filter(({ shared }) => shared !== null);
  return {
    runs,
    readings,
    spacingMs,
    reached: true,
    speaksOf: 'clips',
    halfWidthMs: estimates.reduce((sum, { expandedUncertainty }) => sum + expandedUncertainty, 0) / estimates.length,
    floorMs: hypot(...fixed.map(({ standardUncertainty }) => standardUncertainty)),
  };
}

/** As read where rows and scan-out shift nothing: what shifts every reading alike does not change a width. */
function simulatePairs(setup: PairSetup, { runs, readings, spacingMs }: Design, sessions: number): PairEstimate[] {
  const random = seededRandom(SEED);
  return Array.from({ length: sessions }, () => {
    const delays = {
      sourceMs: random.between(DELAYS.leastMs, DELAYS.mostMs),
      shownMs: random.between(DELAYS.leastMs, DELAYS.mostMs),
    };
    const clips = Array.from({ length: runs }, () => {
      const stamps = simulateDisplayPair(
        {
          pictureRate: setup.picture.rate,
          sourceRefreshMs: freeRunningIntervalMs(setup.source),
          shownRefreshMs: freeRunningIntervalMs(setup.shown),
          observerRate: setup.observer?.rate,
          resolutionMs: setup.resolutionMs,
        },
        delays,
        { readings, spacingMs },
        random,
      );
      return {
        sourceMs: stamps.map(({ sourceMs }) => sourceMs),
        latenciesMs: stamps.map(({ sourceMs, shownMs }) => sourceMs - shownMs),
      };
    });
    return estimateDisplayPair({ ...setup, runs: clips });
  });
}
