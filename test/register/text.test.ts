import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decimalsOfStep,
  describeCount,
  describeInterval,
  describeMeasured,
  describeSignificant,
  describeValue,
} from '../../src/register/text.ts';

describe('describeMeasured: two significant digits of uncertainty, the value to the same place', () => {
  it.each([
    // JCGM 100:2008, 7.2.2 and 7.2.6 (from memory): m_S = 100.021 47 g with U = 0.79 mg; 10.057 62 ohm with 27 milliohm
    // becomes 10.058.
    [100.02147, 0.00079, 'g', '100.02147 ± 0.00079 g'],
    [10.05762, 0.027, 'Ω', '10.058 ± 0.027 Ω'],
    // The rest follow from the rule by hand.
    [300.84, 8.77, 'ms', '300.8 ± 8.8 ms'],
    [300.84, 9.96, 'ms', '301 ± 10 ms'],
    [300.84, 99.6, 'ms', '300 ± 100 ms'],
    [1234.5, 123, 'ms', '1230 ± 120 ms'],
    [-3.21, 0.449, 'ms', '−3.21 ± 0.45 ms'],
    [-0.001, 0.45, 'ms', '0.00 ± 0.45 ms'],
    [7.2178, 0.105, 'frames', '7.22 ± 0.10 frames'],
    [300, 0, 'ms', '300 ± 0 ms'],
  ])('%d, %d %s', (value, uncertainty, unit, text) => {
    expect(describeMeasured(value, uncertainty, unit)).toBe(text);
  });

  it('never moves a value by more than half a unit of the place it prints', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
        (value, u) => {
          const [printed = '', rest = ''] = describeMeasured(value, u, '1').split(' ± ');
          const place = 10 ** Math.floor(Math.log10(Number(rest))) / 10;
          expect(Math.abs(Number(printed.replace('−', '-')) - value)).toBeLessThanOrEqual(
            place * 0.5 * (1 + 1e-9) + 1e-9,
          );
        },
      ),
    );
  });
});

it.each([
  [292.04, 309.61, 'ms', '292.0 to 309.6 ms'],
  [-4.4, 4.5, 'ms', '−4.4 to 4.5 ms'],
])('describeInterval(%d, %d)', (low, high, unit, text) => expect(describeInterval(low, high, unit)).toBe(text));

it('a plain value keeps the decimals it is given', () => expect(describeValue(301, 0, 'ms')).toBe('301 ms'));

it.each([
  [4.449, '4.4 ms'],
  [0.1249, '0.12 ms'],
  [124.9, '120 ms'],
  [0, '0 ms'],
])('two significant digits of %d', (value, text) => expect(describeSignificant(value, 2, 'ms')).toBe(text));

it.each([
  [7, '7'],
  [9999, '9999'],
  [10000, '10\u2009000'],
  [1234567, '1\u2009234\u2009567'],
])('count %d', (count, text) => expect(describeCount(count)).toBe(text));

it.each([Number.NaN, Infinity, -Infinity])('%d is never published', (value) =>
  expect(() => describeMeasured(value, 1, 'ms')).toThrow(RangeError),
);

it.each([
  [20, 0],
  [1, 0],
  [0.5, 1],
  [0.1, 1],
  [0.01, 2],
  [0.001, 3],
])('a step of %d is read to %d decimals', (step, decimals) => expect(decimalsOfStep(step)).toBe(decimals));
it('a step that nobody states is taken as a tenth', () => expect(decimalsOfStep(undefined)).toBe(1));
