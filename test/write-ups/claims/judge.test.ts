/** Intervals are stated here, so that what must follow can be read off them. */
import { describe, expect, it } from 'vitest';
import type { QuantityAssertion } from '../../../src/write-ups/claims/assertions.ts';
import { judgeQuantity, judgeRank, judgeVerdict } from '../../../src/write-ups/claims/judge.ts';
import { adjustHolm } from '../../../src/analysis/holm.ts';
import { pOutside } from '../../../src/register/comparisons/p-outside.ts';
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
/** The only statement of its write-up: its own p is below 0.05 wherever its interval is within. */
const judge = (of: Figure, assertion: QuantityAssertion, text: string, p = 0.05) =>
  judgeQuantity(whole, of, assertion, quantity(text), () => p);

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

describe('a claim among others', () => {
  it('fails where its own interval holds and the adjusted one does not', () => {
    const own = figure(100, 120);
    expect(judge(own, 'atLeast', '99 ms', 0.05).kind).toBe('holds');
    expect(judge(own, 'atLeast', '99 ms', 0.051)).toMatchObject({
      kind: 'fails',
      evidence: { miss: { kind: 'not-shown', p: '0.051' } },
    });
  });

  it('has p by the normal distribution where only an interval is known, 0.05 where that just holds', () => {
    const site = { figure: () => undefined };
    // R: 2 * pnorm(-1.959964 * 14/10) is 0.0060727 (from memory of the table: 2·Φ(−2.744))
    expect(pOutside(figure(100, 120), { low: 100, high: Infinity }, site)).toBeCloseTo(0.05, 9);
    expect(pOutside(figure(100, 120), { low: 96, high: Infinity }, site)).toBeCloseTo(0.00607, 5);
    expect(pOutside(figure(-8, 8), { low: -8, high: 10 }, site)).toBeCloseTo(0.05, 9);
    expect(pOutside(figure(-8, 8), { low: 1, high: 3 }, site)).toBe(1);
  });

  it('has the p of the distribution that its figure keeps', () => {
    // an error that is even between −10 and 10: 2·P(error ≥ 9) is 2·(1/20)
    const even = (x: number): number => Math.min(1, Math.max(0, (10 - x) / 20));
    const own = figure(90, 110, { errorTail: even });
    expect(pOutside(own, { low: 91, high: Infinity }, { figure: () => undefined })).toBeCloseTo(0.1, 12);
  });

  it('of a ratio is that of y₁ − ρ·y₂', () => {
    const total = (id: string, value: number, u: number): Figure =>
      figure(value - 2 * u, value + 2 * u, {
        id: `total/${id}`,
        kind: 'total',
        of: { session: id },
        value,
        components: [
          {
            name: 'repeatability',
            type: 'A',
            distribution: 'normal',
            standardUncertainty: u,
            degreesOfFreedom: null,
            share: 1,
            shared: null,
          },
        ],
      });
    const known = new Map([total('a', 60, 3), total('b', 100, 8)].map((one) => [one.id, one]));
    const ratio = figure(0.5, 0.7, { id: 'ratio/a/b', kind: 'ratio', unit: '1', value: 0.6 });
    // 60 − 0.5·100 = 10 with u = √(3² + 4²) = 5: 2·(1 − Φ(2)) = 0.0455
    const p = pOutside(ratio, { low: 0.5, high: Infinity }, { figure: (id) => known.get(id) });
    expect(p).toBeCloseTo(0.0455, 4);
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
    expect(judgeRank(low, 'lowestOf', [high], adjustHolm).kind).toBe('holds');
    expect(judgeRank(high, 'highestOf', [low, near], adjustHolm).kind).toBe('holds');
  });
  // 1 ms apart with u = √2 ms: p = 0.48 (normal distribution), far from 0.05.
  it('fails where another cannot be told from it', () =>
    expect(judgeRank(low, 'lowestOf', [high, near], adjustHolm)).toMatchObject({
      evidence: { miss: { kind: 'tied', rivals: ['near (101 ms)'] } },
    }));
  // 50 ms apart with u = √2 ms: told by far, but for an adjustment that leaves nothing
  it('is adjusted with all else that the write-up says', () =>
    expect(judgeRank(low, 'lowestOf', [high], (p) => p.map(() => 0.06))).toMatchObject({
      evidence: { miss: { kind: 'tied' } },
    }));
  it('fails where another is beyond it', () =>
    expect(judgeRank(near, 'lowestOf', [low], adjustHolm)).toMatchObject({
      evidence: { miss: { kind: 'beaten', rival: 'low (100 ms)', off: '1.0 ms' } },
    }));
  it('is no question for figures without a budget', () =>
    expect(judgeRank(figure(1, 2), 'lowestOf', [], adjustHolm)).toEqual({ kind: 'no-question', why: 'not-rankable' }));
});
