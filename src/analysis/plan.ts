/**
 * How many runs, how many readings in each and how far apart: the least work that gives what is wanted.
 *
 * Designs are tried from the least work on, each simulated on the rig and analysed as real sessions are
 * (`precision.ts`). Work is counted in readings; a restart counts as three.
 */
import type { BudgetedValue } from './components.ts';
import { estimateDifference } from './difference.ts';
import { intervalAt } from './error-tail.ts';
import { advisedSpacingMs, simulateTrials, type Design, type Setup, type Trial } from './precision.ts';
import { propagateSum } from './propagate.ts';
import type { Level } from './variation.ts';
import { hypot } from './elementary.ts';

/** A half-width U for one session, or a smallest difference of two sessions on the rig and the power to see it. */
export type Wanted =
  | { readonly kind: 'half-width'; readonly halfWidthMs: number }
  | { readonly kind: 'difference'; readonly differenceMs: number; readonly power: number };

export interface Plan extends Design {
  /** False where no design tried gives what is wanted; the plan is then the best of them. */
  readonly reached: boolean;
  /** Mean half-width of a session's interval, in ms. */
  readonly halfWidthMs: number;
  /** Of what that interval speaks. */
  readonly speaksOf: Level;
  /** Mean half-width of the mean of two such sessions on different days, where their intervals speak of the condition. */
  readonly twoDaysMs?: number;
  /** Share of pairs of sessions whose interval for the difference leaves 0 out, with its true value as wanted. */
  readonly power?: number;
  /** Standard uncertainty that no further reading takes away: the rig's and the instrument's own, in ms. */
  readonly floorMs: number;
}

/** So many clips make up for rates that stay in step within a clip, and show whether the delay changes from clip to clip. */
export const CLIPS_ENOUGH = 4;
const RUNS = [CLIPS_ENOUGH, 6, 8];
const READINGS = [3, 5, 8, 12, 20, 30];
/** A restart takes as much work as so many readings; common practice, no source. */
export const RESTART_WORK = 3;
const SESSIONS = 16;

/** Clips and readings in each, from the least work on. */
const LADDER: readonly (readonly [runs: number, readings: number])[] = [
  [CLIPS_ENOUGH, 3],
  [CLIPS_ENOUGH, 5],
  [CLIPS_ENOUGH, 8],
  [6, 8],
  [8, 10],
  [8, 20],
];
/** What one person films and reads off in half an hour to an hour; common practice, no source. */
const EVENING_READINGS = 40;
/** A step up the ladder pays where it narrows the interval by at least this share. */
const LEAST_NARROWING = 0.1;

export interface Ladder {
  readonly rungs: readonly Plan[];
  /** The one to take where nothing else is wanted: as far up as steps pay and an evening lasts. */
  readonly recommended: Plan;
  /** Whether the step up from it would narrow the interval by less than is worth it. */
  readonly isEnough: boolean;
}

/** What ever more readings and clips give on a rig, where no wish says how much is enough. */
export function planLadder(setup: Setup): Ladder {
  return ladderOf(LADDER, (runs, readings) => {
    const design = { runs, readings, spacingMs: advisedSpacingMs(setup, readings) };
    return assess(design, simulateTrials(setup, design, SESSIONS), { kind: 'half-width', halfWidthMs: Infinity });
  });
}

/** The steps of a ladder, each as `planOf` finds it, and how far up to go. */
export function ladderOf(steps: typeof LADDER, planOf: (runs: number, readings: number) => Plan): Ladder {
  const rungs = steps.map(([runs, readings]) => planOf(runs, readings));
  const pays = (at: number): boolean =>
    (rungs[at]?.halfWidthMs ?? Infinity) <= (1 - LEAST_NARROWING) * (rungs[at - 1]?.halfWidthMs ?? 0);
  let at = 0;
  while (pays(at + 1) && workOf(rungs[at + 1]) <= EVENING_READINGS) at += 1;
  return { rungs, recommended: rungs[at] as Plan, isEnough: !pays(at + 1) };
}

function workOf(plan: Plan | undefined): number {
  return plan === undefined ? Infinity : plan.runs * plan.readings;
}

