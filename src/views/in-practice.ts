/** What a latency means to somebody who has to picture it: how far things have moved when the picture shows them. */
import { describeCondition } from '../register/comparisons/describe-condition.ts';
import { lowestOfBody } from '../register/comparisons/lowest-of-body.ts';
import { MOVEMENTS, ownMovement, type Movement } from '../register/practice/movements.ts';
import { movedId } from '../register/practice/practice-figures.ts';
import type { Published } from '../register/published.ts';
import type { Sentence } from '../register/sentence.ts';

export interface InPractice {
  readonly sentence: Sentence;
  /** Where the speeds are from. */
  readonly sources: string;
  /** Of the publication's own speeds, and the file that states them; undefined where it has none. */
  readonly own: { readonly sources: string; readonly file: string } | undefined;
}

/** undefined for a body without a session. */
export function inPractice(
  { bench, find, figure }: Pick<Published, 'bench' | 'find' | 'figure'>,
  body: string,
): InPractice | undefined {
  const lowest = lowestOfBody(bench, body, (id) => figure(`total/${id}`));
  if (lowest === undefined) return undefined;
  const { speeds } = bench;
  const { session, total } = lowest;
  const moved = (movement: Movement['id']): Sentence[number] => figure(movedId(movement, body)) ?? '';
  return {
    sentence: [
      `At its lowest total, the picture of the ${find.body(body).name} is `,
      total,
      ' late, or ',
      figure(`frames/${session.id}`) ?? '',
      `, at ${describeCondition(bench, session)}. Before it shows a moment, someone walking has gone `,
      moved('walking'),
      ', a sprinter ',
      moved('sprinting'),
      ', and a ball let go has fallen ',
      moved('falling'),
      '. Sound needs as long for ',
      moved('sound'),
      ': that far from the stage, picture and sound arrive together; nearer, the picture comes after the sound.',
      ...(speeds?.list.flatMap(({ id, name }) => [` Meanwhile ${name} has gone `, moved(id), '.']) ?? []),
    ],
    sources: `Speeds: ${MOVEMENTS.map(({ source }) => source).join('; ')}.`,
    own: speeds && {
      sources: `This publication’s own: ${speeds.list.map((own) => ownMovement(own).source).join('; ')}.`,
      file: speeds.file.path,
    },
  };
}
