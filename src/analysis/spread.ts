/**
 * Combinations of one item of each list: all of them where there are few, else as many as wanted, drawn systematically with
 * a probability proportional to a pull (Madow, Annals of Mathematical Statistics 20(3), 1949, from memory) and weighed so
 * that every weighted sum keeps its expectation.
 */
import { kronecker } from './kronecker.ts';

export interface Combination<T> {
  readonly items: readonly T[];
  /** Product of the items' weights, over how often such a combination is drawn. */
  readonly weight: number;
}

export interface Weighted {
  readonly weight: number;
  /** How strongly it is to be drawn where not all can be. */
  readonly pull: number;
}

export function spread<T extends Weighted>(lists: readonly (readonly T[])[], wanted: number): Combination<T>[] {
  const all = lists.reduce((product, list) => product * list.length, 1);
  if (all === 0) return [];
  if (all <= wanted) {
    return lists.reduce<Combination<T>[]>(
      (sofar, list) =>
        sofar.flatMap(({ items, weight }) =>
          list.map((item) => ({ items: [...items, item], weight: weight * item.weight })),
        ),
      [{ items: [], weight: 1 }],
    );
  }
  const cumulated = lists.map((list) => {
    let sum = 0;
    return Float64Array.from(list, ({ pull }) => (sum += pull));
  });
  const total = cumulated.reduce((product, sums) => product * sums.at(-1)!, 1);
  return Array.from({ length: wanted }, (_, k) => {
    const items = lists.map((list, axis) => {
      const sums = cumulated[axis]!;
      const share = axis === 0 ? (k + 0.5) / wanted : kronecker(k, axis - 1);
      return list[firstAbove(sums, share * sums.at(-1)!)]!;
    });
    const drawn = items.reduce((product, { pull }) => product * pull, 1) / total;
    return { items, weight: items.reduce((product, { weight }) => product * weight, 1) / (drawn * wanted) };
  });
}

function firstAbove(sums: Float64Array, value: number): number {
  let [low, high] = [0, sums.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sums[middle]! > value) high = middle;
    else low = middle + 1;
  }
  return low;
}
