import { expect, it } from 'vitest';
import type { RatioSet } from '../../../src/analysis/ratio.ts';
import { describeRatio } from '../../../src/register/comparisons/ratio-text.ts';

it.each<readonly [string, RatioSet, string]>([
  ['an interval', { kind: 'bounded', low: 1.213, high: 1.632, level: 0.95 }, '1.40 (1.21 to 1.63)'],
  [
    'a narrow interval, with more digits',
    { kind: 'bounded', low: 1.3962, high: 1.4055, level: 0.95 },
    '1.4009 (1.3962 to 1.4055)',
  ],
  [
    'the complement of an interval, not clipped',
    { kind: 'complement', below: -3.21, above: 0.94, level: 0.95 },
    '1.40 (at most −3.2, or at least 0.9: the latency it is over cannot be told from zero)',
  ],
  [
    'everything',
    { kind: 'unbounded', level: 0.95 },
    '1.40 (any value fits: the latency it is over cannot be told from zero)',
  ],
])('says of %s what it is', (_case, set, text) => expect(describeRatio({ value: 1.4009, set })).toBe(text));
