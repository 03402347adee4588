import { seededRandom } from '../analysis/random.ts';

/**
 * The same items in a random order (Fisher and Yates), the same for the same seed.
 *
 * Conditions measured in a sensible-looking order confound what is measured with heat and the time of day.
 */
export function shuffle<T>(items: readonly T[], seed: number): readonly T[] {
  const random = seededRandom(seed);
  const order = [...items];
  for (let last = order.length - 1; last > 0; last -= 1) {
    const pick = Math.floor(random.uniform() * (last + 1));
    [order[last], order[pick]] = [order[pick] as T, order[last] as T];
  }
  return order;
}
