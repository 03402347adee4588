import type { Figure } from '../register/register.ts';
import type { WriteUp } from '../model/bench.ts';
import { answersOf } from './answers.ts';
import type { Answering } from './parts/definition.ts';

/**
 * The figures that a write-up shows through its parts, in the order of its parts. What a part shows whose properties
 * are not written out is known only when the page is drawn, and missing here.
 */
export function figuresShown(writeUp: Pick<WriteUp, 'parts'>, answering: Answering): readonly Figure[] {
  return answersOf(writeUp, answering).flatMap(({ figures }) => figures);
}

/**
 * Ids of all that a write-up prints: the figures whose text stands in it, the sessions and bodies that it names beside
 * them, and its own title, day and words. Not what its words only lead to: they are held by a claim.
 */
export function statementsShown(
  writeUp: Pick<WriteUp, 'parts' | 'id' | 'file'>,
  answering: Answering,
): ReadonlySet<string> {
  const bodyOf = new Map(answering.bench.sessions.map(({ id, body }) => [id, body]));
  const shown = answersOf(writeUp, answering);
  const printed = shown.filter(({ prints }) => prints === undefined || prints === 'figures');
  const named = shown.filter(({ prints }) => prints === undefined || prints === 'names');
  const subjects = named.flatMap(({ figures }) => figures).flatMap(({ of }) => Object.values(of));
  const sessions = new Set(subjects.filter((subject) => bodyOf.has(subject)));
  return new Set([
    ...printed.flatMap(({ figures }) => figures.map(({ id }) => id)),
    ...[...sessions].map((session) => `session/${session}`),
    ...[...sessions].map((session) => `body/${bodyOf.get(session)}`),
    ...ownStatements(writeUp),
  ]);
}

/** Title, summary and author; day; text; pictures. */
function ownStatements({ id, file }: Pick<WriteUp, 'id' | 'file'>): readonly string[] {
  const [, folder, kind] = /\/((report|method)s)\/[^/]+$/.exec(file.path) ?? [];
  return folder === undefined
    ? []
    : [`${kind}/${id}`, `date/${folder}/${id}`, `words/${folder}/${id}`, `pictures/${folder}/${id}`];
}
