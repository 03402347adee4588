/**
 * Elementary functions that give the same bits in every engine. Those of `Math` need not: ECMA-262, 21.3.2 leaves how near
 * they come to the implementation, and engines differ in the last place, so that figures recomputed in a browser would not
 * be those that were published. `Math.sqrt` is exact everywhere (IEEE 754).
 */
export { default as atan } from '@stdlib/math-base-special-atan';
export { default as cos } from '@stdlib/math-base-special-cos';
export { default as exp } from '@stdlib/math-base-special-exp';
export { default as expm1 } from '@stdlib/math-base-special-expm1';
export { default as ln } from '@stdlib/math-base-special-ln';
export { default as sin } from '@stdlib/math-base-special-sin';
export { default as tan } from '@stdlib/math-base-special-tan';

/** √(Σ x²); 0 of nothing. */
export function hypot(...values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0));
}
