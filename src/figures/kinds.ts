import type { Figure } from './register.ts';

/** What each kind of figure is called and what it is, in words: the one place that says so. */
export interface Kind {
  readonly label: string;
  readonly unit: 'ms' | 'frames' | '1';
  /** Section of the entry page on which the figure stands, and its anchor there. */
  readonly anchor: string;
  /** How it is computed, in one sentence. */
  readonly inWords: string;
}

const kind = (anchor: string, label: string, unit: Kind['unit'], inWords: string): Kind => ({ anchor, label, unit, inWords });

/** Figures of two sessions or more; each kind's words say what its figures have in common. */
const COMPARISON_KINDS = {
  difference: kind('difference', 'Difference', 'ms', 'The total latency of one session less that of another: components that both share count once, so what is equal in both falls out.'),
  ratio: kind('ratio', 'Ratio', '1', 'The total latency of one session over that of another, with Fieller’s interval.'),
  verdict: kind('verdict', 'Verdict', 'ms', 'What a difference allows to say, adjusted for all comparisons that are read together.'),
  family: kind('family', 'Comparisons read together', '1', 'How many comparisons were adjusted together.'),
  effect: kind('effect', 'Effect of a setting', 'ms', 'From a weighted linear model of the sessions’ totals on their settings.'),
  'effect-verdict': kind('effect-verdict', 'Effect of a setting, in words', 'ms', 'What an effect allows to say, adjusted for all effects of its model.'),
  interaction: kind('interaction', 'How an effect depends on another setting', 'ms', 'From a weighted linear model of the sessions’ totals on their settings: a difference of differences.'),
  'interaction-verdict': kind('interaction-verdict', 'How an effect depends on another setting, in words', 'ms', 'What an interaction allows to say, adjusted for all interactions of its model.'),
} as const satisfies Record<string, Kind>;

export const KINDS = {
  total: kind('total', 'Total latency', 'ms', 'The mean age of the picture on the display, display included: the mean of the readings that count, with the rig’s corrections.'),
  frames: kind('frames', 'Total latency in frames', 'frames', 'Total latency times the body’s exact frame rate.'),
  mean: kind('mean', 'Mean of the readings', 'ms', 'The sum of the readings that count, divided by their number, before any correction.'),
  median: kind('median', 'Median', 'ms', 'The middle reading, or the midpoint of the two middle ones.'),
  'standard-deviation': kind('standard-deviation', 'Standard deviation of one reading', 'ms', 'The root of the summed squared deviations from the mean over n − 1.'),
  'standard-error': kind('standard-error', 'Standard error of the mean', 'ms', 'The standard deviation over the root of n: what the scatter alone would claim, as if every reading were independent.'),
  minimum: kind('minimum', 'Smallest reading', 'ms', 'The smallest reading that counts.'),
  maximum: kind('maximum', 'Largest reading', 'ms', 'The largest reading that counts.'),
  range: kind('range', 'Range', 'ms', 'The largest reading less the smallest.'),
  readings: kind('readings', 'Readings that count', '1', 'How many readings entered the mean.'),
  runs: kind('runs', 'Runs', '1', 'How many clips, each started afresh, the readings come from.'),
  excluded: kind('excluded', 'Readings excluded', '1', 'How many readings are kept and shown, but do not count; each with its reason.'),
  ...COMPARISON_KINDS,
  count: kind('counts', 'Count', '1', 'Counted over everything in data/.'),
} as const satisfies Record<string, Kind>;

export type KindName = keyof typeof KINDS;

/** How a figure is computed, in words. */
export function inWordsOf({ kind: name, inWords }: Pick<Figure, 'kind' | 'inWords'>): string {
  return inWords ?? (isKind(name) ? KINDS[name].inWords : '');
}

export function isKind(name: string): name is KindName {
  return Object.hasOwn(KINDS, name);
}
