/**
 * Points that fill a unit cube evenly, without a seed: the Kronecker sequence `frac(k·√p)` over the first primes.
 *
 * Source: H. Niederreiter, "Quasi-Monte Carlo methods and pseudo-random numbers", Bulletin of the AMS 84(6),
 * 1978, section 4 (after R. D. Richtmyer, 1951). Square roots of distinct primes are independent over the
 * rationals, so every coordinate and every combination of them is equidistributed (Weyl).
 */
const ROOTS = [
  Math.SQRT2,
  Math.sqrt(3),
  Math.sqrt(5),
  Math.sqrt(7),
  Math.sqrt(11),
  Math.sqrt(13),
  Math.sqrt(17),
  Math.sqrt(19),
];

/** Coordinate `axis` (0 to 7) of point `k` (0, 1, 2 …), on [0, 1). */
export function kronecker(k: number, axis: number): number {
  const root = ROOTS[axis];
  if (root === undefined) throw new RangeError(`there are ${ROOTS.length} axes, 0 to ${ROOTS.length - 1}, not ${axis}`);
  const value = (k + 0.5) * root;
  return value - Math.floor(value);
}
