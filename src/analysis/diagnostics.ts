/** What a careful editor would want to know about a session, in numbers; the words are for `register/`. */
import { intervalMs, type Rate } from '../model/rate.ts';
import { longestBeat, type Beat } from './beat.ts';
import type { Chain, Method } from './chain.ts';
import type { DelayPosterior } from './delay-posterior.ts';
import { varianceOf } from './distribution.ts';
import type { PhaseErrors } from './phase-errors.ts';
import type { RunInput } from './session-input.ts';

export type Device = 'source' | 'body' | 'display' | 'observer';

export interface RateBeat extends Beat {
  readonly first: Device;
  readonly second: Device;
}

export interface Diagnostics {
  readonly readings: number;
  readonly runs: number;
  /** Time from the first to the last stamp of the longest run; absent without stamps. */
  readonly longestRunMs?: number;
  /** Pairs of rates that stay in step for longer than ten body intervals, longest beat first. */
  readonly beats: readonly RateBeat[];
  /** Standard deviation of the readings about their run's mean; absent without a second reading in any run. */
  readonly observedScatterMs?: number;
  readonly scatterDegreesOfFreedom: number;
  /** The same as the rates alone would give it on the mean over unknown phases. */
  readonly expectedScatterMs: number;
  /** Observed over expected scatter: above 1, more happens than the rates explain (the Birge ratio of the readings). */
  readonly birgeRatio?: number;
  /** Posterior probability that frames jitter by more than the rates explain. */
  readonly jitterProbability: number;
  /** The same for a delay that changes from run to run; 0 with one run. */
  readonly betweenRunsProbability: number;
  /** False where a run's stamps contradict the rates: a misread digit, or a rate that is not what the file says. */
  readonly stampsAgreeWithRates: boolean;
  /** For each run and reading: the posterior probability that its stamp is nothing but a misread. */
  readonly misreads: readonly (readonly number[])[];
  /** Standard uncertainty if the rates alone were at work; absent where they cannot be. */
  readonly ratesOnlyUncertaintyMs?: number;
}

/** Probability of the rig's rates below which the stamps are said to contradict them. */
const DOUBTFUL = 0.05;

interface Parts {
  readonly chain: Chain;
  readonly method: Method;
  readonly runs: readonly RunInput[];
  readonly resolutionMs: number;
  readonly errors: PhaseErrors;
  readonly delay: DelayPosterior;
}

export function describeSession({ chain, runs, errors, delay }: Parts): Diagnostics {
  const readings = runs.reduce((sum, { latenciesMs }) => sum + latenciesMs.length, 0);
  const degrees = readings - runs.length;
  const squares = runs.reduce((sum, { latenciesMs }) => {
    const mean = latenciesMs.reduce((total, ms) => total + ms, 0) / latenciesMs.length;
    return sum + latenciesMs.reduce((total, ms) => total + (ms - mean) ** 2, 0);
  }, 0);
  const expectedScatterMs = Math.sqrt(errors.scatterMs2);
  const observed = degrees > 0 ? Math.sqrt(squares / degrees) : undefined;
  const spans = runs.flatMap(({ sourceMs }) => (sourceMs ? [Math.max(...sourceMs) - Math.min(...sourceMs)] : []));
  return {
    readings,
    runs: runs.length,
    ...(spans.length > 0 && { longestRunMs: Math.max(...spans) }),
    beats: beatsOf(chain),
    ...(observed !== undefined && { observedScatterMs: observed, birgeRatio: observed / expectedScatterMs }),
    scatterDegreesOfFreedom: degrees,
    expectedScatterMs,
    jitterProbability: delay.jitterProbability,
    betweenRunsProbability: delay.betweenRunsProbability,
    stampsAgreeWithRates: delay.ratesProbability > DOUBTFUL,
    misreads: delay.misreads,
    ...(delay.ratesOnly && { ratesOnlyUncertaintyMs: Math.sqrt(varianceOf(delay.ratesOnly)) }),
  };
}

/** Every pair of devices that keep their own time; a display that follows its input keeps the body's. */
function beatsOf(chain: Chain): RateBeat[] {
  const devices: [Device, Rate][] = [['body', chain.body.rate]];
  if (chain.source) devices.unshift(['source', chain.source.refresh]);
  if (chain.display.sync === 'free') devices.push(['display', chain.display.refresh]);
  if (chain.observer) devices.push(['observer', chain.observer.rate]);
  const worthMs = 10 * intervalMs(chain.body.rate);
  return devices
    .flatMap(([first, a], i) =>
      devices.slice(i + 1).map(([second, b]): RateBeat => ({ first, second, ...longestBeat(a, b) })),
    )
    .filter(({ periodMs }) => periodMs > worthMs)
    .sort((a, b) => (a.periodMs === b.periodMs ? 0 : b.periodMs - a.periodMs));
}
