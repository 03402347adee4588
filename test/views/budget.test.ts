/** A budget worked out by hand: what each printed number is follows from the arithmetic beside it. */
import { describe, expect, it } from 'vitest';
import type { Component, Figure } from '../../src/register/register.ts';
import { describeBudget } from '../../src/views/budget.ts';

const component = (name: string, standardUncertainty: number, more: Partial<Component> = {}): Component => ({
  name,
  type: 'B',
  distribution: 'rectangular',
  standardUncertainty,
  degreesOfFreedom: null,
  share: standardUncertainty ** 2 / 25,
  shared: null,
  ...more,
});

/** u = √(4² + 3²) = 5 ms; k = 2, so U = 10 ms; 248.9 + 4.25 − 1.25 = 251.9 ms. */
const total: Figure = {
  id: 'total/a',
  kind: 'total',
  of: { session: 'a' },
  unit: 'ms',
  value: 251.9,
  standardUncertainty: 5,
  interval: { low: 241.9, high: 261.9, level: 0.95 },
  coverageFactor: 2,
  components: [
    component('observer row skew', 3, { shared: 'rig:attic' }),
    component('repeatability', 4, { type: 'A', distribution: 'normal', degreesOfFreedom: 9 }),
    component('timer resolution', 0),
  ],
  uncorrected: 248.9,
  corrections: [
    { name: 'observer row skew', value: 4.25, standardUncertainty: 0.5 },
    { name: 'digits row', value: -1.25, standardUncertainty: 0.2 },
    { name: 'not applied', value: 0, standardUncertainty: 0.1 },
  ],
  readings: 10,
  runs: 1,
  excluded: 0,
  sources: [],
  text: '252 ± 10 ms',
  label: 'Total latency',
  entry: '/sessions/a/#total',
};

describe('a budget in words', () => {
  it('lists components largest first, with what they are the same for and their share of the variance', () => {
    // 16/25 = 64 %, 9/25 = 36 %
    expect(describeBudget(total).rows).toEqual([
      {
        name: 'repeatability',
        shared: '',
        type: 'A',
        distribution: 'normal',
        uncertainty: '4.0 ms',
        share: '64 %',
      },
      {
        name: 'observer row skew',
        shared: 'the same in every session on this rig',
        type: 'B',
        distribution: 'rectangular',
        uncertainty: '3.0 ms',
        share: '36 %',
      },
      {
        name: 'timer resolution',
        shared: '',
        type: 'B',
        distribution: 'rectangular',
        uncertainty: '0 ms',
        share: '0 %',
      },
    ]);
  });

  it('states u, U = k·u with its coverage, and k', () => {
    expect(describeBudget(total).total).toEqual({
      uncertainty: '5.0 ms',
      expanded: 'Expanded uncertainty U = 10 ms at 95 % coverage, coverage factor k = 2.00.',
    });
  });

  it('takes U from the interval, whatever k is, and says the level that the interval has', () => {
    const other = { ...total, interval: { low: 244.4, high: 259.4, level: 0.99 }, coverageFactor: 1.5 };
    expect(describeBudget(other).total.expanded).toBe(
      'Expanded uncertainty U = 7.5 ms at 99 % coverage, coverage factor k = 1.50.',
    );
  });

  it('gives each correction its sign, and the value before and after in that order', () => {
    expect(describeBudget(total).corrections).toEqual([
      'Observer row skew: +4.25 ms.',
      'Digits row: −1.25 ms.',
      'Before these corrections the value is 249 ms, after them 252 ms.',
    ]);
    expect(describeBudget({ ...total, corrections: [] }).corrections).toEqual([]);
    const { uncorrected: _uncorrected, ...without } = total;
    expect(describeBudget(without).corrections).toEqual([]);
  });

  it('gives a correction as finely as the value where that is finer than hundredths', () => {
    // U = 0.012 ms has its second digit at the third decimal
    const fine = {
      ...total,
      value: 4.0125,
      uncorrected: 4,
      interval: { low: 4.0005, high: 4.0245, level: 0.95 },
      corrections: [{ name: 'digits row', value: 0.0125, standardUncertainty: 0.001 }],
    };
    expect(describeBudget(fine).corrections).toEqual([
      'Digits row: +0.013 ms.',
      'Before these corrections the value is 4.000 ms, after them 4.013 ms.',
    ]);
  });

  it('leaves out what a figure does not have', () => {
    const { coverageFactor: _k, components: _components, corrections: _corrections, ...bare } = total;
    expect(describeBudget(bare)).toEqual({
      rows: [],
      total: { uncertainty: '5.0 ms', expanded: 'Expanded uncertainty U = 10 ms at 95 % coverage.' },
      corrections: [],
    });
  });

  it('says so where a share is small but not nothing', () => {
    const small = { ...total, components: [component('clock', 0.1, { shared: 'instrument:attic' })] };
    expect(describeBudget(small).rows).toEqual([
      expect.objectContaining({ share: 'under 1 %', shared: 'the same in every session with this instrument' }),
    ]);
  });
});
