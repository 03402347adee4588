import { expect, it } from 'vitest';
import { adjustHolm } from '../../src/analysis/holm.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { readReference } from '../support/r-reference.ts';

const r = readReference('multiple');

it.each(['1', '2', '3', '4', '5'])('p.adjust(…, "holm") in R, set %s', (set) => {
  adjustHolm(r(`p.${set}`)).forEach((p, i) => expectDigits(p, r(`holm.${set}`)[i] ?? 0, 14));
});

it.each(['PlantGrowth.behrens', 'airquality'])('R, p.adjust on %s', (set) => {
  const got = adjustHolm(r(`${set}.unadjusted`));
  expect(got.length).toBeGreaterThan(2);
  got.forEach((p, i) => expectDigits(p, r(`${set}.holm`)[i] ?? 0, 13));
});

it('adjusts nothing to nothing, and refuses what is no probability', () => {
  expect(adjustHolm([])).toEqual([]);
  expect(() => adjustHolm([0.1, 1.1])).toThrow('a p-value lies from 0 to 1, not 1.1');
  expect(() => adjustHolm([Number.NaN])).toThrow(RangeError);
});
