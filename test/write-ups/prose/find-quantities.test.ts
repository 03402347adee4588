import { describe, expect, it } from 'vitest';
import { findQuantities } from '../../../src/write-ups/prose/find-quantities.ts';

/** The values are what the words say, worked out by hand. */
describe('finds a quantity, and what it is', () => {
  it.each([
    ['It takes 307 ms.', '307 ms', 'ms', 307],
    ['It takes 307.6 ± 7.1 ms.', '± 7.1 ms', 'ms', 7.1],
    ['about 12 milliseconds', '12 milliseconds', 'ms', 12],
    ['after 0.35 s', '0.35 s', 'ms', 350],
    ['after 0.3 s', '0.3 s', 'ms', 300],
    ['after 1/3 s', '1/3 s', 'ms', 1000 / 3],
    ['after ⅓ s', '⅓ s', 'ms', 1000 / 3],
    ['late by ３００ ms', '３００ ms', 'ms', 300],
    ['late by ٣٠٠ ms', '٣٠٠ ms', 'ms', 300],
    ['lag 5\u00a0ms', '5 ms', 'ms', 5],
    ['lag 5\u202fms', '5 ms', 'ms', 5],
    ['lag 3\u200b00 m\u00ads', '3\u200b00 m\u00ads', 'ms', 300],
    ['lag 300㎳', '300㎳', 'ms', 300],
    ['lag 1,500 ms', '1,500 ms', 'ms', 1500],
    ['lag 1,5 ms', '1,5 ms', 'ms', 1.5],
    ['a 50-ms step', '50-ms', 'ms', 50],
    ['lag 300ms', '300ms', 'ms', 300],
    ['lag 800 µs', '800 µs', 'ms', 0.8],
    ['two seconds behind', 'two seconds', 'ms', 2000],
    ['a two-second delay', 'two-second', 'ms', 2000],
    ['three hundred milliseconds', 'three hundred milliseconds', 'ms', 300],
    ['a hundred and twenty-five milliseconds', 'a hundred and twenty-five milliseconds', 'ms', 125],
    ['seven point four milliseconds', 'seven point four milliseconds', 'ms', 7.4],
    ['a third of a second', 'a third of a second', 'ms', 1000 / 3],
    ['two tenths of a second', 'two tenths of a second', 'ms', 200],
    ['half a second', 'half a second', 'ms', 500],
    ['one second', 'one second', 'ms', 1000],
    ['a second later', 'a second later', 'ms', 1000],
    ['a second and a half', 'a second and a half', 'ms', 1500],
    ['one and a half seconds', 'one and a half seconds', 'ms', 1500],
    ['some 7.4 frames late', '7.4 frames', 'frames', 7.4],
    ['an 8-frame delay', '8-frame', 'frames', 8],
    ['seven frames', 'seven frames', 'frames', 7],
    ['seven of its own frames', 'seven of its own frames', 'frames', 7],
    ['three whole frames', 'three whole frames', 'frames', 3],
    ['7½ frames', '7½ frames', 'frames', 7.5],
    ['half a frame', 'half a frame', 'frames', 0.5],
    ['a quarter of a frame', 'a quarter of a frame', 'frames', 0.25],
    ['a frame and a half', 'a frame and a half', 'frames', 1.5],
    ['two frames and more', 'two frames', 'frames', 2],
    ['more than a whole frame', 'a whole frame', 'frames', 1],
    ['one frame late', 'one frame', 'frames', 1],
    ['a frame late', 'a frame late', 'frames', 1],
    ['within a frame.', 'a frame', 'frames', 1],
    ['a couple of frames', 'a couple of frames', 'frames', 2],
    ['gains 30 % of it', '30 %', 'ratio', 0.3],
    ['gains 30 per cent', '30 per cent', 'ratio', 0.3],
    ['gains thirty percent', 'thirty percent', 'ratio', 0.3],
    ['is 1.4 times slower', '1.4 times', 'ratio', 1.4],
    ['is 1.4× slower', '1.4×', 'ratio', 1.4],
    ['is 2x faster', '2x', 'ratio', 2],
    ['three times the lag', 'three times', 'ratio', 3],
    ['by a factor of 1.4', 'factor of 1.4', 'ratio', 1.4],
    ['by a factor of two', 'factor of two', 'ratio', 2],
    ['twice as slow', 'twice as slow', 'ratio', 2],
    ['half as long', 'half as long', 'ratio', 0.5],
    ['a third slower', 'a third slower', 'ratio', 1 / 3],
    ['cut by two thirds', 'by two thirds', 'ratio', 2 / 3],
    ['twice the lag', 'twice the lag', 'ratio', 2],
    ['half of what it was', 'half of what it', 'ratio', 0.5],
    ['it halves the delay', 'halves the delay', 'ratio', 0.5],
    ['its lag doubled', 'lag doubled', 'ratio', 2],
    ['a threefold delay', 'threefold', 'ratio', 3],
    ['at 59.94 frames a second', '59.94 frames a second', 'rate', 60_000 / 1001],
    ['at 50 frames/s', '50 frames/s', 'rate', 50],
    ['a 60 Hz timer', '60 Hz', 'rate', 60],
    ['47 fps', '47 fps', 'rate', 47],
    ['sixty times a second', 'sixty times a second', 'rate', 60],
    ['in ms: 300', 'in ms: 300', 'ms', 300],
    ['lag 3e2 ms', '3e2 ms', 'ms', 300],
    ['lag 3OO ms', '3OO ms', 'ms', 300],
    ['lag CCC ms', 'CCC ms', 'ms', 300],
    ['lag Ⅻ ms', 'Ⅻ ms', 'ms', 12],
    ['lag 300.ms', '300.ms', 'ms', 300],
    ['lag 300 millis', '300 millis', 'ms', 300],
    ['lag 300 mѕ', '300 mѕ', 'ms', 300], // a Cyrillic letter that looks like an s
    ['lag 300 thousandths of a second', '300 thousandths of a second', 'ms', 300],
  ] as const)('%j', (text, found, unit, value) => {
    const [first, ...more] = findQuantities(text);
    expect(first).toMatchObject({ text: found, unit });
    expect(first?.value).toBeCloseTo(value, 9);
    expect(more).toEqual([]);
    expect(text.slice(first?.index, (first?.index ?? 0) + (first?.length ?? 0)).replace(/\s+/g, ' ')).toBe(found);
  });
});

