import { createHash } from 'node:crypto';

/** The written seed of the demonstration. */
const SEED = 20_260_308;

/** Of one run of a session: each has a seed of its own, so that adding a session leaves the others alone. */
export function seedOf(id: string, runIndex: number): number {
  return createHash('sha256')
    .update(`${SEED}/${id}/${runIndex + 1}`)
    .digest()
    .readUInt32BE(0);
}
