/** What stands in the place of each part of a write-up, worked out before its page is drawn. */
import type { WriteUp } from '../model/bench.ts';
import type { Figure } from '../register/register.ts';
import { partNamed } from './parts.ts';
import { readProps, valuesOf, type Answering, type PartDefinition } from './parts/definition.ts';

/** By `answerKey`. */
export type Answers = Readonly<Record<string, unknown>>;

interface Answer {
  readonly key: string;
  readonly view: unknown;
  readonly figures: readonly Figure[];
  readonly prints: PartDefinition['prints'];
}

/** How the answer to a part is found again: its name and properties as written. */
export function answerKey(name: string, props: Readonly<Record<string, unknown>>): string {
  return `${name} ${JSON.stringify(Object.entries(props).toSorted(([a], [b]) => (a < b ? -1 : 1)))}`;
}

/** In the order of its parts. A part whose properties are not written out is answered only when the page is drawn. */
export function answersOf({ parts }: Pick<WriteUp, 'parts'>, answering: Answering): readonly Answer[] {
  return parts.flatMap((part) => {
    const definition = partNamed(part.name);
    const props = definition && readProps(definition, part);
    if (definition === undefined || props === undefined) return [];
    const view = definition.view(props, answering);
    return [
      { key: answerKey(part.name, valuesOf(part)), view, figures: definition.figures(view), prints: definition.prints },
    ];
  });
}
