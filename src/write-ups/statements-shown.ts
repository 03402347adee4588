import type { Figure } from '../register/register.ts';
import type { WriteUp } from '../model/bench.ts';
import { answersOf } from './answers.ts';
import type { Answering } from './parts/definition.ts';

/**
 * The figures that a write-up shows through its parts, in the order of its parts. What a part shows whose properties
 * are not written out is known only when the page is drawn, and missing here.
 */
export function figuresShown({ parts }: Pick<WriteUp, 'parts'>, answering: Answering): readonly Figure[] {
  return answersOf({ parts }, answering).flatMap(({ figures }) => figures);
}

/** Ids of all that it states: these figures, and the sessions and bodies that they are of. */
export function statementsShown(writeUp: Pick<WriteUp, 'parts'>, answering: Answering): ReadonlySet<string> {
  const bodyOf = new Map(answering.bench.sessions.map(({ id, body }) => [id, body]));
  const shown = figuresShown(writeUp, answering);
  const sessions = new Set(shown.flatMap(({ of }) => Object.values(of).filter((subject) => bodyOf.has(subject))));
  return new Set([
    ...shown.map(({ id }) => id),
    ...[...sessions].map((session) => `session/${session}`),
    ...[...sessions].map((session) => `body/${bodyOf.get(session)}`),
  ]);
}
