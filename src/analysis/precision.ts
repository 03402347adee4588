/**
 * How precise a way of measuring would be: sessions simulated on the rig and analysed like real ones.
 */
import { intervalMs, rate, type Rate } from '../model/rate.ts';
import { longestBeat } from './beat.ts';
import { drawDelays } from './draw-delays.ts';
import { totalFromPipelineMs, type Chain, type Method } from './chain.ts';
import { estimateSession, type Estimate } from './estimate.ts';
import { seededRandom, type Random } from './random.ts';
import type { RunInput } from './session-input.ts';
import { simulateFrameCounts, simulateTwoTimers, type Sampling } from './simulate.ts';
import type { Variation } from './variation.ts';

/** What is to be measured with. */
export interface Setup {
  readonly chain: Chain;
  readonly method: Method;
  /** Step of the timer's last digit; needed for two timers. */
  readonly resolutionMs?: number;
  readonly instrumentUncertaintyMs?: number;
  /** Coverage probability; 0.95 where absent. */
  readonly level?: number;
  /** What the publication has learnt of how delays vary; absent, simulated clips have one delay. */
  readonly variation?: Variation;
}

/** How readings are to be taken. */
export interface Design {
  readonly runs: number;
  /** In each run. */
  readonly readings: number;
  readonly spacingMs: number;
}

export interface Precision extends Design {
  /** Mean half-width U of the intervals, in ms. */
  readonly halfWidthMs: number;
}

/** A simulated session: its estimate, and what it was off by. */
export interface Trial {
  readonly estimate: Estimate;
  readonly errorMs: number;
}

/** Fixed, so that a page and a command give the same plan. */
const SEED = 3;
const SPACING = { shortestMs: 500, longestMs: 4000 };

/**
 * Time between readings so that a run spans the longest beat that is not endless, within 0.5 s to 4 s: shorter
 * spans share a phase error, and more waiting than that buys little.
 */
export function advisedSpacingMs({ chain }: Setup, readings: number): number {
  return spacingForBeat(chain.source?.refresh ?? chain.observer?.rate, chain.body.rate, readings);
}

/** The same for any two rates that beat. */
export function spacingForBeat(other: Rate | undefined, of: Rate, readings: number): number {
  const { periodMs } = other ? longestBeat(other, of) : { periodMs: 0 };
  const spanMs = Number.isFinite(periodMs) ? periodMs : 0;
  return Math.min(
    SPACING.longestMs,
    Math.max(SPACING.shortestMs, Math.ceil(spanMs / Math.max(1, readings - 1) / 100) * 100),
  );
}

/** `sessions` simulated sessions of one design. */
export function simulateTrials(setup: Setup, design: Design, sessions: number): Trial[] {
  const random = seededRandom(SEED);
  return Array.from({ length: sessions }, () => {
    const pipelineMs = random.between(100, 200);
    const { clipsMs, meanMs } = drawDelays(setup, design.runs, random);
    const runs = clipsMs.map((clipMs) => simulateRun(setup, design, pipelineMs + clipMs, random));
    const estimate = estimateSession({ ...setup, runs });
    const { valueMs: toDayMs = 0 } = estimate.corrections.find(({ name }) => name === 'clips that were not read') ?? {};
    const truthMs = totalFromPipelineMs(pipelineMs + meanMs, setup.chain);
    return { estimate, errorMs: estimate.uncorrectedValue + toDayMs - truthMs };
  });
}

/** The mean half-width of each design; 12 simulated sessions give it to within a few per cent. */
export function precisionTable(setup: Setup, designs: readonly Design[], sessions = 12): Precision[] {
  return designs.map((design) => {
    const trials = simulateTrials(setup, design, sessions);
    return {
      ...design,
      halfWidthMs: trials.reduce((sum, { estimate }) => sum + estimate.expandedUncertainty, 0) / trials.length,
    };
  });
}

/** As read where rows and scan-out shift nothing: what shifts every reading alike does not change a width. */
export function simulateRun(
  { chain, method, resolutionMs = 1 }: Setup,
  { readings, spacingMs }: Design,
  pipelineMs: number,
  random: Random,
): RunInput {
  const sampling: Sampling = { readings, spacingMs };
  const { scanOutMs: _scanOut, ...display } = chain.display;
  const level: Chain = { ...chain, display, ...(chain.observer && { observer: { ...chain.observer, readoutMs: 0 } }) };
  if (method === 'two-timers') {
    const stamps = simulateTwoTimers(level, { pipelineMs }, sampling, resolutionMs, random);
    return {
      sourceMs: stamps.map(({ sourceMs }) => sourceMs),
      latenciesMs: stamps.map(({ sourceMs, shownMs }) => sourceMs - shownMs),
    };
  }
  // a light sensor is as good as an observer of a million frames a second
  const counting = method === 'instrument' ? { ...level, observer: { rate: rate(1_000_000) } } : level;
  const frameMs = counting.observer ? intervalMs(counting.observer.rate) : 0;
  return {
    latenciesMs: simulateFrameCounts(counting, { pipelineMs }, sampling, random).map((frames) => frames * frameMs),
  };
}
