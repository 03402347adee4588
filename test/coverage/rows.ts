/** The rows of the coverage bench: one world, one way of taking readings, and what the analysis is told. */
import { rate, rateHz, type Rate } from '../../src/model/rate.ts';
import type { Chain, Method } from '../../src/analysis/chain.ts';
import type { World } from './world.ts';

export interface Row {
  readonly name: string;
  readonly method: Method;
  readonly world: World;
  readonly chain: Chain;
  readonly runs: number;
  readonly readings: number;
  readonly spacingMs: number;
  /** Why the interval is as wide as it is, where more readings would not help. */
  readonly note?: string;
  /** The interval is known to be wider than it need be: only too little coverage fails the row. */
  readonly safeSide?: true;
  /** The bench does not behave as the model says. */
  readonly fault?: true;
}

export interface Setup {
  readonly name: string;
  readonly body: Rate;
  readonly source?: Rate;
  readonly resolutionMs?: number;
  readonly freeDisplay?: Rate;
  readonly observer?: { rate: Rate; exposureMs: number };
  readonly world?: Partial<World>;
  readonly runs?: number;
  readonly readings?: number;
  readonly method?: Method;
  readonly note?: string;
  readonly safeSide?: true;
  readonly fault?: true;
}

const [NTSC_24, NTSC_30, NTSC_60] = [rate(24000, 1001), rate(30000, 1001), rate(60000, 1001)];
const LOCKED = 'locked rates: one clip shows one phase, however many readings; restarts show others';
const LOCKED_OBSERVER =
  'the observer is locked to the source: it sees every refresh at the same age, and cannot tell which';
const COARSE_COUNT =
  'counts in so coarse steps, without times, leave the phase open: the interval is on the safe side, and wider than it need be';
const SPACINGS_MS = [300, 2000];

const SETUPS: readonly Setup[] = [
  { name: '24000/1001 against 60.02', body: NTSC_24, source: rate(3001, 50) },
  { name: '25 against 60', body: rate(25) },
  { name: '30000/1001 against 60', body: NTSC_30 },
  { name: '50 against 60', body: rate(50) },
  { name: '60000/1001 against 60', body: NTSC_60 },
  { name: '60 against 60', body: rate(60), note: LOCKED },
  { name: '119.92 against 60', body: rate(2998, 25) },
  { name: '30000/1001 against 60, 10 ms timer', body: NTSC_30, resolutionMs: 10 },
  { name: '30000/1001 against 60, free-running 60 Hz display', body: NTSC_30, freeDisplay: rate(60) },
  { name: '60000/1001 against 60, free-running 60 Hz display', body: NTSC_60, freeDisplay: rate(60) },
  { name: '25 against 120', body: rate(25), source: rate(120) },
  { name: '60000/1001 against 120', body: NTSC_60, source: rate(120) },
  {
    name: '30000/1001 against 60, observer 30/s',
    body: NTSC_30,
    observer: { rate: rate(30), exposureMs: 1000 / 60 },
    note: LOCKED_OBSERVER,
  },
  {
    name: '30000/1001 against 60, observer 60/s',
    body: NTSC_30,
    observer: { rate: rate(60), exposureMs: 1000 / 120 },
    note: LOCKED_OBSERVER,
  },
  {
    name: '30000/1001 against 60, observer 240/s',
    body: NTSC_30,
    observer: { rate: rate(240), exposureMs: 1000 / 480 },
  },
  {
    name: '50 against 60, observer 60/s',
    body: rate(50),
    observer: { rate: rate(60), exposureMs: 1000 / 120 },
    note: LOCKED_OBSERVER,
  },
  { name: '30000/1001 against 60, 3 runs of 4', body: NTSC_30, runs: 3, readings: 4 },
  { name: '60 against 60, 3 runs of 4', body: rate(60), runs: 3, readings: 4 },
  { name: '30000/1001 against 60, clocks off by up to 100 ppm', body: NTSC_30, world: { clockPpm: 100 } },
  { name: '60 against 60, clocks off by up to 100 ppm', body: rate(60), world: { clockPpm: 100 }, note: LOCKED },
  {
    name: '24000/1001 against 60.02, ±1 frame of jitter',
    body: NTSC_24,
    source: rate(3001, 50),
    world: { jitterFrames: 1 },
    fault: true,
  },
  { name: '30000/1001 against 60, ±1 frame of jitter', body: NTSC_30, world: { jitterFrames: 1 }, fault: true },
  {
    name: '60 against 60, ±1 frame of jitter',
    body: rate(60),
    world: { jitterFrames: 1 },
    note: LOCKED,
    fault: true,
  },
  {
    name: '25, frames counted at 240/s',
    body: rate(25),
    method: 'frame-count',
    observer: { rate: rate(240), exposureMs: 1000 / 480 },
  },
  {
    name: '60000/1001, frames counted at 120/s',
    body: NTSC_60,
    method: 'frame-count',
    observer: { rate: rate(120), exposureMs: 1000 / 240 },
    note: COARSE_COUNT,
    safeSide: true,
  },
  {
    name: '60000/1001, frames counted at 240/s',
    body: NTSC_60,
    method: 'frame-count',
    observer: { rate: rate(240), exposureMs: 1000 / 480 },
  },
];

export function rowOf(setup: Setup, spacingMs: number): Row {
  const {
    name,
    body,
    source = rate(60),
    resolutionMs = 1,
    freeDisplay,
    observer,
    runs = 1,
    readings = 10,
    method = 'two-timers',
  } = setup;
  const world: World = {
    sourceHz: rateHz(source),
    resolutionMs,
    bodyHz: rateHz(body),
    ...(freeDisplay && { freeDisplayHz: rateHz(freeDisplay) }),
    ...(observer && { observer: { hz: rateHz(observer.rate), exposureMs: observer.exposureMs } }),
    ...setup.world,
  };
  const chain: Chain = {
    ...(method === 'two-timers' && { source: { refresh: source } }),
    body: { rate: body },
    display: freeDisplay
      ? { refresh: freeDisplay, sync: 'free', scanOutMs: 0, digitsRow: 0.5 }
      : { refresh: rate(60), sync: 'input', scanOutMs: 0, digitsRow: 0.5 },
    ...(observer && { observer: { ...observer, readoutMs: 0, sourceRow: 0.5, displayRow: 0.5 } }),
  };
  return {
    name,
    method,
    world,
    chain,
    runs,
    readings,
    spacingMs,
    ...(setup.note && { note: setup.note }),
    ...(setup.safeSide && { safeSide: setup.safeSide }),
    ...(setup.fault && { fault: setup.fault }),
  };
}

/** Benches that behave as the model says; priors were chosen on these and on `faults.ts`, with other seeds. */
export const ROWS: readonly Row[] = SETUPS.flatMap((setup) => SPACINGS_MS.map((spacingMs) => rowOf(setup, spacingMs)));