/** The plan of least work. Throws a RangeError for wishes that no plan can have. */
export function planSession(setup: Setup, wanted: Wanted): Plan {
  check(wanted);
  return leastWork(
    designsByWork().map(([runs, readings]) => () => {
      const design = { runs, readings, spacingMs: advisedSpacingMs(setup, readings) };
      return assess(design, simulateTrials(setup, design, SESSIONS), wanted);
    }),
  );
}

/** The first plan that gives what is wanted, of several from the least work on; else the best of them. */
export function leastWork(plans: readonly (() => Plan)[]): Plan {
  let best: { plan: Plan; score: number } | undefined;
  for (const planOf of plans) {
    const plan = planOf();
    if (plan.reached) return plan;
    const score = plan.power ?? -plan.halfWidthMs;
    if (!best || score > best.score) best = { plan, score };
  }
  return best!.plan;
}

function assess(design: Design, trials: readonly Trial[], wanted: Wanted): Plan {
  const halfWidthMs = trials.reduce((sum, { estimate }) => sum + estimate.expandedUncertainty, 0) / trials.length;
  const { components, speaksOf } = trials[0]!.estimate;
  const shared = components.filter(({ sharedKey }) => sharedKey !== null);
  const common = {
    ...design,
    halfWidthMs,
    speaksOf,
    ...(speaksOf === 'condition' ? { twoDaysMs: halfWidthOfTwo(trials) } : {}),
    floorMs: hypot(...shared.map(({ standardUncertainty }) => standardUncertainty)),
  };
  if (wanted.kind === 'half-width') return { ...common, reached: halfWidthMs <= wanted.halfWidthMs };
  const power = powerOfPairs(trials, wanted.differenceMs);
  return { ...common, power, reached: power >= wanted.power };
}

/** Each trial with the next: what the rig shifts alike is in both. */
function halfWidthOfTwo(trials: readonly Trial[]): number {
  const widths = trials.slice(1).map((trial, i) => {
    const mean = propagateSum([
      [0.5, budgetOf(trials[i]!, 'one')],
      [0.5, budgetOf(trial, 'other')],
    ]);
    const { low, high } = intervalAt(mean, trial.estimate.interval.level);
    return (high - low) / 2;
  });
  return widths.reduce((sum, width) => sum + width, 0) / widths.length;
}

/** A trial as a figure whose value is what it was off by. */
function budgetOf({ estimate: { errors, speaksOf, components }, errorMs }: Trial, key: string): BudgetedValue {
  return { value: errorMs, own: { key, error: errors[speaksOf] }, components };
}

/** Share of all pairs of trials, one of them slower by `differenceMs`, whose difference is told from 0. */
export function powerOfPairs(trials: readonly Trial[], differenceMs: number): number {
  let [seen, pairs] = [0, 0];
  trials.forEach((a, i) => {
    for (const b of trials.slice(i + 1)) {
      const slower = budgetOf(a, 'slower');
      const found = estimateDifference(
        { ...slower, value: slower.value + differenceMs },
        budgetOf(b, 'faster'),
        a.estimate.interval.level,
      );
      if (found.kind === 'difference' && found.interval.low > 0) seen += 1;
      pairs += 1;
    }
  });
  return seen / pairs;
}

/** Clips and readings in each, from the least work on. */
export function designsByWork(): (readonly [runs: number, readings: number])[] {
  const work = ([runs, readings]: readonly [number, number]): number => runs * readings + (runs - 1) * RESTART_WORK;
  return RUNS.flatMap((runs) => READINGS.map((readings) => [runs, readings] as const)).sort(
    (a, b) => work(a) - work(b) || a[0] - b[0],
  );
}

function check(wanted: Wanted): void {
  const size = wanted.kind === 'half-width' ? wanted.halfWidthMs : wanted.differenceMs;
  if (!(size > 0 && Number.isFinite(size)))
    throw new RangeError(`a plan needs a ${wanted.kind} above 0 ms, not ${size}`);
  if (wanted.kind === 'difference' && !(wanted.power > 0 && wanted.power < 1))
    throw new RangeError(`a power lies between 0 and 1, not at ${wanted.power}`);
}
