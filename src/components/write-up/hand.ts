/** How a part gets what it prints: its definition answers, from the write-up in which the part stands. */
import { readProps, type PartDefinition } from '../../write-ups/parts/definition.ts';

interface Placed {
  readonly props: Readonly<Record<string, unknown>>;
  /** Of the page that draws the write-up. */
  readonly locals: App.Locals;
}

/** @throws where the properties are not what they should be: a spread is checked only here */
export function handed<View>(definition: PartDefinition<string, never, View>, { props, locals }: Placed): View {
  const { answering } = locals;
  if (answering === undefined) throw new Error(`<${definition.name}> stands outside a write-up`);
  const attributes = Object.fromEntries(
    Object.entries(props).map(([name, value]) => [name, { known: true, value } as const]),
  );
  const read = readProps(definition, { attributes });
  if (read === undefined)
    throw new Error(
      `<${definition.name}> in ${answering.path} cannot be drawn with the properties ${JSON.stringify(props)}`,
    );
  return definition.view(read, answering);
}
