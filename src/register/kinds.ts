import type { Figure } from './register.ts';

/** What each kind of figure is called and what it is, in words: the one place that says so. */
export interface Kind {
  readonly label: string;
  readonly unit: 'ms' | 'frames' | 'm' | '1';
  /** Section of the entry page on which the figure stands, and its anchor there. */
  readonly anchor: string;
  /** How it is computed, in one sentence. */
  readonly inWords: string;
}

const kind = (anchor: string, label: string, unit: Kind['unit'], inWords: string): Kind => ({
  anchor,
  label,
  unit,
  inWords,
});

/** Figures of two sessions or more; each kind's words say what its figures have in common. */
const COMPARISON_KINDS = {
  difference: kind(
    'difference',
    'Difference',
    'ms',
    'The total latency of one session less that of another: components that both share count once, so what is equal in both cancels.',
  ),
  ratio: kind(
    'ratio',
    'Ratio',
    '1',
    'The total latency of one session over that of another, with the interval of those ratios at which the one less that many times the other does not contradict zero; what both share counts once.',
  ),
  verdict: kind(
    'verdict',
    'Verdict',
    'ms',
    'What a difference allows to say, adjusted for all comparisons that are read together.',
  ),
  cost: kind(
    'cost',
    'Over the lowest total',
    'ms',
    'The total latency of a session less the lowest one of its body, through the same chain.',
  ),
  later: kind(
    'later',
    'Later than the least',
    'ms',
    'The total latency of a body less the lowest one in the same condition, through the same chain.',
  ),
  family: kind('family', 'Comparisons read together', '1', 'How many comparisons were adjusted together.'),
  effect: kind(
    'effect',
    'Effect of a setting',
    'ms',
    'From a weighted linear model of the sessions’ totals on their settings; where it depends on another setting, averaged over the levels at which both ends of the step were measured.',
  ),
  'effect-verdict': kind(
    'effect-verdict',
    'Effect of a setting, in words',
    'ms',
    'What an effect allows to say, adjusted for all effects of its model.',
  ),
  interaction: kind(
    'interaction',
    'How an effect depends on another setting',
    'ms',
    'From a weighted linear model of the sessions’ totals on their settings: a difference of differences.',
  ),
  'interaction-verdict': kind(
    'interaction-verdict',
    'How an effect depends on another setting, in words',
    'ms',
    'What an interaction allows to say, adjusted for all interactions of its model.',
  ),
} as const satisfies Record<string, Kind>;

/** How total latency goes with the frame rate. */
const RATE_LAW_KINDS = {
  'rate-law-fixed': kind(
    'rate-law-fixed',
    'Part that no frame rate changes',
    'ms',
    'Where the fitted line of total latency against frame interval meets an interval of zero: weighted least squares over the sessions that are alike in all but the rate, display and links included. Where there is a floor, the line of the slower rates.',
  ),
  'rate-law-frames': kind(
    'rate-law-frames',
    'Frame intervals of latency',
    'frames',
    'The slope of the fitted line of total latency against frame interval; at least one half, because a frame stays on the display for an interval and is half an interval old on the mean. Where there is a floor, the line of the slower rates.',
  ),
  'rate-law-fixed-within': kind(
    'rate-law-fixed-within',
    'Largest part that no frame rate changes, either way',
    'ms',
    'The smallest bound within which two one-sided tests at 5 % place the part that no frame rate changes.',
  ),
  'rate-law-frames-within': kind(
    'rate-law-frames-within',
    'Most frame intervals beyond the wait on the display',
    'frames',
    'One-sided upper limit at 95 % of the slope less the half interval that every frame waits on the display.',
  ),
  'rate-law-lack-of-fit': kind(
    'rate-law-lack-of-fit',
    'Lack of fit of the rate law, p',
    '1',
    'The probability of rates lying so far from the line if the line were true: χ² of the weighted mean at each rate about one line through all of them.',
  ),
  'rate-law-floor': kind(
    'rate-law-floor',
    'Latency that no faster rate goes below',
    'ms',
    'The weighted mean of the fastest rates, where these lie above the line through all slower ones and agree with one level.',
  ),
  'rate-law-break': kind(
    'rate-law-break',
    'Frame interval at which the floor is reached',
    'ms',
    'Where the line through the slower rates meets the floor, (floor − fixed part)/frames, with the interval of a ratio; at shorter frame intervals a faster rate helps no longer.',
  ),
  'rate-law-floor-test': kind(
    'rate-law-floor-test',
    'Test for a floor, p',
    '1',
    'The probability of the fastest rates lying so far above the line through the slower ones if they lay on it: one-sided, by the distribution of its error, the smallest over all places a floor could begin, adjusted for their number (Holm).',
  ),
} as const satisfies Record<string, Kind>;

