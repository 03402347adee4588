/**
 * The words of every verdict, in one place; what earns which word is decided in analysis/verdict.ts.
 *
 * | the data show                                          | words                                                      |
 * |--------------------------------------------------------|------------------------------------------------------------|
 * | p of no difference, adjusted, at most 0.05             | slower by 118 ± 12 ms; faster by 118 ± 12 ms               |
 * | the same, and that it is less than the margin          | slower by 2.1 ± 0.9 ms, which is less than 8.3 ms          |
 * | no difference shown, and less than the margin shown    | the same within ± 8.3 ms                                   |
 * | neither                                                | too close to call (…further runs would settle it)          |
 * | no scatter, or no uncertainty, to judge by             | not to be judged: …                                        |
 */
import type { DifferenceResult, NoDifference } from '../../analysis/difference-result.ts';
import type { Comparison } from '../../analysis/family.ts';
import type { FurtherRuns } from '../../analysis/further-runs.ts';
import { plural } from '../provenance.ts';
import { describeMeasured, describeSignificant, roundTo } from '../text.ts';

export function describeVerdict(
  { verdict, difference }: Pick<Comparison<DifferenceResult>, 'verdict' | 'difference'>,
  marginMs: number,
): string {
  const margin = describeMargin(marginMs);
  switch (verdict.kind) {
    case 'slower':
    case 'faster':
      return `${verdict.kind} by ${describeSize(difference)}${verdict.withinMargin ? `, which is less than ${margin}` : ''}`;
    case 'same':
      return `the same within ± ${margin}`;
    case 'not-settled':
      return `too close to call (${describeFurtherRuns(verdict.furtherRuns)})`;
    case 'not-estimable':
      return `not to be judged: ${describeReason(verdict.reason)}`;
  }
}

/** `8.3 ms`, `10 ms`: as many digits as an author would state. */
export function describeMargin(marginMs: number): string {
  return describeSignificant(marginMs, 2, 'ms');
}

/** Why two sessions cannot be compared. */
export function describeReason(reason: NoDifference['reason']): string {
  return reason === 'no-scatter'
    ? 'all readings of both sessions are equal, so nothing says how far they can be trusted'
    : 'one of the two sessions has no stated uncertainty';
}

/** `below 0.001`, `0.032`. */
export function describeP(p: number): string {
  return p < 0.001 ? 'below 0.001' : roundTo(p, p < 0.1 ? 3 : 2);
}

function describeSize(difference: DifferenceResult | NoDifference): string {
  if (difference.kind === 'not-estimable') throw new Error('a verdict of slower or faster has an interval');
  const { value, interval } = difference;
  return describeMeasured(Math.abs(value), (interval.high - interval.low) / 2, 'ms');
}

function describeFurtherRuns(further: FurtherRuns): string {
  if (further.kind === 'out-of-reach') {
    return further.reason === 'too-many'
      ? 'nor would a thousand further runs on each side settle it'
      : 'how many further runs would settle it cannot be told';
  }
  return further.kind === 'sessions'
    ? `about ${plural(further.each, 'further session')} of each, on other days, would settle it`
    : `about ${plural(further.each, 'further run')} on each side would settle it`;
}
