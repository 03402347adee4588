/** Rows of two displays side by side: one world, and what the analysis is told. */
import type { ChainDisplay } from '../../src/analysis/chain.ts';
import type { OutputOffset, PairInput } from '../../src/analysis/pair-input.ts';
import { rate, rateHz, type Rate } from '../../src/model/rate.ts';
import { simulatePair, type PairSession, type PairWorld } from './side-by-side.ts';

interface Setup {
  readonly name: string;
  readonly picture?: Rate;
  readonly resolutionMs?: number;
  readonly sourceFree?: Rate;
  readonly shownFree?: Rate;
  readonly observer?: Rate;
  readonly outputs?: OutputOffset;
  readonly world?: Partial<PairWorld>;
  readonly runs?: number;
  readonly readings?: number;
  readonly fault?: true;
}

export interface PairRow extends Setup {
  readonly runs: number;
  readonly readings: number;
  readonly draw: (draw: () => number) => { readonly world: PairWorld; readonly session: PairSession };
}

const NTSC_60 = rate(60000, 1001);
const SPLITTER: OutputOffset = { kind: 'stated', valueMs: 0, standardUncertaintyMs: 0 };

const FAULTS: readonly (readonly [fault: string, world: Partial<PairWorld>])[] = [
  ['buffer zero or one frame deep, drawn per clip', { deeperRuns: 0.5 }],
  ['frames jitter by a quarter of a frame', { jitterFrames: 0.25 }],
  ['one frame in 20 repeated', { repeated: 0.05 }],
  ['readings at exactly regular steps', { spacingScatter: 0 }],
  ['one stamp misread by 300 ms', { misreadMs: 300 }],
];

const FAULTY_SETUPS: readonly (readonly [what: string, setup: Omit<Setup, 'name'>])[] = [
  ['both follow', {}],
  ['shown free', { shownFree: rate(60), observer: rate(50) }],
  ['source free', { sourceFree: rate(60) }],
  ['both free', { sourceFree: rate(60), shownFree: rate(60) }],
];

const SETUPS: readonly Setup[] = [
  { name: 'both follow, observer 240/s', observer: rate(240) },
  { name: 'both follow, observer 50/s', observer: rate(50) },
  { name: 'both follow, observer 60/s in step', observer: rate(60) },
  { name: 'both follow, observer 59.94/s', observer: NTSC_60 },
  { name: 'both follow, picture at 30, one run', picture: rate(30), runs: 1, readings: 12 },
  { name: 'both follow, 10 ms timer', resolutionMs: 10 },
  { name: 'shown free, observer 50/s', shownFree: rate(60), observer: rate(50) },
  { name: 'shown free, picture at 59.94', shownFree: rate(60), picture: NTSC_60 },
  { name: 'source free, observer 240/s', sourceFree: rate(60), observer: rate(240) },
  { name: 'both free', sourceFree: rate(60), shownFree: rate(60) },
  { name: 'both free, 60 and 75, observer 240/s', sourceFree: rate(60), shownFree: rate(75), observer: rate(240) },
  { name: 'two outputs, unknown', outputs: { kind: 'unknown' }, world: { offsetFrames: 1 } },
  { name: 'clocks off by up to 100 ppm', observer: rate(50), world: { clockPpm: 100 } },
  { name: 'both follow, one clip', observer: rate(240), runs: 1, readings: 5 },
  { name: 'both follow, eight clips', observer: rate(50), runs: 8, readings: 10 },
  ...FAULTY_SETUPS.flatMap(([what, setup]) =>
    FAULTS.map(([fault, world]): Setup => ({ ...setup, name: `${what}: ${fault}`, world, fault: true })),
  ),
  {
    name: 'two outputs, unknown: frames jitter by a quarter of a frame',
    outputs: { kind: 'unknown' },
    world: { offsetFrames: 1, jitterFrames: 0.25 },
    fault: true,
  },
];

/** Time from one reading to the next, on the mean. */
export const PAIR_SPACING_MS = 1300;

export const PAIR_ROWS: readonly PairRow[] = SETUPS.map(({ runs = 4, readings = 4, ...setup }) => ({
  ...setup,
  runs,
  readings,
  draw: (draw) => {
    const world = worldOf(setup, draw);
    return { world, session: simulatePair(world, runs, readings, PAIR_SPACING_MS, draw) };
  },
}));

function worldOf(setup: Setup, draw: () => number): PairWorld {
  const { picture = rate(60), resolutionMs = 1, observer = rate(240) } = setup;
  return {
    pictureHz: rateHz(picture),
    resolutionMs,
    source: { delayMs: 5 + 30 * draw(), ...(setup.sourceFree && { freeHz: rateHz(setup.sourceFree) }) },
    shown: { delayMs: 5 + 60 * draw(), ...(setup.shownFree && { freeHz: rateHz(setup.shownFree) }) },
    observer: { hz: rateHz(observer), exposureMs: 200 / rateHz(observer) },
    ...setup.world,
  };
}

/** What the analysis is told of a session. */
export function inputOf(
  { picture = rate(60), resolutionMs = 1, sourceFree, shownFree, observer, outputs = SPLITTER }: PairRow,
  { rowsApartMs = 0 }: PairWorld,
  { runs }: PairSession,
): PairInput {
  const display = (free: Rate | undefined): ChainDisplay => ({
    refresh: free ?? picture,
    sync: free ? 'free' : 'input',
    scanOutMs: 0,
    digitsRow: 0.5,
  });
  return {
    picture: { rate: picture },
    source: display(sourceFree),
    shown: display(shownFree),
    observer: { rate: observer ?? rate(240), readoutMs: rowsApartMs, sourceRow: 0, displayRow: 1 },
    outputs,
    runs,
    resolutionMs,
  };
}
