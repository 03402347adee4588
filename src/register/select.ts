/** Which figures a table or chart shows: by list, or by query, so that a new session joins by itself. */
import type { Bench, Session } from '../model/bench.ts';
import { rateHz } from '../model/rate.ts';
import type { Figure } from './register.ts';

export interface Query {
  readonly kind: string;
  readonly body?: string | undefined;
  readonly rig?: string | undefined;
  readonly method?: string | undefined;
  /** Level by setting: `{ output: 'uhd' }`. */
  readonly where?: Readonly<Record<string, string>> | undefined;
}

/**
 * The figures of one kind whose sessions match, in bench order: body, then frame rate, then the other
 * settings in the order of their levels, then date and id.
 */
export function selectFigures(bench: Bench, figures: readonly Figure[], query: Query): readonly Figure[] {
  const figureOf = new Map<string, Figure>();
  for (const figure of figures) {
    const session = figure.of['session'];
    // A figure of two sessions is not a figure of either.
    if (figure.kind === query.kind && session !== undefined && figure.of['than'] === undefined)
      figureOf.set(session, figure);
  }
  return inBenchOrder(
    bench,
    bench.sessions.filter((session) => matchesQuery(session, query)),
  ).flatMap(({ id }) => figureOf.get(id) ?? []);
}

export function inBenchOrder(bench: Bench, sessions: readonly Session[]): readonly Session[] {
  const ranks = bench.settings.map(({ id, levels }) => ({
    id,
    rank: new Map(levels.map((level, index) => [level.id, index])),
  }));
  const rankOf = (session: Session): readonly (number | string)[] => [
    session.body,
    rateHz(session.rate),
    ...ranks.map(({ id, rank }) => rank.get(session.settings[id] ?? '') ?? -1),
    session.date,
    session.id,
  ];
  return sessions
    .map((session) => ({ session, rank: rankOf(session) }))
    .sort((a, b) => compareRanks(a.rank, b.rank))
    .map(({ session }) => session);
}

export function matchesQuery(session: Session, { body, rig, method, where }: Query): boolean {
  return (
    (body === undefined || session.body === body) &&
    (rig === undefined || session.rig === rig) &&
    (method === undefined || session.method === method) &&
    Object.entries(where ?? {}).every(([setting, level]) => session.settings[setting] === level)
  );
}

function compareRanks(a: readonly (number | string)[], b: readonly (number | string)[]): number {
  for (const [index, left] of a.entries()) {
    const right = b[index];
    if (right === undefined || left === right) continue;
    return left < right ? -1 : 1;
  }
  return 0;
}
