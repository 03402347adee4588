import { describe, expect, it } from 'vitest';
import { serialDay, timeFormat } from '../../src/import/serials.ts';

describe('serialDay', () => {
  // Microsoft's article on the two date systems: 5 July 2011 is 40729 in the one, 39267 in the other, and they differ
  // by 1462 days. ECMA-376-1, 18.17.4.1: the last day, 9999-12-31, is 2958465 and 2957003; 1904-01-01 is 0. All from
  // memory.
  it.each([
    [40729, false, '2011-07-05'],
    [39267, true, '2011-07-05'],
    [2_958_465, false, '9999-12-31'],
    [2_957_003, true, '9999-12-31'],
    [0, true, '1904-01-01'],
    [61, false, '1900-03-01'],
    [40729.999, false, '2011-07-05'],
  ])('%d is a day (from 1904: %s)', (serial, date1904, day) => expect(serialDay(serial, date1904)).toBe(day));

  it('knows none of the days before the false leap day of 1900', () =>
    expect([serialDay(60, false), serialDay(1, false)]).toEqual([undefined, undefined]));
});

describe('timeFormat', () => {
  // built-in formats 18 to 22 and 45 to 47: ECMA-376-1, 18.8.30
  it.each([
    ['mm:ss.0', { hasDay: false, hasSeconds: true, decimals: 1 }],
    ['[h]:mm:ss', { hasDay: false, hasSeconds: true, decimals: 0 }],
    ['h:mm AM/PM', { hasDay: false, hasSeconds: false, decimals: 0 }],
    ['m/d/yy h:mm', { hasDay: true, hasSeconds: false, decimals: 0 }],
    ['hh:mm:ss.000', { hasDay: false, hasSeconds: true, decimals: 3 }],
    ['[$-407]mm:ss.00;@', { hasDay: false, hasSeconds: true, decimals: 2 }],
    ['General', undefined],
    ['0.000', undefined],
    ['0.0" s"', undefined],
    ['[Red]0.00', undefined],
    ['#,##0', undefined],
  ])('%s', (code, expected) => expect(timeFormat(code)).toEqual(expected));
});
