import { expect, it } from 'vitest';
import { estimateDrift } from '../../src/analysis/drift.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { NORRIS } from '../support/nist-strd.ts';

it('NIST StRD Norris: slope, intercept and their standard deviations (certified)', () => {
  const got = estimateDrift(
    NORRIS.map(([x]) => x),
    NORRIS.map(([, y]) => y),
  );
  if (got.kind !== 'drift') throw new Error(got.reason);
  expectDigits(got.slope, 1.00211681802045, 12, 'slope');
  expectDigits(got.slopeStandardUncertainty, 0.000429796848199937, 12, 'its standard uncertainty');
  expectDigits(got.intercept, -0.262323073774029, 12, 'intercept');
  expectDigits(got.interceptStandardUncertainty, 0.232818234301152, 12, 'its standard uncertainty');
  expectDigits(got.residualStandardDeviation, 0.884796396144373, 12, 'residual standard deviation');
  expect(got.degreesOfFreedom).toBe(34);
  // R 4.2.2, confint(lm(y ~ x))
  expectDigits(got.slopeInterval.low, 1.001243365736, 12);
  expectDigits(got.slopeInterval.high, 1.002990270305, 12);
});

it('a line without scatter has a slope and no p', () => {
  expect(estimateDrift([0, 1, 2], [1, 3, 5])).toMatchObject({ kind: 'drift', slope: 2, intercept: 1, p: undefined });
});

it('says why there is no slope', () => {
  expect(estimateDrift([0, 1], [1, 2])).toEqual({ kind: 'not-estimable', reason: 'too-few' });
  expect(estimateDrift([3, 3, 3], [1, 2, 3])).toEqual({ kind: 'not-estimable', reason: 'one-position' });
});

it('refuses positions and values that do not match', () => {
  expect(() => estimateDrift([0, 1, 2], [1, 2])).toThrow('3 positions for 2 values');
  expect(() => estimateDrift([0, 1, 2], [1, 2, Number.NaN])).toThrow(RangeError);
});
