import type { z } from 'zod';
import { checkSchema } from './check-schema.ts';
import { parseFrontMatter, type FrontMatter } from './front-matter.ts';
import type { Source } from './source.ts';

/** A file with front matter, parsed: what it states, and where. */
export interface RecordFile<T> {
  readonly id: string;
  readonly value: T;
  readonly front: FrontMatter;
  readonly source: Source;
}

/** Undefined, with every mistake reported, where the front matter does not fit. */
export function parseRecord<T>(source: Source, schema: z.ZodType<T>): Omit<RecordFile<T>, 'id'> | undefined {
  const front = parseFrontMatter(source);
  const value = front && checkSchema(front, schema, source.report);
  return front && value && { value, front, source };
}
