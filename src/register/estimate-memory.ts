import { estimateSession, type Estimate } from '../analysis/estimate.ts';
import type { SessionInput } from '../analysis/session-input.ts';

export type Estimator = (input: SessionInput) => Estimate;

/**
 * Estimates that were made before, by what they were made from: an estimate depends on nothing else.
 *
 * While files are being edited, all sessions but one are as they were, and estimating is most of the work.
 */
export class EstimateMemory {
  readonly #known = new Map<string, Estimate>();
  readonly #used = new Set<string>();

  readonly estimate: Estimator = (input) => {
    const key = JSON.stringify(input);
    const estimate = this.#known.get(key) ?? estimateSession(input);
    this.#known.set(key, estimate);
    this.#used.add(key);
    return estimate;
  };

  /** Forgets what nobody has asked for since this was last called. */
  forgetUnused(): void {
    for (const key of this.#known.keys()) if (!this.#used.has(key)) this.#known.delete(key);
    this.#used.clear();
  }
}