/** The parts of the chain. */
const CHAIN_KINDS = {
  'display-difference': kind(
    'display-difference',
    'Delay of one display over another',
    'ms',
    'Two displays show one picture of a running timer, and both values are read at one moment: what the one shows later than the other in mid-screen, links before either included, from the mean of a posterior that knows the refreshes of picture, displays and observer.',
  ),
  element: kind(
    'element',
    'Latency of one part of the chain',
    'ms',
    'Weighted least squares of total = body in its condition + links + display over all sessions that share a part.',
  ),
  bracket: kind(
    'bracket',
    'Lowest and highest possible latency',
    'ms',
    'No part of a chain takes less than it must (a body half a frame interval and its readout, a display on its own clock half its refresh interval, any other nothing), so none takes more than the totals leave it: limits from every session’s 99.9 % interval, applied until nothing narrows. Nothing says where between the limits the truth lies. The value is their midpoint.',
  ),
} as const satisfies Record<string, Kind>;

/** By way of the chain, to a display that was not there. */
const CARRIED_KINDS = {
  carried: kind(
    'carried',
    'Total latency carried to another display',
    'ms',
    'What a body itself takes in its condition and what the display takes, as the weighted least squares of the chain give them together, with nothing in between; of a display whose delay is chosen, that delay, exactly. It was not measured: it holds as far as delays add up.',
  ),
  'carried-difference': kind(
    'carried-difference',
    'Difference between bodies, carried',
    'ms',
    'What one body itself takes less what another does, from the weighted least squares of the chain: they were never measured through one chain.',
  ),
  'carried-verdict': kind(
    'carried-verdict',
    'Verdict, carried',
    'ms',
    'What a carried difference allows to say, adjusted for all that are read together.',
  ),
} as const satisfies Record<string, Kind>;

/** Sessions on different days, and with different firmware. */
const REPEAT_KINDS = {
  'repeat-mean': kind(
    'repeat-mean',
    'Mean over repeat sessions',
    'ms',
    'The mean of the sessions’ totals, each counting once. Its error is that of the sessions, of their days about the condition, and of what all share on the rig: the sizes by which days differ are those that the publication states or assumes, weighed by these sessions’ scatter.',
  ),
  'repeat-between': kind(
    'repeat-between',
    'Standard deviation between sessions',
    'ms',
    'The root of the variance of the sessions’ totals less the mean of their own variances (ISO 5725-2, one-way); zero where their own uncertainties explain as much.',
  ),
  'repeat-between-at-most': kind(
    'repeat-between-at-most',
    'Largest standard deviation between sessions',
    'ms',
    'One-sided upper limit at 95 %: the largest standard deviation between sessions at which their totals, weighted by their uncertainties, would scatter so little in one case of twenty (Q-profile).',
  ),
  'repeat-next': kind(
    'repeat-next',
    'Where the next session would fall',
    'ms',
    'The mean of the repeat sessions, with the interval for one more: the mean’s own error, one more day, and the error of a session.',
  ),
  'firmware-change': kind(
    'firmware-change',
    'Change with the firmware',
    'ms',
    'The mean of the sessions with the later firmware less that of the sessions with the earlier one, alike in everything else; errors that both share on the rig cancel.',
  ),
} as const satisfies Record<string, Kind>;

export const KINDS = {
  total: kind(
    'total',
    'Total latency',
    'ms',
    'The mean age of the picture on the display, display included: the mean of its distribution given the readings that count and the rates of the rig, with the rig’s corrections.',
  ),
  frames: kind('frames', 'Total latency in frames', 'frames', 'Total latency times the body’s exact frame rate.'),
  mean: kind(
    'mean',
    'Mean of the readings',
    'ms',
    'The sum of the readings that count, divided by their number, before any correction.',
  ),
  median: kind('median', 'Median', 'ms', 'The middle reading, or the midpoint of the two middle ones.'),
  'standard-deviation': kind(
    'standard-deviation',
    'Standard deviation of one reading',
    'ms',
    'The root of the summed squared deviations from the mean over n − 1.',
  ),
  'standard-error': kind(
    'standard-error',
    'Standard error of the mean',
    'ms',
    'The standard deviation over the root of n: what the scatter alone would claim, as if every reading were independent.',
  ),
  minimum: kind('minimum', 'Smallest reading', 'ms', 'The smallest reading that counts.'),
  maximum: kind('maximum', 'Largest reading', 'ms', 'The largest reading that counts.'),
  range: kind('range', 'Range', 'ms', 'The largest reading less the smallest.'),
  readings: kind('readings', 'Readings that count', '1', 'How many readings the total rests on.'),
  runs: kind('runs', 'Runs', '1', 'How many clips, each started afresh, the readings come from.'),
  excluded: kind(
    'excluded',
    'Readings excluded',
    '1',
    'How many readings are kept and shown, but do not count; each with its reason.',
  ),
  ...RATE_LAW_KINDS,
  ...CHAIN_KINDS,
  ...CARRIED_KINDS,
  ...REPEAT_KINDS,
  ...COMPARISON_KINDS,
  moved: kind(
    'moved',
    'How far something moves in a total',
    'm',
    'A distance gone in the lowest total latency of a body, at a speed from a published source or of the publication’s own, said so.',
  ),
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
