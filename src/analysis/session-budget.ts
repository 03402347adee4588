/**
 * The uncertainty budget of one session (JCGM 100, clauses 4 and 5).
 *
 * The variance of the posterior is taken apart in three steps: what the rates alone leave open (phases), what
 * jitter adds (repeatability), what the runs add. The first is shared out among the devices in proportion to
 * what each contributes to a single reading (T²/12 for every rectangular phase, JCGM 100, 4.3.7): once rates
 * come into step their effects are no longer separate, so that this share is a convention, while the sum is not.
 */
import { intervalMs } from '../model/rate.ts';
import { combineBudget, type Budget, type BudgetLine } from './budget.ts';
import { freeRunningIntervalMs, type Chain, type Method } from './chain.ts';
import type { Correction } from './corrections.ts';
import type { DelayPosterior } from './delay-posterior.ts';
import { varianceOf } from './distribution.ts';
import type { SessionInput } from './session-input.ts';
import { DEFAULT_TOLERANCE_PPM } from './two-timers.ts';

interface Parts {
  readonly input: SessionInput;
  readonly delay: DelayPosterior;
  /** The corrected total, in ms. */
  readonly value: number;
  readonly corrections: readonly Correction[];
  /** Variance of the plain mean from phases alone: what stands in where the rates do not explain the readings. */
  readonly meanVarianceMs2: number;
  /** What changes from clip to clip and from day to day add. */
  readonly levels: readonly BudgetLine[];
}

export function sessionBudget({ input, delay, value, corrections, meanVarianceMs2, levels }: Parts): Budget {
  const { method, chain, runs, resolutionMs = 0, instrumentUncertaintyMs = 0 } = input;
  const whole = varianceOf(delay.distribution);
  const phases = Math.min(whole, delay.ratesOnly ? varianceOf(delay.ratesOnly) : meanVarianceMs2);
  const oneDelay =
    runs.length > 1 ? Math.min(whole, Math.max(phases, delay.sameDelay ? varianceOf(delay.sameDelay) : phases)) : whole;
  const readings = runs.reduce((sum, { latenciesMs }) => sum + latenciesMs.length, 0);

  const lines: BudgetLine[] = shareOut(phases, singleReading(chain, method, resolutionMs));
  lines.push({
    name: 'repeatability',
    type: 'A',
    distribution: 'numerical',
    standardUncertainty: Math.sqrt(oneDelay - phases),
    degreesOfFreedom: Math.max(1, readings - runs.length),
    sharedKey: null,
  });
  if (runs.length > 1)
    lines.push({
      name: 'between runs',
      type: 'A',
      distribution: 'numerical',
      standardUncertainty: Math.sqrt(whole - oneDelay),
      degreesOfFreedom: runs.length - 1,
      sharedKey: null,
    });
  lines.push(...levels);
  if (method !== 'instrument') {
    const clock = method === 'two-timers' ? chain.source?.clockTolerancePpm : chain.observer?.clockTolerancePpm;
    const half = Math.abs(value) * (clock ?? DEFAULT_TOLERANCE_PPM) * 1e-6;
    lines.push({
      name: method === 'two-timers' ? 'source clock' : 'observer clock',
      type: 'B',
      distribution: 'rectangular',
      standardUncertainty: half / Math.sqrt(3),
      degreesOfFreedom: Infinity,
      sharedKey: 'rig',
    });
  }
  for (const { name, standardUncertaintyMs, sharedKey } of corrections) {
    lines.push({
      name,
      type: 'B',
      distribution: 'rectangular',
      standardUncertainty: standardUncertaintyMs,
      degreesOfFreedom: Infinity,
      sharedKey,
    });
  }
  if (instrumentUncertaintyMs > 0) {
    lines.push({
      name: 'instrument',
      type: 'B',
      distribution: 'normal',
      standardUncertainty: instrumentUncertaintyMs,
      degreesOfFreedom: Infinity,
      sharedKey: 'instrument',
    });
  }
  return combineBudget(lines);
}

/** Variances in one reading, by device, in ms². */
function singleReading(chain: Chain, method: Method, resolutionMs: number): Record<string, number> {
  const bodyMs2 = intervalMs(chain.body.rate) ** 2 / 12;
  const displayMs2 = freeRunningIntervalMs(chain.display) ** 2 / 12;
  const observerMs2 = chain.observer ? intervalMs(chain.observer.rate) ** 2 / 12 : 0;
  const common = { 'phase of the body': bodyMs2, ...(displayMs2 > 0 && { 'phase of the display': displayMs2 }) };
  if (method === 'instrument') return common;
  if (method === 'frame-count') return { ...common, 'phase of the observer': 2 * observerMs2 };
  const sourceMs2 = intervalMs(chain.source!.refresh) ** 2 / 12;
  return {
    'phase of the source': 2 * sourceMs2,
    ...common,
    ...(chain.observer && { 'phase of the observer': Math.min(observerMs2, sourceMs2) }),
    'timer resolution': resolutionMs ** 2 / 6,
  };
}

/** A variance shared out in proportion to what each device contributes to a single reading. */
export function shareOut(variance: number, weights: Readonly<Record<string, number>>): BudgetLine[] {
  const total = Object.values(weights).reduce((sum, weight) => sum + weight, 0);
  return Object.entries(weights).map(([name, weight]) => ({
    name,
    type: 'B',
    distribution: 'rectangular',
    standardUncertainty: Math.sqrt((variance * weight) / total),
    degreesOfFreedom: Infinity,
    sharedKey: null,
  }));
}
