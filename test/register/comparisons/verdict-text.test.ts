import { expect, it } from 'vitest';
import type { Comparison } from '../../../src/analysis/family.ts';
import { describeP, describeVerdict } from '../../../src/register/comparisons/verdict-text.ts';

const difference = (value: number, half: number): Comparison['difference'] => ({
  kind: 'difference',
  value,
  standardUncertainty: half / 2,
  errorTail: (x: number) => (x > 0 ? 0 : 1),
  interval: { low: value - half, high: value + half, level: 0.95 },
  p: 0.01,
  components: [],
  cancelled: [],
});
const none: Comparison['difference'] = { kind: 'not-estimable', value: 0, reason: 'no-scatter' };

it.each<readonly [string, Pick<Comparison, 'verdict' | 'difference'>, string]>([
  [
    'slower',
    { verdict: { kind: 'slower', withinMargin: false }, difference: difference(118.4, 12.1) },
    'slower by 118 ± 12 ms',
  ],
  [
    'faster, told without a minus sign',
    { verdict: { kind: 'faster', withinMargin: false }, difference: difference(-118.4, 12.1) },
    'faster by 118 ± 12 ms',
  ],
  [
    'slower, but less than what counts',
    { verdict: { kind: 'slower', withinMargin: true }, difference: difference(2.13, 0.94) },
    'slower by 2.13 ± 0.94 ms, which is less than 8.3 ms',
  ],
  ['the same', { verdict: { kind: 'same', margin: 8.34 }, difference: difference(0.3, 2) }, 'the same within ± 8.3 ms'],
  [
    'one run more',
    {
      verdict: { kind: 'not-settled', furtherRuns: { kind: 'runs', each: 1, as: 'difference', power: 0.8 } },
      difference: difference(5, 6),
    },
    'too close to call (about 1 further run on each side would settle it)',
  ],
  [
    'several runs more',
    {
      verdict: { kind: 'not-settled', furtherRuns: { kind: 'runs', each: 14, as: 'sameness', power: 0.8 } },
      difference: difference(5, 6),
    },
    'too close to call (about 14 further runs on each side would settle it)',
  ],
  [
    'other days',
    {
      verdict: { kind: 'not-settled', furtherRuns: { kind: 'sessions', each: 1, as: 'difference', power: 0.8 } },
      difference: difference(5, 6),
    },
    'too close to call (about 1 further session of each, on other days, would settle it)',
  ],
  [
    'out of reach',
    {
      verdict: { kind: 'not-settled', furtherRuns: { kind: 'out-of-reach', reason: 'too-many' } },
      difference: difference(8.3, 9),
    },
    'too close to call (nor would a thousand further runs on each side settle it)',
  ],
  [
    'no plan',
    {
      verdict: { kind: 'not-settled', furtherRuns: { kind: 'out-of-reach', reason: 'no-plan' } },
      difference: difference(8.3, 9),
    },
    'too close to call (how many further runs would settle it cannot be told)',
  ],
  [
    'no scatter',
    { verdict: { kind: 'not-estimable', reason: 'no-scatter' }, difference: none },
    'not to be judged: all readings of both sessions are equal, so nothing says how far they can be trusted',
  ],
  [
    'no budget',
    { verdict: { kind: 'not-estimable', reason: 'no-budget' }, difference: none },
    'not to be judged: one of the two sessions has no stated uncertainty',
  ],
])('%s', (_case, comparison, text) => expect(describeVerdict(comparison, 8.34)).toBe(text));

it.each([
  [0.00004, 'below 0.001'],
  [0.0321, '0.032'],
  [0.587, '0.59'],
  [1, '1.00'],
])('prints p %d as %s', (p, text) => expect(describeP(p)).toBe(text));
