import { expect, it } from 'vitest';
import { nearest } from '../../src/ingest/nearest.ts';

it.each([
  ['balcny', ['pit', 'balcony'], ['balcony']],
  ['PIT', ['pit', 'balcony'], ['pit']],
  ['a', ['b', 'c'], []],
  ['cellar', ['pit', 'balcony'], []],
  ['take-5', ['take-1', 'take-2', 'take-3', 'take-4'], ['take-1', 'take-2', 'take-3']],
  ['take-22', ['take-1', 'take-2', 'take-12'], ['take-2', 'take-12', 'take-1']],
  ['anything', [], []],
])('%s is like these of %j: %j', (found, choices, expected) => {
  expect(nearest(found, choices)).toEqual(expected);
});
