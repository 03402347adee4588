/**
 * Holm's adjusted p-values, in the order of the input.
 *
 * Sorted p(1) ≤ … ≤ p(m): adjusted(i) = max over j ≤ i of min(1, (m − j + 1)·p(j)). Calling everything with an adjusted
 * p of at most α errs anywhere in the family with probability at most α, whatever the dependence between the tests. `others`
 * tests of the family whose p is not given count as if it were 1.
 * Source: S. Holm, Scand. J. Statist. 6 (1979), 65 (from memory); R, p.adjust.
 *
 * `adjustHolm([0.01, 0.04, 0.03, 0.005])` is 0.03, 0.06, 0.06, 0.02.
 */
export function adjustHolm(p: readonly number[], others = 0): number[] {
  for (const value of p) {
    if (!(value >= 0 && value <= 1)) throw new RangeError(`a p-value lies from 0 to 1, not ${value}`);
  }
  const order = p.map((value, index) => ({ value, index })).sort((a, b) => a.value - b.value || a.index - b.index);
  const adjusted = new Array<number>(p.length).fill(1);
  let reached = 0;
  order.forEach(({ value, index }, step) => {
    reached = Math.max(reached, Math.min(1, (p.length + others - step) * value));
    adjusted[index] = reached;
  });
  return adjusted;
}
