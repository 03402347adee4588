import { combineComponents, type CombinedUncertainty } from './components.ts';
import { tQuantile } from './distributions.ts';
import { noncentralTLowerTail, noncentralTUpperTail } from './noncentral-t.ts';

/** One side of a difference: the part of its uncertainty that averages over runs. */
export interface RunSide extends CombinedUncertainty {
  /** Runs taken so far, at least 1. */
  readonly runs: number;
}

export interface RunPlan {
  readonly sides: readonly [RunSide, RunSide];
  /** The part of the difference's uncertainty that more runs leave as it is. */
  readonly fixed: CombinedUncertainty;
  /** Where more runs leave something that other days would average. */
  readonly otherDays?: {
    /** Of each session, all that averages over sessions like it on other days. */
    readonly sides: readonly [CombinedUncertainty, CombinedUncertainty];
    readonly fixed: CombinedUncertainty;
  };
}

export type FurtherRuns =
  /**
   * `each`: further runs on each side, or sessions like these on other days where those are less work. `as`: what they
   * would show, were the true difference the observed one.
   */
  | {
      readonly kind: 'runs' | 'sessions';
      readonly each: number;
      readonly as: 'difference' | 'sameness';
      readonly power: number;
    }
  /** `too-many`: more than a thousand on each side, or no number. `no-plan`: nobody said what averages over runs. */
  | { readonly kind: 'out-of-reach'; readonly reason: 'too-many' | 'no-plan' };

const PLANNED_POWER = 0.8;
const MOST_RUNS = 1000;
/** Setting everything up on another day takes as much work as so many runs; common practice, no source. */
const SETTING_UP = 3;

/**
 * How many further runs on each side would settle a comparison, with a probability of `power` (0.8), if the true
 * difference is the one observed.
 *
 * With m more runs a side's averaging part shrinks to u·√(runs/(runs + m)) and gains m degrees of freedom. A difference
 * is seen with the noncentral t tail beyond the two-sided critical value; sameness within ± margin is shown at least
 * with 1 − β₁ − β₂, β the chances that either one-sided test fails. The smaller number of the two ways is returned. What
 * changes from day to day does not average over runs; where sessions on other days are less work, they are returned.
 *
 * Domain: margin above 0, alpha below 0.5. Source: noncentral t as in R's power.t.test; the bound on the power of two
 * one-sided tests is Bonferroni's inequality.
 */
export function planFurtherRuns(
  difference: number,
  plan: RunPlan | undefined,
  margin: number,
  alpha = 0.05,
  power = PLANNED_POWER,
): FurtherRuns {
  if (plan === undefined) return { kind: 'out-of-reach', reason: 'no-plan' };
  const runs = furtherOf('runs', difference, plan, margin, alpha, power);
  const { otherDays } = plan;
  if (otherDays === undefined) return runs;
  const [a, b] = otherDays.sides;
  const days = {
    sides: [
      { ...a, runs: 1 },
      { ...b, runs: 1 },
    ],
    fixed: otherDays.fixed,
  } as const;
  const sessions = furtherOf('sessions', difference, days, margin, alpha, power);
  const inEach = Math.max(...plan.sides.map((side) => side.runs));
  return workOf(sessions, inEach + SETTING_UP) < workOf(runs, 1) ? sessions : runs;
}

/** In runs. */
function workOf(further: FurtherRuns, runsInEach: number): number {
  return further.kind === 'out-of-reach' ? Infinity : further.each * runsInEach;
}

function furtherOf(
  kind: 'runs' | 'sessions',
  difference: number,
  plan: RunPlan,
  margin: number,
  alpha: number,
  power: number,
): FurtherRuns {
  const size = Math.abs(difference);
  // A normal distribution has thinner tails than any t, so where it asks for a run, t does too: exact powers start from there.
  const normal = (m: number): CombinedUncertainty => ({ ...uncertaintyAfter(plan, m), degreesOfFreedom: Infinity });
  const toSeparate = fewestRuns(
    (m) => powerOfDifference(size, uncertaintyAfter(plan, m), alpha) >= power,
    fewestRuns((m) => powerOfDifference(size, normal(m), alpha) >= power),
  );
  const toEquate =
    size >= margin
      ? undefined
      : fewestRuns(
          (m) => powerOfSameness(size, uncertaintyAfter(plan, m), margin, alpha) >= power,
          fewestRuns((m) => powerOfSameness(size, normal(m), margin, alpha) >= power),
        );
  if (toSeparate === undefined && toEquate === undefined) return { kind: 'out-of-reach', reason: 'too-many' };
  const separate = toSeparate ?? Infinity;
  const equate = toEquate ?? Infinity;
  return { kind, each: Math.min(separate, equate), as: separate <= equate ? 'difference' : 'sameness', power };
}

/** The difference's combined uncertainty with m further runs on each side. */
export function uncertaintyAfter({ sides, fixed }: RunPlan, m: number): CombinedUncertainty {
  return combineComponents([
    ...sides.map(({ standardUncertainty, degreesOfFreedom, runs }) => ({
      standardUncertainty: standardUncertainty * Math.sqrt(runs / (runs + m)),
      degreesOfFreedom: degreesOfFreedom + m,
    })),
    fixed,
  ]);
}

function powerOfDifference(
  size: number,
  { standardUncertainty: u, degreesOfFreedom }: CombinedUncertainty,
  alpha: number,
): number {
  if (size === 0) return 0;
  if (u === 0) return 1;
  return noncentralTUpperTail(tQuantile(1 - alpha / 2, degreesOfFreedom), degreesOfFreedom, size / u);
}

function powerOfSameness(
  size: number,
  { standardUncertainty: u, degreesOfFreedom }: CombinedUncertainty,
  margin: number,
  alpha: number,
): number {
  if (u === 0) return 1;
  const critical = tQuantile(1 - alpha, degreesOfFreedom);
  const missed = (distance: number): number => noncentralTLowerTail(critical, degreesOfFreedom, distance / u);
  return Math.max(0, 1 - missed(margin - size) - missed(margin + size));
}

/**
 * The smallest m from `least` to MOST_RUNS for which a condition holds that stays true once it is; undefined for none,
 * and where `least` is none.
 */
function fewestRuns(settled: (m: number) => boolean, least: number | undefined = 1): number | undefined {
  if (least === undefined) return undefined;
  let low = least - 1;
  let high = least;
  for (let step = 1; !settled(high); step *= 2) {
    if (high >= MOST_RUNS) return undefined;
    low = high;
    high = Math.min(MOST_RUNS, high + step);
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (settled(middle)) high = middle;
    else low = middle;
  }
  return high;
}
