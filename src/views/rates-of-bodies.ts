/** Bodies against their frame rates: of each chain the configuration in which most bodies were measured at several rates. */
import type { Session } from '../model/bench.ts';
import { rateHz } from '../model/rate.ts';
import type { MeasuredCondition } from '../register/comparisons/body-families.ts';
import { standingBodies } from '../register/comparisons/standing.ts';
import { labelSessions } from '../register/labels.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { placeOfBody } from './body-place.ts';

export interface RatesOfBodies {
  readonly bodies: readonly {
    readonly name: string;
    readonly place: number;
    /** Slowest rate first. */
    readonly points: readonly { readonly rate: string; readonly rateHz: number; readonly figure: Figure }[];
  }[];
  /** What all these sessions have in common. */
  readonly shared: string;
}

/** undefined where no two bodies were measured at two rates each, alike in everything else. */
export function ratesOfBodies(site: Published, conditions: readonly MeasuredCondition[]): RatesOfBodies | undefined {
  const alike = Map.groupBy(conditions, ({ sessions: [{ settings }] }) => {
    const { rate: _rate, ...others } = settings;
    return JSON.stringify(Object.entries(others).sort());
  });
  const [most] = [...alike.values()]
    .map((group) => bodiesOf(site, group))
    .filter((bodies) => bodies.length > 1)
    .sort((x, y) => y.length - x.length || y.flat().length - x.flat().length);
  if (most === undefined) return undefined;
  return {
    bodies: most.map((sessions) => {
      const [{ body }] = sessions;
      return {
        name: site.find.body(body).name,
        place: placeOfBody(site.bench, body),
        points: sessions.flatMap(({ id, rate, settings }) => {
          const figure = site.figure(`total/${id}`);
          return figure === undefined
            ? []
            : [{ rate: site.find.level('rate', settings['rate'] ?? ''), rateHz: rateHz(rate), figure }];
        }),
      };
    }),
    shared: labelSessions(site.bench, most.flat()).shared,
  };
}

type Sessions = readonly [Session, ...Session[]];

/** Of each body that has two rates or more among these conditions, one session for each, slowest first. */
function bodiesOf({ bench }: Published, conditions: readonly MeasuredCondition[]): readonly Sessions[] {
  return bench.bodies.flatMap(({ id }): readonly Sessions[] => {
    const [first, ...others] = conditions
      .flatMap(({ sessions }) =>
        standingBodies(
          bench,
          sessions.filter(({ body }) => body === id),
        ),
      )
      .toSorted((x, y) => rateHz(x.rate) - rateHz(y.rate));
    return first === undefined || others.length === 0 ? [] : [[first, ...others]];
  });
}
