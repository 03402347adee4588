/** The comparisons that write-ups ask for: one family each, so that a report's verdicts hold together. */
import type { Bench } from '../model/bench.ts';
import type { Family } from '../register/comparisons/family.ts';
import { partNamed } from './parts.ts';
import { readProps, type Asking } from './parts/definition.ts';
import { distinctQuestions } from './parts/question.ts';
import { placedWriteUps, writeUpFamilyId, type PlacedWriteUp } from './write-up-kind.ts';

/** Reports', then method notes'. */
export function askedFamilies(bench: Bench, families: readonly Family[]): readonly Family[] {
  const placed = placedWriteUps(bench);
  return [...placed.filter(({ kind }) => kind === 'report'), ...placed.filter(({ kind }) => kind === 'method')].flatMap(
    (each) => askedFamily(each, { bench, families }) ?? [],
  );
}

/** Only what can be asked for: what is misspelt is reported by the check of write-ups. */
export function askedFamily({ kind, writeUp }: PlacedWriteUp, asking: Asking): Family | undefined {
  const sessions = new Set(asking.bench.sessions.map(({ id }) => id));
  const parts = writeUp.parts.map((part) => {
    const definition = partNamed(part.name);
    const props = definition && readProps(definition, part);
    return props === undefined
      ? { asked: [], claimed: 0 }
      : { asked: definition?.asks?.(props, asking) ?? [], claimed: definition?.claims?.(props, asking) ?? 0 };
  });
  const pairs = distinctQuestions(
    parts.flatMap(({ asked }) => asked).filter(({ a, b }) => a !== b && sessions.has(a) && sessions.has(b)),
  );
  if (pairs.length === 0) return undefined;
  const id = writeUpFamilyId(kind, writeUp.id);
  return {
    id,
    of: { [kind]: writeUp.id },
    group: id,
    groupTitle: `Compared in “${writeUp.title}”`,
    inWords: `all that “${writeUp.title}” asks for`,
    pairs,
    claimed: parts.reduce((sum, { claimed }) => sum + claimed, 0),
  };
}
