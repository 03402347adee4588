/**
 * The total latency of one session, with an uncertainty that knows the rig. The one entry for `register/`.
 *
 *     estimateSession(input) → Estimate
 *
 *     1. readings + rates        → what each run says about the pipeline delay   two-timers.ts, frame-count.ts
 *     2. all runs                → the posterior of their clips' mean delay      delay-posterior.ts
 *     3. known systematic effects → corrections, applied with their sign          corrections.ts
 *     4. named components        → budget, effective degrees of freedom           session-budget.ts, budget.ts
 *     5. posterior + the rest    → coverage factor k and expanded uncertainty U   distribution.ts
 *
 * Why a posterior and not the mean with its scatter: a pair of stamps bounds when the visible frame was
 * captured, and all captures of a run lie on one grid, so that ten readings say more than their mean does, and
 * say it with the phase error that they share. `npm run coverage` shows both.
 *
 * Plain values in, plain values out; milliseconds throughout. No clock, no state: equal input, equal result.
 */
import type { Budget, BudgetComponent } from './budget.ts';
import { freeRunningIntervalMs } from './chain.ts';
import type { Change } from './clip-mean.ts';
import { correctionToDay, correctionsFor, type Correction } from './corrections.ts';
import { delayPosterior, type DelayPosterior } from './delay-posterior.ts';
import { describeSession, type Diagnostics } from './diagnostics.ts';
import { halfWidthAbout, meanOf, withStandardPart, type Distribution } from './distribution.ts';
import type { Explanations } from './evidence.ts';
import { flashEvidence } from './frame-count.ts';
import { phaseErrors, readingVarianceMs2, type PhaseErrors } from './phase-errors.ts';
import { errorsByLevel, levelLines, ownErrors, type LevelErrors } from './level-errors.ts';
import { sessionBudget } from './session-budget.ts';
import type { SessionInput } from './session-input.ts';
import { DEFAULT_VARIATION, checkVariation, type Level } from './variation.ts';
import { twoTimersEvidence } from './two-timers.ts';
import { intervalMs } from '../model/rate.ts';
import { ln } from './elementary.ts';

export interface Estimate {
  readonly value: number;
  readonly standardUncertainty: number;
  /** Effective (Welch and Satterthwaite); Infinity allowed. */
  readonly degreesOfFreedom: number;
  /** value ± expandedUncertainty. */
  readonly interval: { readonly low: number; readonly high: number; readonly level: number };
  /** U/u, from the distribution itself (JCGM 101, 7.7), not from a t-table. */
  readonly coverageFactor: number;
  readonly expandedUncertainty: number;
  readonly components: readonly BudgetComponent[];
  readonly corrections: readonly Correction[];
  readonly uncorrectedValue: number;
  readonly diagnostics: Diagnostics;
  /** How delays change from clip to clip: what the statement of variation says, weighed by these runs. */
  readonly clipChanges: readonly Change[];
  /** Of which level `interval` speaks: what the statement of variation knows. */
  readonly speaksOf: Level;
  /**
   * Error of this session's own part for each level that it may speak of: value + error is the truth. Its mean is 0 at
   * the level of which `interval` speaks; `estimateAt` says how it is at another. Shared parts are `components` with a key.
   */
  readonly errors: LevelErrors;
}

/** What one run's readings say of its delay, before anything is assumed of how delays change from clip to clip. */
export interface RunLikelihood {
  readonly lowMs: number;
  readonly stepMs: number;
  /** Natural logarithms, up to a constant that the run's readings alone decide; on every run's grid alike. */
  readonly logLikelihood: readonly number[];
}

/**
 * For each run, the likelihood of its total latency (L + T_d/2 + T_m/2, uncorrected), reading-level variation averaged
 * out. From these, and from nothing else of a session, the sizes of changes between clips and days can be learnt.
 */
export function runLikelihoods(input: SessionInput): readonly RunLikelihood[] {
  const { chain } = checked(input);
  const waitsMs = (intervalMs(chain.body.rate) + freeRunningIntervalMs(chain.display)) / 2;
  const delay = posteriorOfDelay(input, waitsMs);
  return delay.perRun.map(({ lowMs, stepMs, values }) => ({
    lowMs: lowMs + waitsMs,
    stepMs,
    logLikelihood: values.map((value) => ln(value)),
  }));
}

