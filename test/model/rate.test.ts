import { describe, expect, it } from 'vitest';
import { intervalMs, parseRate, rate, rateHz, rateKey, rateLabel } from '../../src/model/rate.ts';

/**
 * ITU-R BT.709-6 part 2 and BT.2020-2 table 2 list these picture rates: whole rates, and those
 * divided by 1.001. Frame periods follow by arithmetic (1001/24000 s = 41.708333… ms).
 */
const PUBLISHED = [
  {
    names: ['23.976', '23.98', '23.97', '23.976p', '24000/1001', '23.976 Hz'],
    key: '24000/1001',
    label: '23.976',
    ms: 41.708333333333336,
  },
  { names: ['29.97', '29.970', '30000/1001', '29.97fps'], key: '30000/1001', label: '29.97', ms: 33.36666666666667 },
  { names: ['59.94', '59.940', '59.94p', '60000/1001'], key: '60000/1001', label: '59.94', ms: 16.683333333333334 },
  { names: ['119.88', '119.880', '120000/1001'], key: '120000/1001', label: '119.88', ms: 8.341666666666667 },
  { names: ['24', '24p', '24.0', '48/2'], key: '24', label: '24', ms: 41.666666666666664 },
  { names: ['25', '25.00'], key: '25', label: '25', ms: 40 },
  { names: ['120'], key: '120', label: '120', ms: 8.333333333333334 },
];

describe('parseRate', () => {
  it.each(PUBLISHED)('reads every spelling of $key', ({ names, key, label, ms }) => {
    for (const name of names) {
      const value = parseRate(name);
      expect(value, name).toBeDefined();
      if (!value) continue;
      expect(rateKey(value), name).toBe(key);
      expect(rateLabel(value), name).toBe(label);
      expect(intervalMs(value), name).toBe(ms);
    }
  });

  it('takes a measured decimal as itself', () => {
    expect(parseRate('60.02')).toEqual({ frames: 3001, seconds: 50 });
    expect(parseRate('59.9')).toEqual({ frames: 599, seconds: 10 });
    expect(parseRate('119.92')).toEqual({ frames: 2998, seconds: 25 });
  });

  it.each(['', '0', '-24', '24/0', '0/1001', 'twenty-four', '24,5', '1e3', 'NaN', 'Infinity', '23.976.1', '24/1001/2'])(
    'refuses %j',
    (text) => expect(parseRate(text)).toBeUndefined(),
  );
});

it('rateHz of 24000/1001 is 23.976023976…', () => {
  expect(rateHz(rate(24000, 1001))).toBeCloseTo(23.976023976023978, 14);
});

it.each([
  [0, 1],
  [1.5, 1],
  [24, -1],
  [Number.NaN, 1],
])('rate(%d, %d) is refused', (frames, seconds) => {
  expect(() => rate(frames, seconds)).toThrow(RangeError);
});
