import type { Bench, Part, WriteUp } from '../model/bench.ts';
import { writeUpFamilyId } from './asked-families.ts';
import type { Figure, Register } from '../register/register.ts';
import { selectFigures, type Query } from '../register/select.ts';

/**
 * Ids of everything that a report states through its parts, by list or by query: the figures, and the sessions
 * and bodies that these are of.
 */
export function statementsShown(
  { id, parts }: Pick<WriteUp, 'id' | 'parts'>,
  bench: Bench,
  { figures }: Pick<Register, 'figures'>,
): ReadonlySet<string> {
  const byId = new Map(figures.map((figure) => [figure.id, figure]));
  const bodyOf = new Map(bench.sessions.map((session) => [session.id, session.body]));
  const shown = [...parts.flatMap((part) => figuresOf(part, bench, figures, byId)), ...comparedIn(id, figures, byId)];
  const sessions = new Set(shown.flatMap(({ of }) => Object.values(of).filter((subject) => bodyOf.has(subject))));
  return new Set([
    ...shown.map((figure) => figure.id),
    ...[...sessions].map((session) => `session/${session}`),
    ...[...sessions].map((session) => `body/${bodyOf.get(session)}`),
  ]);
}

/** Whatever a report compares is a family of its own, with a verdict for each pair. */
function comparedIn(report: string, figures: readonly Figure[], byId: ReadonlyMap<string, Figure>): readonly Figure[] {
  const start = `verdict/${writeUpFamilyId('reports', report)}/`;
  const verdicts = figures.filter(({ id }) => id.startsWith(start));
  return [...verdicts, ...verdicts.flatMap(({ of }) => byId.get(`difference/${of['session']}/${of['than']}`) ?? [])];
}

/** Properties of one name mean one thing in every part, so that most parts need not be told apart. */
function figuresOf(
  { name, attributes }: Part,
  bench: Bench,
  figures: readonly Figure[],
  byId: ReadonlyMap<string, Figure>,
): readonly Figure[] {
  const known = Object.fromEntries(
    Object.entries(attributes).flatMap(([key, value]) => (value.known ? [[key, value.value]] : [])),
  );
  const [body, rig, session, kind] = ['body', 'rig', 'session', 'kind'].map((key) =>
    typeof known[key] === 'string' ? known[key] : undefined,
  );
  if (name === 'RateLaw' || name === 'RateLawSentence')
    return figures.filter(({ of }) => of['law'] !== undefined && of['body'] === body);
  if (name === 'History')
    return figures.filter(
      ({ kind: of, of: subject }) => (of.startsWith('repeat-') || of === 'firmware-change') && subject['body'] === body,
    );
  if (name === 'ChainBrackets') return figures.filter(({ kind: of }) => of === 'bracket');
  if (name === 'Effects')
    return figures.filter(({ of }) => of['setting'] !== undefined && of['body'] === body && of['rig'] === rig);
  if (name === 'Advice') return selectFigures(bench, figures, { kind: 'total', body, rig });
  const ids = [known['id'], known['ids']].flat().filter((id) => typeof id === 'string');
  const named = [
    ...ids,
    ...(session === undefined ? [] : [`total/${session}`]),
    ...(name === 'Ratio' ? [`ratio/${String(known['of'])}/${String(known['than'])}`] : []),
  ].flatMap((id) => byId.get(id) ?? []);
  const queried =
    ids.length === 0 && kind !== undefined ? selectFigures(bench, figures, known as unknown as Query) : [];
  return [...named, ...queried];
}
