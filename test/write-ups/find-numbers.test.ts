import { expect, it } from 'vitest';
import { findNumbers } from '../../src/write-ups/prose/find-numbers.ts';

it.each([
  ['It takes 307 ms.', '307 ms'],
  ['It takes 307.6 ± 7.1 ms.', '± 7.1 ms'],
  ['about 12 milliseconds', '12 milliseconds'],
  ['some 7.4 frames late', '7.4 frames'],
  ['one frame, or 2 frames', '2 frames'],
  ['gains 30 % of it', '30 %'],
  ['gains 30 per cent', '30 per cent'],
  ['is 1.4 times slower', '1.4 times'],
  ['is 1.4× slower', '1.4×'],
  ['by a factor of 1.4', 'factor of 1.4'],
  ['after 0.35 s', '0.35 s'],
  ['a 50-ms step', '50-ms'],
  ['an 8-frame delay', '8-frame'],
  ['lag 5\u00a0ms', '5 ms'],
] as const)('%j holds a result', (text, found) => expect(findNumbers(text).map((each) => each.text)).toEqual([found]));

it.each([
  'In UHD, 3840 × 2160, 4:2:2 and 10 bit.',
  'An exposure of 1/500 s.',
  'Wait 2 seconds, three flashes a second at most.',
  'On 2026-04-20, with firmware 1.40, WCAG 2.2.',
  'In 3 sessions of 2 runs, 5 times.',
])('%j holds none', (text) => expect(findNumbers(text)).toEqual([]));

it.each([
  ['at 59.94 frames a second', '59.94'],
  ['at 50 frames/s', '50'],
  ['a 60 Hz timer', '60'],
  ['47 fps', '47'],
] as const)('%j holds a rate', (text, rate) => expect(findNumbers(text).map((each) => each.rate)).toEqual([rate]));
