import type { Figure } from '../register/register.ts';
import type { Reading } from '../model/bench.ts';

export interface ReadingsInput {
  /** Unique on the page: letters, digits, `-`, `_`. */
  readonly id: string;
  /** All of the session, in the order of its file: reading number 1 is the first. */
  readonly readings: readonly Pick<Reading, 'run' | 'latencyMs' | 'excluded'>[];
  /** The session's total latency, in ms. */
  readonly total: Figure;
  readonly title?: string;
}