it.each([
  'In UHD, 3840 × 2160, 4:2:2 and 10 bit.',
  'Three flashes a second at most, WCAG 2.2.',
  'On 2026-04-20, with firmware 1.40, at 00:31.482.',
  'In 3 sessions of 2 runs, 5 times; one reader, two bodies, three clips of ten readings.',
  'A second phone, a metre behind, films the first phone; the second clip, a third body.',
  'Half an hour before, ten minutes of rest, two hours, 20 min, 22.5 °C, forty metres, 6 m wide.',
  'The screen fills half the frame; half of full brightness; twice 60; twice the frame rate; half the height.',
  'Two tables, four hundred seats, one of the three, frame by frame, in one picture, half past two.',
  'It was measured three times within six weeks, by five people, in the 1990s and the 60s.',
  'A frame appears, ages, and is replaced; the twenty-second row; a frame of the film.',
  'Doubling the rate from 25 to 50; on the Dunmere 30 and the Vennick Q4.',
])('finds none in %j', (text) => expect(findQuantities(text)).toEqual([]));

it('takes time in proportion to the text, whatever it holds', () => {
  for (const piece of [
    '9',
    '1/2 ',
    'one hundred and ',
    'half a ',
    'twice the a ',
    '± ',
    'seven of its own ',
    '1,',
    'a third of ',
  ]) {
    const found = findQuantities(piece.repeat(20_000 / piece.length));
    expect(found.length).toBeLessThan(20_000);
  }
}, 120_000);
