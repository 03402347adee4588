/** Figures read aloud. Every expected value is worked out by hand, in the words beside it. */
import { describe, expect, it } from 'vitest';
import { numberInWords } from '../../src/views/number-in-words.ts';
import { roundedFor, spokenFigure } from '../../src/views/spoken.ts';

describe('a number in words', () => {
  it.each([
    [0, 0, 'nought'],
    [7, 0, 'seven'],
    [13, 0, 'thirteen'],
    [20, 0, 'twenty'],
    [94, 0, 'ninety-four'],
    [100, 0, 'one hundred'],
    [101, 0, 'one hundred and one'],
    [342, 0, 'three hundred and forty-two'],
    [1005, 0, 'one thousand and five'],
    [1234, 0, 'one thousand two hundred and thirty-four'],
    [2_000_010, 0, 'two million and ten'],
    [4.18, 2, 'four point one eight'],
    [4.1, 2, 'four point one'],
    [0.4, 1, 'nought point four'],
    [-12, 0, 'minus twelve'],
    [-0.04, 1, 'nought'],
  ])('%d to %d decimals: %s', (value, decimals, words) => {
    expect(numberInWords(value, decimals)).toBe(words);
  });

  it('is finite', () => {
    expect(() => numberInWords(Number.NaN)).toThrow('only a finite number');
  });
});

const ms = (value: number, low: number, high: number) => ({
  value,
  unit: 'ms',
  interval: { low, high, level: 0.95 },
  text: '',
});

describe('a figure aloud', () => {
  it.each([
    // 300 is 0.2 off, within 6.4/5 = 1.28; from 300 the interval ends 6.6 away: seven.
    [ms(300.2, 293.8, 306.6), 'about three hundred milliseconds, give or take seven'],
    // 300 is 0.8 off, within 6.6/5 = 1.32; from 300 it ends 7.4 away: eight, never seven.
    [ms(300.8, 294.2, 307.4), 'about three hundred milliseconds, give or take eight'],
    // 165 is 2.2 off, beyond 6.1/5 = 1.22; 167 is 0.2 off: the interval ends 6.3 away.
    [ms(167.2, 161.1, 173.3), 'about one hundred and sixty-seven milliseconds, give or take seven'],
    // 95 is 0.1 off, within 3.3/5; from 95 it ends 3.4 away at the low end.
    [ms(94.9, 91.6, 98.2), 'about ninety-five milliseconds, give or take four'],
    // Half-width below one: one decimal. 12.5 is 0.03 off, within 0.42/5 = 0.084; it ends 0.45 away: 0.5.
    [ms(12.53, 12.11, 12.95), 'about twelve point five milliseconds, give or take nought point five'],
    // An interval that is not symmetric is covered on its longer side: 50 is 0 off; it ends 9 above.
    [ms(50, 46, 59), 'about fifty milliseconds, give or take nine'],
    [ms(-12, -16, -8), 'about minus twelve milliseconds, give or take four'],
  ])('%o', (figure, words) => {
    expect(spokenFigure(figure)).toBe(words);
  });

  it('of another unit', () => {
    // 4.2 is 0.02 off, within 0.15/5 = 0.03; from 4.2 it ends 0.17 away: 0.2.
    const frames = { value: 4.18, unit: 'frames', interval: { low: 4.03, high: 4.33, level: 0.95 }, text: '' };
    expect(spokenFigure(frames)).toBe('about four point two frames, give or take nought point two');
    // 1.6 is 0.038 off, beyond 0.088/5 = 0.0176; 1.65 is 0.012 off, within it; from there it ends 0.094 away: 0.10.
    const ratio = { value: 1.638, unit: '1', interval: { low: 1.556, high: 1.726, level: 0.95 }, text: '' };
    expect(spokenFigure(ratio)).toBe('about one point six five, give or take nought point one');
  });

  it('that is limits, outwards to whole milliseconds', () => {
    expect(spokenFigure({ value: 47, unit: 'ms', limits: { low: 14.6, high: 80.2 }, text: '' })).toBe(
      'between fourteen and eighty-one milliseconds',
    );
  });

  it('that is a verdict keeps its word', () => {
    const verdict = { word: 'slower', marginMs: 5, family: 'f', familySize: 1 } as const;
    // 85 is 1.3 off, within 8.1/5 = 1.62; from 85 it ends 10.3 away at the low end.
    const slower = {
      value: 83.7,
      unit: 'ms',
      interval: { low: 74.7, high: 91, level: 0.95 },
      text: 'slower by 83.7 ± 8.1 ms',
      verdict,
    };
    expect(spokenFigure(slower)).toBe('slower by about eighty-five milliseconds, give or take eleven');
    const open = {
      ...slower,
      text: 'not settled: 2.1 ± 5.0 ms',
      verdict: { ...verdict, word: 'not-settled' as const },
    };
    expect(spokenFigure(open)).toBe('not settled: two point one, give or take five milliseconds');
  });

  it('that is a bound says so', () => {
    const same = {
      value: 0.4,
      unit: 'ms',
      interval: { low: -3, high: 4, level: 0.95 },
      text: 'the same within ± 10 ms',
    };
    const verdict = { word: 'same', marginMs: 10, family: 'f', familySize: 1 } as const;
    expect(spokenFigure({ ...same, verdict })).toBe('the same within ten milliseconds');
  });

  it('without an interval, as published', () => {
    expect(spokenFigure({ value: 163.56, unit: 'ms', text: '163.6 ms' })).toBe(
      'one hundred and sixty-three point six milliseconds',
    );
  });

  it('never claims less doubt than was published', () => {
    for (let step = 0; step < 4000; step += 1) {
      const value = ((step * 7919) % 100_003) / 211;
      const [below, above] = [0.05 + ((step * 104_729) % 997) / 23, 0.05 + ((step * 1299) % 499) / 17];
      const { spoken, give } = roundedFor(value, { low: value - below, high: value + above });
      expect(spoken - give).toBeLessThanOrEqual(value - below + 1e-9);
      expect(spoken + give).toBeGreaterThanOrEqual(value + above - 1e-9);
    }
  });
});
