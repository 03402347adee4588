/**
 * What the rates alone do to the readings and to their mean, phases being unknown: a seeded Monte Carlo
 * (JCGM 101) of two timers with this session's own reading times.
 *
 * For rates that never come into step and phases drawn for every reading, it tends to the closed form
 * `T_d²/12 + T_s²/6 + T_m²/12 + r²/6` per reading (each phase is rectangular: variance width²/12), which
 * `readingVarianceMs2` gives; in step, readings share their error, so that they scatter less about each other
 * and their mean is off by more.
 */
import { intervalMs } from '../model/rate.ts';
import { freeRunningIntervalMs, type Chain, type Method } from './chain.ts';
import { seededRandom, type Random } from './random.ts';

export interface PhaseErrors {
  /** Expected variance of the readings about their run's mean (n − 1 in the denominator, pooled over runs). */
  readonly scatterMs2: number;
  /** Variance of the mean of all readings about the total latency. */
  readonly meanMs2: number;
}

const SESSIONS = 100;
/** Fixed, so that equal input gives an equal result everywhere. */
const SEED = 101;

/** Variance of one reading with all phases independent, in ms². `resolutionMs` is the step of the timer's last digit. */
export function readingVarianceMs2(chain: Chain, method: Method, resolutionMs: number): number {
  const waits = (intervalMs(chain.body.rate) ** 2 + freeRunningIntervalMs(chain.display) ** 2) / 12;
  if (method === 'two-timers') return waits + intervalMs(chain.source!.refresh) ** 2 / 6 + resolutionMs ** 2 / 6;
  // both ends of a count are rounded up to the observer's grid
  return waits + (method === 'frame-count' ? intervalMs(chain.observer!.rate) ** 2 / 6 : 0);
}

/**
 * The most by which two readings of one clip can differ where only phases are at work, in ms: `T_d + 2·T_s (+ T_m)` and
 * two truncations for two timers, `T_d + 2·T_o (+ T_m)` for counts, `T_d (+ T_m)` for a light sensor.
 */
export function readingRangeMs(chain: Chain, method: Method, resolutionMs: number): number {
  const waits = intervalMs(chain.body.rate) + freeRunningIntervalMs(chain.display);
  if (method === 'two-timers') return waits + 2 * intervalMs(chain.source!.refresh) + 2 * resolutionMs;
  return waits + (method === 'frame-count' ? 2 * intervalMs(chain.observer!.rate) : 0);
}

/** For two timers, from the source stamps of each run; stamps are unwrapped, in ms. */
export function phaseErrors(chain: Chain, runsMs: readonly (readonly number[])[], resolutionMs: number): PhaseErrors {
  const random = seededRandom(SEED);
  const readings = runsMs.reduce((sum, run) => sum + run.length, 0);
  const degrees = readings - runsMs.length;
  const truncation = resolutionMs ** 2 / 6;
  let [scatter, mean] = [0, 0];
  for (let s = 0; s < SESSIONS; s += 1) {
    let sum = 0;
    for (const stampsMs of runsMs) {
      const errors = runErrors(chain, stampsMs, random);
      const centre = errors.reduce((total, error) => total + error, 0) / errors.length;
      sum += centre * errors.length;
      for (const error of errors) scatter += (error - centre) ** 2;
    }
    mean += (sum / readings) ** 2;
  }
  return {
    scatterMs2:
      degrees > 0 ? scatter / SESSIONS / degrees + truncation : readingVarianceMs2(chain, 'two-timers', resolutionMs),
    meanMs2: mean / SESSIONS + truncation / readings,
  };
}

/** Errors of one run's readings for phases drawn here; stamps count as moments on the source's grid. */
function runErrors(chain: Chain, stampsMs: readonly number[], random: Random): number[] {
  const [sourceMs, bodyMs, displayMs] = [
    intervalMs(chain.source!.refresh),
    intervalMs(chain.body.rate),
    freeRunningIntervalMs(chain.display),
  ];
  const observerMs = chain.observer ? intervalMs(chain.observer.rate) : 0;
  const [bodyPhase, displayPhase, observerPhase] = [
    random.uniform() * bodyMs,
    random.uniform() * displayMs,
    random.uniform() * observerMs,
  ];
  const lastTick = (timeMs: number, phaseMs: number, stepMs: number): number =>
    phaseMs + Math.floor((timeMs - phaseMs) / stepMs) * stepMs;
  const pipelineMs = random.uniform() * sourceMs;
  return stampsMs.map((stampMs) => {
    const anyMs = stampMs + random.uniform() * sourceMs;
    const momentMs = observerMs > 0 ? lastTick(anyMs, observerPhase, observerMs) : anyMs;
    const pickedUpMs = displayMs > 0 ? lastTick(momentMs, displayPhase, displayMs) : momentMs;
    const capturedMs = lastTick(pickedUpMs - pipelineMs, bodyPhase, bodyMs);
    const latencyMs = lastTick(momentMs, stampsMs[0]!, sourceMs) - lastTick(capturedMs, stampsMs[0]!, sourceMs);
    return latencyMs - pipelineMs - (bodyMs + displayMs) / 2;
  });
}
