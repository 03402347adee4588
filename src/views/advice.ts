/** What to set on a body: its conditions from the lowest total up, what each costs over the lowest, and one sentence. */
import type { Session } from '../model/bench.ts';
import { badgesOf } from '../register/badges.ts';
import type { Choice } from '../register/comparisons/choices.ts';
import { conditionKey } from '../register/comparisons/conditions.ts';
import { costId } from '../register/comparisons/cost-figures.ts';
import { rankFigures } from '../register/comparisons/ranking.ts';
import { standingConditions } from '../register/comparisons/standing.ts';
import { labelSessions } from '../register/labels.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import type { Sentence } from '../register/sentence.ts';
import { adviceWords } from './advice-words.ts';
import { namedSession, type NamedSession } from './named-session.ts';

export interface AdviceRow {
  readonly session: NamedSession;
  readonly total: Figure;
  /** Over the lowest total. */
  readonly cost: Figure;
  readonly tiedWithBest: boolean;
  /** `stands for 3 sessions in this condition, as the latest`; empty for the only one. */
  readonly standsFor: string;
}

/** A session that is shown, and takes no part in what is lowest. */
export interface AsideRow extends Pick<AdviceRow, 'session' | 'total'> {
  readonly why: string;
}

interface Candidate extends Omit<AdviceRow, 'session'> {
  readonly session: Session;
}

export interface Advice {
  /** Lowest total first. */
  readonly rows: readonly [AdviceRow, ...AdviceRow[]];
  readonly aside: readonly AsideRow[];
  readonly shared: string;
  readonly sentence: Sentence;
}

type Site = Pick<Published, 'bench' | 'find' | 'figure'>;

/** undefined where a total is not published, which is for no choice of the bench. */
export function adviseOn(site: Site, { sessions }: Choice): Advice | undefined {
  const { bench, find, figure } = site;
  const labels = labelSessions(bench, sessions);
  const named = ({ id }: Session): NamedSession => namedSession(bench, id, labels.of.get(id));
  const rowOf = (row: Candidate): AdviceRow => ({ ...row, session: named(row.session) });
  const standing = standingConditions(bench, sessions);
  const ranked = rankFigures(standing.flatMap(({ id }) => figure(`total/${id}`) ?? []));
  const [best, ...others] = ranked.flatMap(({ figure: total, tiedWithBest }): readonly Candidate[] => {
    const session = find.session(total.of['session'] ?? '');
    const cost = figure(costId(session.id));
    if (cost === undefined) return [];
    return [{ session, total, cost, tiedWithBest, standsFor: standsFor(session, sessions) }];
  });
  if (best === undefined) return undefined;
  return {
    rows: [rowOf(best), ...others.map(rowOf)],
    aside: sessions
      .filter((session) => !standing.includes(session))
      .flatMap((session): readonly AsideRow[] => {
        const total = figure(`total/${session.id}`);
        return total === undefined ? [] : [{ session: named(session), total, why: whyAside(site, session) }];
      }),
    shared: labels.shared,
    sentence: adviceWords(site, best, others),
  };
}

function standsFor(session: Session, sessions: readonly Session[]): string {
  const alike = sessions.filter((other) => conditionKey(other) === conditionKey(session)).length;
  return alike === 1 ? '' : `stands for ${alike} sessions in this condition`;
}

function whyAside({ bench }: Site, { id }: Session): string {
  const badges = badgesOf(bench)(id);
  return badges.length === 0 ? 'another session stands for its condition' : badges.join(', ');
}
