/** A body at a glance: its lowest total at each frame rate, through the chain it was measured on most. */
import { badgesOf } from '../register/badges.ts';
import { conditionsOf } from '../register/comparisons/body-families.ts';
import { chainKey } from '../register/comparisons/conditions.ts';
import { lowestOf } from '../register/comparisons/lowest-of-body.ts';
import { standingBodies } from '../register/comparisons/standing.ts';
import { bodyPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { placeOfBody } from './body-place.ts';
import { answerOf, type Answer } from './answer.ts';

export interface BodyAtGlance {
  readonly name: string;
  readonly maker: string;
  readonly path: string;
  /** Among all bodies. */
  readonly place: number;
  /** `Balcony`; undefined for a body without a session. */
  readonly rig: string | undefined;
  /** Fastest rate first; the label names what is not ordinary: `50 frames/s, one clip only`. */
  readonly rows: readonly { readonly rate: string; readonly total: Figure }[];
}

export interface BodiesPage {
  readonly answer: Answer;
  readonly bodies: readonly BodyAtGlance[];
  /** How far the axes go that all bodies share, in ms. */
  readonly reach: number;
}

type Site = Pick<Published, 'bench' | 'find' | 'figure'>;

export function bodiesPage(site: Site): BodiesPage {
  const bodies = bodiesAtGlance(site);
  const ends = bodies.flatMap(({ rows }) => rows.map(({ total: { value, interval } }) => interval?.high ?? value));
  return { answer: answerOf(site), bodies, reach: Math.max(0, ...ends) };
}

export function bodiesAtGlance(site: Site): readonly BodyAtGlance[] {
  return site.bench.bodies.map(({ id, name, maker }) => ({
    name,
    maker,
    path: bodyPath(id),
    place: placeOfBody(site.bench, id),
    ...ratesOf(site, id),
  }));
}

function ratesOf({ bench, find, figure }: Site, body: string): Pick<BodyAtGlance, 'rig' | 'rows'> {
  const chains = Map.groupBy(
    bench.sessions.filter((session) => session.body === body),
    chainKey,
  );
  const [most = []] = [...chains.values()].sort((x, y) => y.length - x.length);
  const own = new Set(most.map(({ id }) => id));
  const standing = conditionsOf(bench).flatMap(({ sessions }) =>
    standingBodies(
      bench,
      sessions.filter(({ id }) => own.has(id)),
    ),
  );
  const byRate = Map.groupBy(standing, ({ settings }) => settings['rate'] ?? '');
  const rows = [...byRate].flatMap(([rate, sessions]) => {
    const lowest = lowestOf(bench, sessions, (id) => figure(`total/${id}`));
    if (lowest === undefined) return [];
    const label = [`${find.level('rate', rate)} frames/s`, ...badgesOf(bench)(lowest.session.id)].join(', ');
    return [{ rate: label, total: lowest.total }];
  });
  return { rig: most[0] && find.rig(most[0].rig).name, rows: rows.toReversed() };
}
