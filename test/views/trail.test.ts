import { expect, it } from 'vitest';
import { trailOf } from '../../src/views/trail.ts';

it.each([
  ['/', []],
  ['/bodies/', ['Home']],
  ['/bodies/brae/', ['Home', 'Bodies']],
  ['/sessions/a/', ['Home', 'Sessions']],
  ['/figures/rate-laws/', ['Home', 'Data']],
  ['/coverage/', ['Home', 'Method']],
  ['/guide/', ['Home']],
])('%s stands under %j', (path, names) => {
  expect(trailOf(path, 'Home').map(({ name }) => name)).toEqual(names);
});
