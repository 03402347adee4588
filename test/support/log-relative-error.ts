import { expect } from 'vitest';

/**
 * Number of correct significant digits: −log10(|got − expected|/|expected|), at most 15 (NIST StRD's measure).
 * Against an expected 0 it is −log10|got|.
 */
function logRelativeError(got: number, expected: number): number {
  if (Object.is(got, expected) || got === expected) return 15;
  const error = expected === 0 ? Math.abs(got) : Math.abs((got - expected) / expected);
  return Math.min(15, -Math.log10(error));
}

/** Fails, naming both numbers and their difference, unless `got` has at least `digits` correct digits. */
export function expectDigits(got: number | undefined, expected: number, digits: number, what = 'value'): void {
  expect(got, what).toBeTypeOf('number');
  const value = got ?? Number.NaN;
  const lre = logRelativeError(value, expected);
  expect(
    lre >= digits,
    `${what}: got ${value}, expected ${expected}, difference ${value - expected}, ${lre.toFixed(2)} digits agree, ${digits} wanted`,
  ).toBe(true);
}
