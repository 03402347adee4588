/** The comparison of bodies on one chain: every condition against every body, with what nobody measured left open. */
import type { Bench, Body, Session } from '../model/bench.ts';
import { labelSessions, labelSettings } from '../register/labels.ts';
import type { Figure } from '../register/register.ts';
import type { Published } from '../register/published.ts';
import { bodyFamilies, conditionsOf, nameOfChain } from '../register/comparisons/body-families.ts';
import { placeOfBody } from './body-place.ts';
import { ratesOfBodies, type RatesOfBodies } from './rates-of-bodies.ts';
import { comparedRows, type ComparedRows } from './compared-rows.ts';
import { standingBodies } from '../register/comparisons/standing.ts';
import { badgesOf } from '../register/badges.ts';
import { lowerFirst } from '../register/traits.ts';
import { rankFigures, type RankedFigure } from '../register/comparisons/ranking.ts';

type Standing = 'lowest' | 'tied' | 'higher';

const STANDING_WORDS: Readonly<Record<Standing, string>> = {
  lowest: 'lowest',
  tied: 'too close to call',
  higher: '',
};

export interface GridCell {
  /** What sets it apart from the other sessions of its body in its condition; empty where it is the only one. */
  readonly label: string;
  readonly total: Figure;
  /** Against the lowest of its condition; undefined where only one body was measured in it. */
  readonly standing: Standing | undefined;
  /** `lowest` */
  readonly remarks: readonly string[];
  /** `UHD, lowest`: what to print beside the total. */
  readonly words: string;
}

export interface GridRow {
  readonly condition: string;
  /** In the order of the bodies; a body nobody measured in this condition has none. */
  readonly cells: readonly (readonly GridCell[])[];
}

export interface BodyGrid {
  readonly rig: string;
  /** Of the chain, fit for an address: `pit/radio-pair`. */
  readonly slug: string;
  /** `Balcony`, and what sets the grid apart on its rig: `Pit, through Radio pair`. */
  readonly name: string;
  readonly bodies: readonly (Pick<Body, 'id' | 'name'> & { readonly place: number })[];
  readonly rows: readonly GridRow[];
  readonly shared: string;
  /** Bodies against each other under the heading of each condition; undefined where no condition has several. */
  readonly compared: ComparedRows | undefined;
  readonly rates: RatesOfBodies | undefined;
}

/** One grid for each rig and chain. */
export function bodyGrids(site: Published): readonly BodyGrid[] {
  const { bench, find } = site;
  const families = new Map(bodyFamilies(bench).map((family) => [family.pairs[0]?.a ?? '', family]));
  return [...Map.groupBy(conditionsOf(bench), ({ chain }) => chain).values()]
    .map((conditions): BodyGrid => {
      const [first] = conditions;
      const sessions = conditions.flatMap((condition) => condition.sessions);
      const names = labelSettings(
        bench,
        conditions.map(({ sessions: [one] }) => one),
      );
      const nameOf = (one: Session): string => names.of.get(one.id) ?? one.id;
      const bodies = bench.bodies.filter(({ id }) => sessions.some(({ body }) => body === id));
      const { rig = '', links = [], method = '' } = first?.sessions[0] ?? {};
      return {
        rig,
        slug: first === undefined ? '' : nameOfChain(first.sessions[0], find).join('/'),
        name: [
          find.rig(rig).name,
          links.length > 0 && `through ${links.map((id) => find.link(id).name).join(' and ')}`,
          new Set(bench.sessions.filter((one) => one.rig === rig).map((one) => one.method)).size > 1 &&
            `read by ${lowerFirst(bench.methods.find(({ id }) => id === method)?.title ?? method)}`,
        ]
          .filter(Boolean)
          .join(', '),
        bodies: bodies.map(({ id, name }) => ({ id, name, place: placeOfBody(bench, id) })),
        rows: conditions.map((condition) => ({
          condition: nameOf(condition.sessions[0]),
          cells: cellsOf(site, bodies, condition.sessions),
        })),
        shared: names.shared,
        rates: ratesOfBodies(site, conditions),
        compared: joined(
          conditions.flatMap((condition) => {
            const family = condition.sessions.map(({ id }) => families.get(id)).find((each) => each !== undefined);
            return family === undefined
              ? []
              : [
                  {
                    condition: nameOf(condition.sessions[0]),
                    comparisons: comparedRows(site, family.id, family.pairs),
                  },
                ];
          }),
        ),
      };
    })
    .sort((a, b) => rankOfRig(bench, a.rig) - rankOfRig(bench, b.rig) || b.rows.length - a.rows.length);
}

function cellsOf(
  { bench, figure }: Published,
  bodies: readonly Body[],
  sessions: readonly Session[],
): readonly (readonly GridCell[])[] {
  const standing = standingBodies(bench, sessions);
  const ranked = rankFigures(standing.flatMap(({ id }) => figure(`total/${id}`) ?? []));
  const several = standing.length > 1;
  const badges = badgesOf(bench);
  return bodies.map(({ id: body }) => {
    const own = sessions.filter((session) => session.body === body);
    const labels = labelSessions(bench, own);
    return own.flatMap((session): readonly GridCell[] => {
      const at = ranked.findIndex((each) => each.figure.of['session'] === session.id);
      const found = ranked[at];
      const total = figure(`total/${session.id}`);
      if (total === undefined) return [];
      const place = standingOf(several ? found : undefined, at);
      const label = own.length > 1 ? (labels.of.get(session.id) ?? '') : '';
      const remarks = [...badges(session.id), (place && STANDING_WORDS[place]) ?? ''].filter(Boolean);
      return [{ label, total, standing: place, remarks, words: [label, ...remarks].filter(Boolean).join(', ') }];
    });
  });
}

function standingOf(found: RankedFigure | undefined, at: number): Standing | undefined {
  if (found === undefined) return undefined;
  return at === 0 ? 'lowest' : found.tiedWithBest ? 'tied' : 'higher';
}

/** Several families in one table, each under its own heading; each keeps its own adjustment. */
function joined(
  parts: readonly { readonly condition: string; readonly comparisons: ComparedRows }[],
): ComparedRows | undefined {
  if (parts.length === 0) return undefined;
  return {
    rows: parts.flatMap(({ condition, comparisons }) => comparisons.rows.map((row) => ({ ...row, group: condition }))),
    shared: '',
    familySizes: parts.flatMap(({ comparisons }) => comparisons.familySizes),
  };
}

function rankOfRig({ rigs }: Bench, id: string): number {
  return rigs.findIndex((rig) => rig.id === id);
}
