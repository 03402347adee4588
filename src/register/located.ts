import { ProblemsError } from '../model/problem.ts';
import { problemsError } from '../model/problem-text.ts';
import { compilationOf, type Compilation } from './compilation.ts';
import { wordsOf } from './refusal.ts';

/**
 * What is computed from several sessions; where it fails, one problem of the session without which it does not, and of
 * the first session where no single one explains it: nothing that an author wrote ends as an error without a file.
 */
export function located<T>(what: string, compile: (compilation: Compilation) => T, compilation: Compilation): T {
  try {
    return compile(compilation);
  } catch (error) {
    if (error instanceof ProblemsError) throw error;
    const { bench, sessions } = compilation;
    const culprit = sessions.find(({ session: { id } }) => {
      try {
        compile(
          compilationOf(
            { ...bench, sessions: bench.sessions.filter((session) => session.id !== id) },
            sessions.filter(({ session }) => session.id !== id),
          ),
        );
        return true;
      } catch {
        return false;
      }
    });
    const file = culprit?.session.file.path ?? bench.settingsFile.path;
    throw problemsError([{ code: 'not-compilable', file, found: wordsOf(error), expected: what }]);
  }
}
