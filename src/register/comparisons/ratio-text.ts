import type { Ratio, RatioSet } from '../../analysis/ratio.ts';
import { describeInterval, placeOfUncertainty, roundTo } from '../text.ts';

/**
 * `1.40 (1.21 to 1.63)`. Fieller's set is no interval where the denominator is not told from zero; then the text says
 * what it is instead, and clips nothing.
 */
export function describeRatio({ value, set }: Pick<Ratio, 'value' | 'set'>): string {
  if (set.kind !== 'bounded') return `${roundTo(value, 2)} (${describeUnbounded(set)})`;
  const place = Math.max(0, placeOfUncertainty((set.high - set.low) / 2));
  return `${roundTo(value, place)} (${describeInterval(set.low, set.high, '1')})`;
}

function describeUnbounded(set: Exclude<RatioSet, { kind: 'bounded' }>): string {
  if (set.kind === 'unbounded') return 'any value fits: the latency it is over cannot be told from zero';
  const place = Math.max(0, placeOfUncertainty((set.above - set.below) / 2));
  return `at most ${roundTo(set.below, place)}, or at least ${roundTo(set.above, place)}: the latency it is over cannot be told from zero`;
}
