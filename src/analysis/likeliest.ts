/** The likeliest of several sizes, as many as make up a share of the whole, their probabilities scaled to sum to 1. */
export function likeliest<T extends { readonly probability: number }>(all: readonly T[], share: number): T[] {
  const total = all.reduce((sum, { probability }) => sum + probability, 0);
  const kept: T[] = [];
  let sum = 0;
  for (const one of [...all].sort((a, b) => b.probability - a.probability)) {
    if (sum >= share * total || one.probability === 0) break;
    kept.push(one);
    sum += one.probability;
  }
  return kept.map((one) => ({ ...one, probability: one.probability / sum }));
}
