import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  commonStart,
  formatDigits,
  isWhole,
  keptDigits,
  msOf,
  writeMs,
} from '../../../src/take-readings/page/stamp.ts';
import { nextShown, nextSource } from '../../../src/take-readings/page/foretell.ts';

describe('digits alone', () => {
  it.each([
    ['', '00:00.000', ''],
    ['0', '00:00.000', '0'],
    ['00', '00:00.000', '00:'],
    ['0012', '00:00.000', '00:12.'],
    ['0012217', '00:00.000', '00:12.217'],
    ['1022031', '0:00:00.00', '1:02:20.31'],
    ['12', '0.000', '12'],
    ['9123', '0.000', '9.123'],
    ['12217', '0.000', '12.217'],
    ['77', '00', '77'],
  ])('%j is, where times look like %s, %j', (digits, example, text) =>
    expect(formatDigits(digits, example)).toBe(text),
  );

  it('beyond the last place are dropped, and what is no digit', () => {
    expect(keptDigits('00:12.2175', '00:00.000')).toBe('0012217');
    expect(keptDigits('1a2', '00:00.000')).toBe('12');
  });

  it.each([
    ['00:12.217', '00:00.000', true],
    ['00:12.21', '00:00.000', false],
    ['00:72.217', '00:00.000', false],
    ['12.217', '0.000', true],
  ])('%s is whole as %s: %s', (text, example, whole) => expect(isWhole(text, example)).toBe(whole));
});

describe('a time in milliseconds', () => {
  it.each([
    [12_217, '00:00.000', '00:12.217'],
    [3_723_450, '00:00:00.00', '01:02:03.45'],
    [12_219.9, '00:00.00', '00:12.21'],
    [61_000, '0.000', '61.000'],
    [5000, '00', '05'],
  ])('%d is, where times look like %s, %s', (ms, example, text) => expect(writeMs(ms, example)).toBe(text));

  it('is what its text says', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3_599_999 }), (ms) => {
        expect(msOf(writeMs(ms, '00:00.000'))).toBe(ms);
      }),
    );
  });
});

describe('digits that cannot have changed', () => {
  it.each([
    [12_217, 21_217, '00'],
    [12_217, 12_298, '00122'],
    [19_990, 20_010, '00'],
    [59_990, 60_010, '0'],
    [12_217, 12_217, '0012217'],
    [12_217, 12_000, ''],
  ])('between %d and %d ms are %j', (low, high, digits) => expect(commonStart(low, high, '00:00.000')).toBe(digits));

  it('begin every time that lies between', () => {
    fc.assert(
      fc.property(fc.nat(3_000_000), fc.nat(60_000), fc.double({ min: 0, max: 1, noNaN: true }), (low, span, share) => {
        const digits = writeMs(low + share * span, '00:00.000').replace(/\D/g, '');
        expect(digits.startsWith(commonStart(low, low + span, '00:00.000'))).toBe(true);
      }),
    );
  });
});

describe('the next source stamp', () => {
  const timing = { refreshMs: 1000 / 60, observerFrameMs: 1000 / 240 };
  const at = (frame: number, sourceMs: number) => ({ frame, fileMs: (1000 * frame) / 30, sourceMs });
  const holds = (between: ReturnType<typeof nextSource>, ms: number): boolean =>
    between !== undefined && between.lowMs <= ms && ms <= between.highMs;

  it('lies within a pause of the last, without a clip', () => {
    expect(nextSource([], undefined, 5000, timing)).toEqual({ lowMs: 5000, highMs: 14_000 });
    expect(nextSource([], undefined, undefined, timing)).toBeUndefined();
  });

  it('may be where the file or where the rate of the observer puts it, while one reading cannot tell', () => {
    const between = nextSource([at(100, 5000)], at(340, 0), 5000, timing);
    // 240 frames: a second at the observer's rate, eight as the file plays
    expect(holds(between, 6000) && holds(between, 13_000)).toBe(true);
    expect(holds(between, 14_000)).toBe(false);
  });

  it('is foretold to within a few refreshes from two readings, backwards too', () => {
    const placed = [at(100, 5000), at(340, 6000)];
    const between = nextSource(placed, at(580, 0), 6000, timing)!;
    expect(holds(between, 7000)).toBe(true);
    expect(between.highMs - between.lowMs).toBeLessThan(8 * timing.refreshMs);
    expect(holds(nextSource(placed, at(220, 0), 6000, timing), 5500)).toBe(true);
  });
});

describe('the shown stamp', () => {
  it('lies within a second before the source, at first', () =>
    expect(nextShown(5000, [], 75, false)).toEqual({ lowMs: 4000, highMs: 5000 }));

  it('of two displays lies within half a second to either side, at first', () =>
    expect(nextShown(5000, [], 75, true)).toEqual({ lowMs: 4500, highMs: 5500 }));

  it('lies within the range of what was read, later', () =>
    // 160 and 180 ms, at most 75 apart: between 105 and 235 ms
    expect(nextShown(5000, [160, 180], 75, false)).toEqual({ lowMs: 4765, highMs: 4895 }));
});
