/** What the home page and the list of bodies print. */
import { bodyPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';

export interface BodyLine {
  readonly name: string;
  readonly maker: string;
  readonly path: string;
  readonly sessions: Figure | undefined;
  readonly readings: Figure | undefined;
}

export interface Totals {
  readonly bodies: Figure;
  readonly sessions: Figure;
  readonly readings: Figure;
  readonly excluded: Figure;
}

/** In the order of the bench. */
export function bodyLines({ bench, figure }: Pick<Published, 'bench' | 'figure'>): readonly BodyLine[] {
  return bench.bodies.map(({ id, name, maker }) => ({
    name,
    maker,
    path: bodyPath(id),
    sessions: figure(`count/sessions/${id}`),
    readings: figure(`count/readings/${id}`),
  }));
}

/** How much was measured in all; undefined before the first session. */
export function totalsOf({ figure }: Pick<Published, 'figure'>): Totals | undefined {
  const [bodies, sessions, readings, excluded] = ['bodies', 'sessions', 'readings', 'excluded'].map((name) =>
    figure(`count/${name}`),
  );
  return bodies && sessions && readings && excluded ? { bodies, sessions, readings, excluded } : undefined;
}
