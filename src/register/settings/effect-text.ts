/** The words of effects: what earns them is that the Holm-adjusted p of no effect is at most 0.05. */
import { describeMeasured, describeSignificant } from '../text.ts';

export interface SizedEffect {
  readonly value: number;
  /** Half-width of its interval. */
  readonly halfWidth: number;
  readonly pAdjusted: number;
  /** No larger than this in either direction, at 95 %. */
  readonly atMost: number;
}

const ALPHA = 0.05;

/** `adds 26.0 ± 3.1 ms`, `takes off 42 ± 8 ms`, `no effect found; if there is one, under 2.4 ms`. */
export function describeEffect({ value, halfWidth, pAdjusted, atMost }: SizedEffect): string {
  if (pAdjusted > ALPHA) return `no effect found; if there is one, under ${describeSignificant(atMost, 2, 'ms')}`;
  return `${value > 0 ? 'adds' : 'takes off'} ${describeMeasured(Math.abs(value), halfWidth, 'ms')}`;
}

/** `adds 19 ± 5 ms more there`, `no difference found; if there is one, under 4.0 ms`. */
export function describeInteraction({ value, halfWidth, pAdjusted, atMost }: SizedEffect): string {
  if (pAdjusted > ALPHA) return `no difference found; if there is one, under ${describeSignificant(atMost, 2, 'ms')}`;
  return `${describeMeasured(Math.abs(value), halfWidth, 'ms')} ${value > 0 ? 'more' : 'less'}`;
}
