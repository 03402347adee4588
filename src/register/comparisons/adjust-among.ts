import { adjustHolm } from '../../analysis/holm.ts';

/** Holm-adjusted p of some statements among `all` that are read together, in the order given; `all` holds them too. */
export function adjustAmong(all: readonly number[], p: readonly number[]): readonly number[] {
  const others = [...all];
  for (const one of p) {
    const at = others.indexOf(one);
    if (at >= 0) others.splice(at, 1);
  }
  return adjustHolm([...p, ...others]).slice(0, p.length);
}
