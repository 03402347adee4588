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
