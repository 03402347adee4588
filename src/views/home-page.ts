import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';

export interface Totals {
  readonly bodies: Figure;
  readonly sessions: Figure;
  readonly readings: Figure;
  readonly excluded: Figure;
}

/** How much was measured in all; undefined before the first session. */
export function totalsOf({ figure }: Pick<Published, 'figure'>): Totals | undefined {
  const [bodies, sessions, readings, excluded] = ['bodies', 'sessions', 'readings', 'excluded'].map((name) =>
    figure(`count/${name}`),
  );
  return bodies && sessions && readings && excluded ? { bodies, sessions, readings, excluded } : undefined;
}
