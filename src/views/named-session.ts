import type { Bench } from '../model/bench.ts';
import { badgesOf } from '../register/badges.ts';

/** A session by the name it has where it is listed, with what sets it apart from an ordinary one. */
export interface NamedSession {
  readonly id: string;
  readonly label: string;
  /** `cut short`, `other firmware`; none for an ordinary session. */
  readonly badges: readonly string[];
}

/** The id stands in for a name that is missing. */
export function namedSession(bench: Bench, id: string, label: string | undefined): NamedSession {
  return { id, label: label ?? id, badges: badgesOf(bench)(id) };
}