/** The total latency of one session. Throws a RangeError that names what is missing. */
export function estimateSession(input: SessionInput): Estimate {
  const { method, chain, runs, resolutionMs = 0, level = 0.95, variation = DEFAULT_VARIATION } = checked(input);
  const waitsMs = (intervalMs(chain.body.rate) + freeRunningIntervalMs(chain.display)) / 2;
  const expected = expectedErrors(input);
  const delay = posteriorOfDelay(input, waitsMs);
  const uncorrectedValue = meanOf(delay.distribution) + waitsMs;

  const own = ownErrors(delay, variation, intervalMs(chain.body.rate));
  const speaksOf = variation.knows;
  const ofRig = correctionsFor(chain, method);
  const ofClips = speaksOf !== 'clips' && delay.day ? [correctionToDay(own.day())] : [];
  const errors = errorsByLevel(own, total(ofClips));
  const corrections = [...ofRig, ...ofClips];
  const value = uncorrectedValue + total(corrections);
  const meanVarianceMs2 = expected.meanMs2;
  const budget = sessionBudget({
    input,
    delay,
    value,
    corrections: ofRig,
    meanVarianceMs2,
    levels: levelLines(errors, speaksOf),
  });
  const expandedUncertainty = halfWidthAbout(withOthers(errors[speaksOf], budget), 0, level);
  return {
    value,
    standardUncertainty: budget.standardUncertainty,
    degreesOfFreedom: budget.degreesOfFreedom,
    interval: { low: value - expandedUncertainty, high: value + expandedUncertainty, level },
    coverageFactor: expandedUncertainty / budget.standardUncertainty,
    expandedUncertainty,
    components: budget.components,
    corrections,
    uncorrectedValue,
    diagnostics: describeSession({ chain, method, runs, resolutionMs, errors: expected, delay }),
    clipChanges: delay.clipChanges,
    speaksOf,
    errors,
  };
}

/** An estimate as plain data, with its error at every level. */
export function keepEstimate({ errors: { clips, day, condition }, ...rest }: Estimate): Estimate {
  return { ...rest, errors: { clips, day, condition } };
}

function total(corrections: readonly Correction[]): number {
  return corrections.reduce((sum, { valueMs }) => sum + valueMs, 0);
}

function checked(input: SessionInput): SessionInput {
  const { method, chain, runs, resolutionMs, level = 0.95 } = input;
  if (runs.length === 0 || runs.some(({ latenciesMs }) => latenciesMs.length === 0)) {
    throw new RangeError('an estimate needs at least one run, and each run at least one reading');
  }
  if (!(level > 0 && level < 1)) throw new RangeError(`a coverage level lies between 0 and 1, not at ${level}`);
  if (runs.some(({ latenciesMs, sourceMs = [] }) => [...latenciesMs, ...sourceMs].some((ms) => !Number.isFinite(ms)))) {
    throw new RangeError('every reading needs a finite number of milliseconds');
  }
  if (method === 'frame-count' && !chain.observer)
    throw new RangeError('frame counts need the rate of the observer: give chain.observer');
  if (method === 'two-timers') {
    if (!chain.source) throw new RangeError('two timers need the refresh rate of the source timer: give chain.source');
    if (!(resolutionMs !== undefined && resolutionMs > 0))
      throw new RangeError('two timers need the step of the last digit: give resolutionMs');
    if (runs.some(({ latenciesMs, sourceMs }) => sourceMs?.length !== latenciesMs.length))
      throw new RangeError('two timers need a source stamp for every latency: give sourceMs');
  }
  if (input.variation) checkVariation(input.variation);
  return input;
}

function expectedErrors({ method, chain, runs, resolutionMs = 0 }: SessionInput): PhaseErrors {
  if (method === 'two-timers')
    return phaseErrors(
      chain,
      runs.map(({ sourceMs }) => sourceMs!),
      resolutionMs,
    );
  const variance = readingVarianceMs2(chain, method, resolutionMs);
  return {
    scatterMs2: variance,
    meanMs2: variance / runs.reduce((sum, { latenciesMs }) => sum + latenciesMs.length, 0),
  };
}

function posteriorOfDelay(
  { method, chain, runs, resolutionMs = 0, variation = DEFAULT_VARIATION }: SessionInput,
  waitsMs: number,
): DelayPosterior {
  const frameMs = intervalMs(chain.body.rate);
  const windowMs =
    method === 'two-timers'
      ? intervalMs(chain.source!.refresh)
      : method === 'frame-count'
        ? intervalMs(chain.observer!.rate)
        : 0;
  return delayPosterior({
    runs: runs.map(
      ({ latenciesMs, sourceMs }) =>
        (times: number): Explanations =>
          method === 'two-timers'
            ? twoTimersEvidence(chain, sourceMs!, latenciesMs, resolutionMs, times)
            : flashEvidence(chain, latenciesMs, method === 'frame-count'),
    ),
    frameMs,
    aboutMs: runs.map(({ latenciesMs }) => latenciesMs.map((ms) => ms - waitsMs)),
    reachMs: frameMs / 2 + windowMs + freeRunningIntervalMs(chain.display) + resolutionMs,
    variation,
  });
}

/** The session's own error plus every component that is not in it already. */
function withOthers(own: Distribution, { components }: Budget): Distribution {
  return components.filter(({ sharedKey }) => sharedKey !== null).reduce(withStandardPart, own);
}
