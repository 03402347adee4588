import type { Variation } from '../../analysis/variation.ts';
import type { VariationStatement } from '../../model/variation-statement.ts';

/** What the statement says of one body. */
export function variationOf({ knows, reading, bodies, others }: VariationStatement, body: string): Variation {
  const { clip, day } = bodies[body] ?? others;
  return { knows, reading, clip, day };
}
