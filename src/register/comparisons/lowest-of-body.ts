import type { Bench, Session } from '../../model/bench.ts';
import type { Figure } from '../register.ts';
import { badgesOf } from '../badges.ts';
import { conditionsOf } from './body-families.ts';
import { standingBodies } from './standing.ts';

export interface Standing {
  readonly session: Session;
  readonly total: Figure;
}

/** Sessions with their totals, lowest first; those without a total are left out. */
export function byTotal(
  sessions: readonly Session[],
  totalOf: (id: string) => Figure | undefined,
): readonly Standing[] {
  return sessions
    .flatMap((session): readonly Standing[] => {
      const total = totalOf(session.id);
      return total === undefined ? [] : [{ session, total }];
    })
    .sort((x, y) => x.total.value - y.total.value);
}

/**
 * Of the sessions that stand for a body's conditions, the one with the lowest total; one that is not ordinary only
 * where none is. undefined where none is measured.
 */
export function lowestOfBody(
  bench: Bench,
  body: string,
  totalOf: (id: string) => Figure | undefined,
): Standing | undefined {
  const standing = conditionsOf(bench).flatMap(({ sessions }) =>
    standingBodies(
      bench,
      sessions.filter((session) => session.body === body),
    ),
  );
  return lowestOf(bench, standing, totalOf);
}

/** Of sessions that stand for conditions, the one with the lowest total; one that is not ordinary only where none is. */
export function lowestOf(
  bench: Bench,
  standing: readonly Session[],
  totalOf: (id: string) => Figure | undefined,
): Standing | undefined {
  const badges = badgesOf(bench);
  const ordinary = standing.filter(({ id }) => badges(id).length === 0);
  return byTotal(ordinary.length > 0 ? ordinary : standing, totalOf)[0];
}
