/** A text in Markdown with all that a page prints of it. */
import type { Bench, SourceFile } from '../model/bench.ts';
import type { Illustration } from '../model/illustration.ts';

export interface Note {
  /** Markdown. */
  readonly text: string;
  /** Path of the file that it stands in. */
  readonly file: string;
  readonly illustrations: readonly Illustration[];
}

export function noteOf(bench: Pick<Bench, 'illustrations'>, text: string, { path }: SourceFile): Note {
  return { text, file: path, illustrations: illustrationsIn(bench, path) };
}

/** What a text shows besides words. */
export function illustrationsIn({ illustrations = [] }: Pick<Bench, 'illustrations'>, file: string) {
  return illustrations.filter(({ text }) => text === file);
}
