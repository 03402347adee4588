import type { Bench, Part, WriteUp } from '../../model/bench.ts';
import type { Figure, Register } from '../register.ts';
import { selectFigures, type Query } from '../select.ts';

/**
 * Ids of everything that a write-up states through its parts, by list or by query: the figures, and the sessions
 * and bodies that these are of. Which properties a part has is not asked: those of one name mean one thing everywhere.
 */
export function statementsShown({ parts }: Pick<WriteUp, 'parts'>, bench: Bench, { figures }: Pick<Register, 'figures'>): ReadonlySet<string> {
  const byId = new Map(figures.map((figure) => [figure.id, figure]));
  const bodyOf = new Map(bench.sessions.map(({ id, body }) => [id, body]));
  const shown = parts.flatMap((part) => figuresOf(part, bench, figures, byId));
  const sessions = new Set(shown.flatMap(({ of }) => Object.values(of).filter((subject) => bodyOf.has(subject))));
  return new Set([
    ...shown.map(({ id }) => id),
    ...[...sessions].map((id) => `session/${id}`),
    ...[...sessions].map((id) => `body/${bodyOf.get(id)}`),
  ]);
}

function figuresOf({ attributes }: Part, bench: Bench, figures: readonly Figure[], byId: ReadonlyMap<string, Figure>): readonly Figure[] {
  const known = Object.fromEntries(Object.entries(attributes).flatMap(([name, value]) => (value.known ? [[name, value.value]] : [])));
  const ids = [known['id'], known['ids']].flat().filter((id) => typeof id === 'string');
  const session = known['session'];
  const listed = [...ids, ...(typeof session === 'string' ? [`total/${session}`] : [])].flatMap((id) => byId.get(id) ?? []);
  const queried = ids.length === 0 && typeof known['kind'] === 'string' ? selectFigures(bench, figures, known as unknown as Query) : [];
  return [...listed, ...queried];
}
