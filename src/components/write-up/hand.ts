/** What a part prints: the answer that was worked out for its name and properties before the page was drawn. */
import { answerKey } from '../../write-ups/answers.ts';
import { readProps, type Answering, type PartDefinition } from '../../write-ups/parts/definition.ts';

interface Placed {
  readonly props: Readonly<Record<string, unknown>>;
  /** Of the page that draws the write-up. */
  readonly locals: App.Locals;
}

/** @throws where the properties are not what they should be: a spread is checked only here */
export function handed<View>(definition: PartDefinition<string, never, View>, { props, locals }: Placed): View {
  const { writeUp } = locals;
  if (writeUp === undefined) throw new Error(`<${definition.name}> stands outside a write-up`);
  const answer = writeUp.answers[answerKey(definition.name, props)] as View | undefined;
  return answer ?? computed(definition, props, writeUp.answering);
}

function computed<View>(
  definition: PartDefinition<string, never, View>,
  props: Placed['props'],
  answering: Answering | undefined,
): View {
  const attributes = Object.fromEntries(
    Object.entries(props).map(([name, value]) => [name, { known: true, value } as const]),
  );
  const read = readProps(definition, { attributes });
  if (read === undefined || answering === undefined)
    throw new Error(
      `<${definition.name}> in ${answering?.path ?? 'a write-up'} cannot be drawn with the properties ${JSON.stringify(props)}`,
    );
  return definition.view(read, answering);
}
