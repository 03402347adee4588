import { VALID_FILES, type BenchFolder, type Files } from '../../support/bench-folder.ts';

/** One mistake (or a few of a kind) in an otherwise valid bench, and every line that is reported. */
export interface ProblemCase {
  readonly name: string;
  readonly changes: Files;
  /** What cannot be done by writing files: links, sparse files. */
  readonly arrange?: (folder: BenchFolder) => void;
  readonly lines: readonly string[];
}

type ValidFile = keyof typeof VALID_FILES;

/** A valid file with one part of it replaced. The part must be there. */
export function edit(file: ValidFile, from: string, to: string): Files {
  const text: string = VALID_FILES[file];
  if (!text.includes(from)) throw new Error(`${file} has no ${from}`);
  return { [file]: text.replace(from, to) };
}

/** The readings of session a, two timers, with these rows. */
export function rows(...lines: readonly string[]): Files {
  return readings('run,source,shown,exclude,note', ...lines);
}

export function readings(...lines: readonly string[]): Files {
  return { 'data/sessions/a.csv': `${lines.join('\n')}\n` };
}

/** The readings of session a as these bytes. */
export function bytes(content: Uint8Array | string): Files {
  return { 'data/sessions/a.csv': content };
}
