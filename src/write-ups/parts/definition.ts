/**
 * What a part of a write-up is, in one module each: what may be written, what it asks of the data, what it shows. The
 * check of write-ups, the families of comparisons, the list of what a report shows, the page and the guide go by it.
 */
import type { z } from 'zod';
import type { Bench, Part } from '../../model/bench.ts';
import type { Problem } from '../../model/problem.ts';
import type { Family, SessionPair } from '../../register/comparisons/family.ts';
import type { Published } from '../../register/published.ts';
import type { Figure } from '../../register/register.ts';
import { schemaOf, type Known, type Need, type Properties, type PropsOf, type Unplaced } from './property.ts';

/** Under which heading of the guide a part stands. */
export type PartGroup = 'figures' | 'comparisons' | 'bodies' | 'words';

/** What comparisons are selected from, before any is computed. */
export interface Asking {
  readonly bench: Bench;
  /** The comparisons that the bench asks for by itself. */
  readonly families: readonly Family[];
}

/** What a part is answered from: the published site, and the write-up in which it stands. */
export interface Answering extends Asking {
  readonly site: Published;
  /** The site path of the write-up. */
  readonly path: string;
  /** Everything that the write-up compares; undefined where it compares nothing. */
  readonly family: Family | undefined;
  readonly adjust: Adjust;
}

/** Of p of some statements of a write-up, those adjusted for all that it asserts and compares, in the same order. */
export type Adjust = (p: readonly number[]) => readonly number[];

/** A problem without its place, in a property. */
export type InProperty = Unplaced & { readonly key: string };

export interface PartDefinition<Name extends string = string, Props = unknown, View = unknown> {
  readonly name: Name;
  readonly group: PartGroup;
  /** What it puts on the page, to follow its name. */
  readonly shows: string;
  readonly needs: readonly Need[];
  readonly properties: Properties;
  readonly schema: z.ZodType;
  /** Whether words stand between its tags. */
  readonly marksWords?: true;
  /** Whether every property must be a plain value, because what it says is settled before pages are drawn. */
  readonly isSettledBefore?: true;
  /**
   * What of its figures stands on the page, where that is not both: their text alone, the names of what they are of
   * alone, or words of the author that lead to them.
   */
  readonly prints?: 'figures' | 'names' | 'words';
  /** On the demonstration, from which it builds. */
  readonly example: string;
  /** A mistake, and what the build says of it after the name of the file, had the file but this line. */
  readonly failure: { readonly written: string; readonly says: string };
  /** What is wrong with several properties together. */
  check?(values: Readonly<Record<string, unknown>>, known: Known): readonly InProperty[];
  /** The comparisons that it needs, each with the margin that its author states. */
  asks?(props: Props, asking: Asking): readonly SessionPair[];
  /** How many statements it makes beside those that it asks for, each of which may be false. */
  claims?(props: Props, asking: Asking): number;
  /** The p of each of them, two-sided: at most 0.05 where the data alone support it. */
  claimed?(props: Props, answering: Omit<Answering, 'adjust'>): readonly number[];
  /** Why it would show nothing, on a sound bench; undefined where it shows something. */
  whyEmpty?(props: Props, answering: Answering): 'empty-selection' | 'empty-comparison' | undefined;
  /** What the data have against it. */
  judge?(props: Props, answering: Answering, part: Part): readonly Omit<Problem, 'file' | 'line' | 'column'>[];
  /** All that is printed in its place, as plain data. Throws where it cannot be answered. */
  view(props: Props, answering: Answering): View;
  /** The figures that this view shows: their text, or words that lead to them. */
  figures(view: View): readonly Figure[];
}

/** A part, with the types of its properties taken from their schemas. */
export function definePart<
  const Name extends string,
  const P extends Properties,
  const N extends readonly ((keyof P & string) | readonly (keyof P & string)[])[],
  View,
>(
  definition: Omit<PartDefinition<Name, PropsOf<P, N>, View>, 'schema'> & {
    readonly properties: P;
    readonly needs: N;
  },
): PartDefinition<Name, PropsOf<P, N>, View> & { readonly properties: P } {
  return { ...definition, schema: schemaOf(definition.properties, definition.needs) };
}

/** The properties that an author may write for a part. */
export type PropsOfPart<D> = D extends PartDefinition<string, infer Props, unknown> ? Props : never;

/** The values of a part that are written out; what is not is missing. */
export function valuesOf({ attributes }: Pick<Part, 'attributes'>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(
    Object.entries(attributes).flatMap(([name, value]) => (value.known ? [[name, value.value]] : [])),
  );
}

/** undefined where a property is not written out, or not what it should be. */
export function readProps<Props>(
  { schema }: PartDefinition<string, Props>,
  part: Pick<Part, 'attributes'>,
): Props | undefined {
  if ('...' in part.attributes || Object.values(part.attributes).some(({ known }) => !known)) return undefined;
  const read = schema.safeParse(valuesOf(part));
  return read.success ? (read.data as Props) : undefined;
}

/** Whether a part cannot do without a property: by itself, or for want of another (`one of`). */
export function needOf({ needs }: PartDefinition, property: string): 'needed' | 'one of' | 'optional' {
  if (needs.includes(property)) return 'needed';
  return needs.some((need) => typeof need !== 'string' && need.includes(property)) ? 'one of' : 'optional';
}
