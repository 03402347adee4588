/** What a property of a part is: its meaning, its shape, and what it may refer to. */
import { z } from 'zod';
import { nearest } from '../../ingest/nearest.ts';
import type { Inventory } from '../../ingest/inventory.ts';
import type { Problem } from '../../model/problem.ts';

/** What write-ups may refer to. */
export interface Known extends Pick<Inventory, 'bodies' | 'rigs' | 'sessions' | 'methods' | 'settings'> {
  readonly figures: ReadonlySet<string>;
  isFigure(id: string): boolean;
}

/** A problem without its place. */
export type Unplaced = Pick<Problem, 'code' | 'found' | 'expected' | 'choices' | 'nearest'>;

export interface Property<T = unknown> {
  readonly means: string;
  /** What may be written, as it is written. */
  readonly accepts: string;
  /** Readers see its text, so what holds for prose holds for it. */
  readonly isProse?: true;
  readonly schema: z.ZodType<T>;
  /** What is wrong with a value, whatever its type; empty where nothing is, or where only its shape is wrong. */
  check?(found: unknown, known: Known): readonly Unplaced[];
}

export type Properties = Readonly<Record<string, Property>>;

/** A property; or a list, of which one is needed. */
export type Need = string | readonly string[];

type Written<P extends Property> = z.infer<P['schema']>;

/** The properties as an author writes them. */
export type PropsOf<P extends Properties, N extends readonly Need[]> = {
  readonly [K in keyof P as K extends N[number] ? K : never]: Written<P[K]>;
} & {
  readonly [K in keyof P as K extends N[number] ? never : K]?: Written<P[K]> | undefined;
};

/** The schema of all properties of a part together. */
export function schemaOf(properties: Properties, needs: readonly Need[]): z.ZodType {
  return z.strictObject(
    Object.fromEntries(
      Object.entries(properties).map(([name, { schema }]) => [name, needs.includes(name) ? schema : schema.optional()]),
    ),
  );
}

export function checkValue({ schema, accepts, check }: Property, found: unknown, known: Known): readonly Unplaced[] {
  if (found === undefined) return [];
  const wrong = check?.(found, known) ?? [];
  if (wrong.length > 0 || schema.safeParse(found).success) return wrong;
  if (typeof found === 'string' && found.trim() === '') return [{ code: 'empty-value' }];
  return [{ code: 'wrong-shape', found: asWritten(found), expected: accepts }];
}

export function asWritten(value: unknown): string {
  return typeof value === 'string' ? value : JSON.stringify(value);
}

export function choice(found: string, choices: readonly string[]): Pick<Problem, 'found' | 'choices' | 'nearest'> {
  return { found, choices, nearest: nearest(found, choices) };
}

/** One of a list of names. */
export function checkChoice(
  code: Problem['code'],
  choices: (known: Known) => readonly string[],
): (found: unknown, known: Known) => readonly Unplaced[] {
  return (found, known) =>
    typeof found === 'string' && choices(known).includes(found)
      ? []
      : [{ code, ...choice(asWritten(found), choices(known)) }];
}

/** The id of a figure that there is. */
export function checkFigure(found: unknown, { figures, isFigure }: Known): readonly Unplaced[] {
  return typeof found === 'string' && isFigure(found)
    ? []
    : [{ code: 'unknown-figure', found: asWritten(found), nearest: nearest(asWritten(found), [...figures]) }];
}
