import { expect, it } from 'vitest';
import { parseQuantity } from '../../../src/write-ups/claims/quantity.ts';

it.each([
  ['100 ms', 'ms', 100],
  ['0.25 s', 'ms', 250],
  ['1/500 s', 'ms', 2],
  ['-4 ms', 'ms', -4],
  ['−4 ms', 'ms', -4],
  ['0.5 frames', 'frames', 0.5],
  ['1 frame', 'frames', 1],
  ['half a frame', 'frames', 0.5],
  ['a frame', 'frames', 1],
  ['30 %', 'ratio', 0.3],
  ['30%', 'ratio', 0.3],
  ['half', 'ratio', 0.5],
  ['twice', 'ratio', 2],
  ['1.5 times', 'ratio', 1.5],
  ['1.5 ×', 'ratio', 1.5],
  ['a third', 'ratio', 1 / 3],
  ['half a second', 'ms', 500],
  ['three hundred milliseconds', 'ms', 300],
  ['seven frames', 'frames', 7],
  ['thirty per cent', 'ratio', 0.3],
  ['3', '1', 3],
  [' 12  ms ', 'ms', 12],
] as const)('%j is a quantity', (text, unit, value) => expect(parseQuantity(text)).toMatchObject({ unit, value }));

it.each(['', 'a lot', '1,5 ms', '5 msec', 'ms', '5 ms more', '1e3 ms', 'at 60 Hz', 'third'])('%j is none', (text) =>
  expect(parseQuantity(text)).toBeUndefined(),
);
