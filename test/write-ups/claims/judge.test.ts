/** Intervals are stated here, so that what must follow can be read off them. */
import { describe, expect, it } from 'vitest';
import type { QuantityAssertion } from '../../../src/write-ups/claims/assertions.ts';
import { judgeQuantity, judgeRank, judgeVerdict } from '../../../src/write-ups/claims/judge.ts';
import { parseQuantity, type Quantity } from '../../../src/write-ups/claims/quantity.ts';
import type { Figure, VerdictData } from '../../../src/register/register.ts';
import { rate } from '../../../src/model/rate.ts';
import { bench, session } from '../../support/small-bench.ts';

const whole = bench([session('a', { rate: '25' }), session('b', { rate: '50' }, { rate: rate(50) })]);

function figure(low: number, high: number, more: Partial<Figure> = {}): Figure {
  return {
    id: 'difference/a/b',
    kind: 'difference',
    of: { session: 'a', than: 'b' },
    unit: 'ms',
    value: (low + high) / 2,
    interval: { low, high, level: 0.95 },
    readings: 20,
    runs: 4,
    excluded: 0,
    sources: [],
    text: 'as published',
    label: 'Difference',
    entry: '/figures/x/#y',
    ...more,
  };
}
const quantity = (text: string): Quantity => parseQuantity(text) ?? { unit: 'ms', value: NaN, text };
const judge = (of: Figure, assertion: QuantityAssertion, text: string) =>
  judgeQuantity(whole, of, assertion, quantity(text));

describe('a claim of a quantity holds only where the whole interval does', () => {
  it.each<[assertion: QuantityAssertion, text: string, low: number, high: number, miss: string | undefined]>([
    ['atLeast', '100 ms', 100, 120, undefined],
    ['atLeast', '100 ms', 99, 130, 'too-low by 1.0 ms'],
    ['atLeast', '-4 ms', -3, 1, undefined],
    ['atMost', '100 ms', 80, 100, undefined],
    ['atMost', '100 ms', 80, 112, 'too-high by 12 ms'],
    ['sameWithin', '8 ms', -8, 8, undefined],
    ['sameWithin', '8 ms', -9, 3, 'too-low by 1.0 ms'],
    ['sameWithin', '8 ms', -9, 20, 'too-high by 12 ms'],
    ['noLowerBy', '8 ms', -7, 90, undefined],
    ['noLowerBy', '8 ms', -10, -9, 'too-low by 2.0 ms'],
    ['noHigherBy', '8 ms', -90, 7, undefined],
    ['noHigherBy', '8 ms', 0, 9, 'too-high by 1.0 ms'],
    // 50 frames/s, the faster of the two: 20 ms.
    ['atLeast', '2 frames', 41, 60, undefined],
    ['atLeast', '2 frames', 39, 60, 'too-low by 1.0 ms'],
    ['sameWithin', 'half a frame', -10, 10, undefined],
    ['sameWithin', 'half a frame', -10.5, 9, 'too-low by 0.50 ms'],
  ])('%s %s of %d to %d ms', (assertion, text, low, high, miss) => {
    const judged = judge(figure(low, high), assertion, text);
    const said =
      judged.kind === 'fails' && 'off' in judged.evidence.miss
        ? `${judged.evidence.miss.kind} by ${judged.evidence.miss.off}`
        : judged.kind === 'holds'
          ? undefined
          : judged.kind;
    expect(said).toBe(miss);
  });

  it('takes shares and plain numbers of a ratio, which is one where both are equal', () => {
    const ratio = figure(0.42, 0.5, { id: 'ratio/a/b', kind: 'ratio', unit: '1' });
    expect(judge(ratio, 'atMost', 'half').kind).toBe('holds');
    expect(judge(ratio, 'atMost', '0.49').kind).toBe('fails');
    expect(judge(figure(0.95, 1.04, { kind: 'ratio', unit: '1' }), 'sameWithin', '5 %').kind).toBe('holds');
    expect(judge(figure(0.94, 1.04, { kind: 'ratio', unit: '1' }), 'sameWithin', '5 %').kind).toBe('fails');
    expect(judge(ratio, 'atMost', '10 ms')).toEqual({ kind: 'no-question', why: 'unit' });
  });

  it('goes by the value where a figure is exact, and by nothing where an interval is wanting', () => {
    const { interval, ...exact } = figure(3, 3, {
      id: 'count/bodies',
      kind: 'count',
      of: { count: 'bodies' },
      unit: '1',
    });
    expect(interval).toBeDefined();
    expect(judge(exact, 'exactly', '3').kind).toBe('holds');
    expect(judge(exact, 'exactly', '4').kind).toBe('fails');
    expect(judge(exact, 'sameWithin', '4')).toEqual({ kind: 'no-question', why: 'one-sided' });
    expect(judge({ ...figure(200, 200), reason: 'no-scatter' }, 'atLeast', '100 ms')).toMatchObject({
      kind: 'fails',
      evidence: { miss: { kind: 'no-interval' } },
    });
  });
});

describe('a claim of a verdict', () => {
  const verdict = (word: VerdictData['word']): Figure =>
    figure(1, 9, { verdict: { word, marginMs: 10, family: 'f', familySize: 3, pAdjusted: 0.21, pSameAdjusted: 0.3 } });
  it('holds where the verdict is that word', () =>
    expect(judgeVerdict(verdict('slower'), 'slower').kind).toBe('holds'));
  it('fails where it is another', () =>
    expect(judgeVerdict(verdict('faster'), 'slower')).toMatchObject({ evidence: { miss: { kind: 'other-verdict' } } }));
  it('says how far off where nothing is settled', () => {
    expect(judgeVerdict(verdict('not-settled'), 'slower')).toMatchObject({
      evidence: { miss: { kind: 'not-shown', p: '0.21' } },
    });
    expect(judgeVerdict(verdict('not-settled'), 'same')).toMatchObject({
      evidence: { miss: { kind: 'not-shown', p: '0.30' } },
    });
    expect(judgeVerdict(verdict('not-settled'), 'not-settled').kind).toBe('holds');
  });
});

describe('a claim of a rank', () => {
  const total = (id: string, value: number, standardUncertainty: number): Figure =>
    figure(value, value, {
      id,
      kind: 'total',
      of: { session: id },
      value,
      text: `${value} ms`,
      components: [
        {
          name: 'repeatability',
          type: 'A',
          distribution: 't',
          standardUncertainty,
          degreesOfFreedom: null,
          share: 1,
          shared: null,
        },
      ],
    });
  const [low, near, high] = [total('low', 100, 1), total('near', 101, 1), total('high', 150, 1)] as const;

  it('holds for the one that is told from every other', () => {
    expect(judgeRank(low, 'lowestOf', [low, high]).kind).toBe('holds');
    expect(judgeRank(high, 'highestOf', [low, near]).kind).toBe('holds');
  });
  // 1 ms apart with u = √2 ms: p = 0.48 (normal distribution), far from 0.05.
  it('fails where another cannot be told from it', () =>
    expect(judgeRank(low, 'lowestOf', [high, near])).toMatchObject({
      evidence: { miss: { kind: 'tied', rivals: ['near (101 ms)'] } },
    }));
  it('fails where another is beyond it', () =>
    expect(judgeRank(near, 'lowestOf', [low])).toMatchObject({
      evidence: { miss: { kind: 'beaten', rival: 'low (100 ms)', off: '1.0 ms' } },
    }));
  it('is no question for figures without a budget', () =>
    expect(judgeRank(figure(1, 2), 'lowestOf', [])).toEqual({ kind: 'no-question', why: 'not-rankable' }));
});
