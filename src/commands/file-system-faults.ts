import { problemsError } from '../model/problem-text.ts';
import type { ProblemsError } from '../model/problem.ts';

const FULL = new Set(['ENOSPC', 'EDQUOT']);
const REFUSED = new Set(['EACCES', 'EPERM', 'EROFS']);

/**
 * What the file system refused, told as a problem that says what to do; undefined where an error is not its.
 * The errors of others may hold its own, as a cause or in a list.
 *
 * @param output the folder that was to be written, as the author knows it
 */
export function fileSystemProblem(error: unknown, output: string): ProblemsError | undefined {
  const fault = faultIn(error);
  if (fault === undefined) return undefined;
  if (FULL.has(fault.code)) return problemsError([{ code: 'disk-full', file: output }]);
  return problemsError([{ code: 'not-writable', file: fault.path ?? output, found: fault.code }]);
}

interface Fault {
  readonly code: string;
  readonly path: string | undefined;
}

function faultIn(error: unknown): Fault | undefined {
  if (!(error instanceof Error)) return undefined;
  const code = 'code' in error ? String(error.code) : '';
  // Bundlers hand on no more than the words.
  const [named] = /\b(?:ENOSPC|EDQUOT)\b/.exec(error.message) ?? [];
  const path = 'path' in error && typeof error.path === 'string' ? error.path : undefined;
  if (FULL.has(code) || REFUSED.has(code)) return { code, path };
  if (named !== undefined) return { code: named, path };
  const inner = [error.cause, ...(error instanceof AggregateError ? error.errors : [])];
  return inner.map(faultIn).find((fault) => fault !== undefined);
}
