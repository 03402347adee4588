/**
 * What parts that show figures of a selection have in common: by list or by query, so that a new session joins by
 * itself.
 */
import { questionOfId, type SessionPair } from '../../register/comparisons/family.ts';
import type { Bench, Session } from '../../model/bench.ts';
import { RANKABLE, rankFigures, type RankedFigure } from '../../register/comparisons/ranking.ts';
import { badgesOf } from '../../register/badges.ts';
import type { Figure } from '../../register/register.ts';
import { selectFigures, type Query } from '../../register/select.ts';
import { COMMON } from './common.ts';
import type { Answering, Asking } from './definition.ts';

export const SELECTION = {
  ids: COMMON.ids,
  kind: COMMON.kind,
  body: COMMON.body,
  rig: COMMON.rig,
  method: COMMON.method,
  where: COMMON.where,
} as const;
export const RANKED = { ...SELECTION, kind: COMMON.ranked } as const;

/** `ids`, or `kind` with what narrows it down. */
export type Selection = { readonly [K in keyof Query]?: Query[K] | undefined } & {
  readonly ids?: readonly string[] | undefined;
};

export interface SelectedFigures {
  readonly bench: Bench;
  readonly figures: readonly Figure[];
  /** Of these figures, where they are of sessions. */
  readonly sessions: readonly Session[];
}

/** The comparisons among ids of figures: a difference or ratio is computed because somebody asks for it. */
export function comparedByIds({ bench }: Pick<Asking, 'bench'>, ids: readonly string[]): readonly SessionPair[] {
  const sessions = bench.sessions.map(({ id }) => id);
  return ids.flatMap((id) => questionOfId(id, sessions) ?? []);
}

export function requireFigure({ site }: Pick<Answering, 'site'>, id: string): Figure {
  const found = site.figure(id);
  if (found === undefined) throw new Error(`there is no figure '${id}'`);
  return found;
}

export function whySelectionEmpty(
  { ids, kind, ...query }: Selection,
  { site }: Answering,
): 'empty-selection' | undefined {
  const found =
    ids !== undefined || kind === undefined || selectFigures(site.bench, site.register.figures, { ...query, kind })[0];
  return found === undefined ? 'empty-selection' : undefined;
}

export function selectedFigures({ ids, kind, ...query }: Selection, { site }: Answering): SelectedFigures {
  const { bench, register, find } = site;
  const figures =
    ids !== undefined
      ? ids.map((id) => requireFigure({ site }, id))
      : selectFigures(bench, register.figures, { ...query, kind: kind ?? '' });
  if (figures.length === 0) throw new Error(`no figure matches ${JSON.stringify({ kind, ...query })}`);
  const sessions = figures.flatMap(({ of }) => (of['session'] === undefined ? [] : [find.session(of['session'])]));
  return { bench, figures, sessions };
}

export interface RankedFigures extends Pick<SelectedFigures, 'bench' | 'sessions'> {
  readonly ranked: readonly RankedFigure[];
  /**
   * Sessions that a query matches and that are not ordinary: they are neither lowest nor highest, unless asked for by
   * id.
   */
  readonly leftOut: readonly string[];
}

export function rankedFigures(
  selection: Selection,
  answering: Answering,
  from: 'lowest' | 'highest' = 'lowest',
): RankedFigures {
  const { bench, figures, sessions } = selectedFigures(selection, answering);
  const wrong = figures.find(({ kind, unit }) => !RANKABLE.has(kind) || unit !== figures[0]?.unit);
  if (wrong !== undefined)
    throw new Error(`'${wrong.id}' cannot be ranked: only totals, or totals in frames, all of one kind`);
  const isOrdinary = ({ of }: Figure): boolean => badgesOf(bench)(of['session'] ?? '').length === 0;
  const ordinary = selection.ids === undefined ? figures.filter(isOrdinary) : [];
  const entering = ordinary.length > 0 ? ordinary : figures;
  return {
    bench,
    sessions,
    ranked: rankFigures(entering, from),
    leftOut: figures.filter((figure) => !entering.includes(figure)).map(({ of }) => of['session'] ?? ''),
  };
}
