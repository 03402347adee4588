import { seededRandom } from './random.ts';

/**
 * Moments of a clip at which to read, in ms from its beginning: one in each of as many equal stretches, anywhere within its middle
 * four fifths. Spread over the whole clip they see most phases; at regular steps they could see the same one again and
 * again (every second at 25 frames/s shows one phase for ever).
 *
 * Stratified sampling; the moments are the same for the same seed.
 */
export function readingMoments(lengthMs: number, readings: number, seed: number): readonly number[] {
  if (!(lengthMs > 0) || !(readings >= 1))
    throw new RangeError(`moments need a length and a number of readings, not ${lengthMs} ms and ${readings}`);
  const random = seededRandom(seed);
  const stretchMs = lengthMs / readings;
  return Array.from({ length: readings }, (_, index) => (index + random.between(0.1, 0.9)) * stretchMs);
}
