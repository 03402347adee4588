/** Why something moved: the recorded inputs against those of now. */
import type { Cause, Inputs, Recorded } from '../model/ledger.ts';
import { digestOf, type Statement } from './statements.ts';

type FileCause = Extract<Cause, { readonly file: string }>;

/** Every file that is not as recorded, by path. */
function changedFiles(recorded: Inputs, now: Inputs): readonly FileCause[] {
  const paths = new Set([...Object.keys(recorded.checksums), ...Object.keys(now.checksums)]);
  return [...paths].sort().flatMap((file): readonly FileCause[] => {
    const [before, after] = [recorded.checksums[file], now.checksums[file]];
    if (before === after) return [];
    return [{ kind: before === undefined ? 'new' : after === undefined ? 'gone' : 'changed', file, own: true }];
  });
}

/** Finds causes. Never empty: where no input changed, the code did. */
export function causeFinder(
  recorded: Inputs,
  now: Inputs,
): { ofMoved(now: Statement, before: Recorded): readonly Cause[]; ofGone(before: Recorded): readonly Cause[] } {
  const files = changedFiles(recorded, now);
  const goneFiles = files.filter(({ kind }) => kind === 'gone');
  const newFiles = new Set(files.filter(({ kind }) => kind === 'new').map(({ file }) => file));
  const analysis: readonly Cause[] =
    recorded.analysis === now.analysis ? [] : [{ kind: 'analysis', from: recorded.analysis, to: now.analysis }];
  /** What is left to blame where nothing of a figure's own changed. */
  const elsewhere = (): readonly Cause[] =>
    files.length > 0 ? files.map((cause) => ({ ...cause, own: false })) : [{ kind: 'code', analysis: now.analysis }];
  const orElsewhere = (causes: readonly Cause[]): readonly Cause[] => (causes.length > 0 ? causes : elsewhere());

  return {
    ofMoved({ sources }, before) {
      const own = files.filter(({ file }) => sources.includes(file));
      // The files that it had before, were none gone: then the recorded digest is theirs.
      const regrouped = digestOf(sources.filter((file) => !newFiles.has(file))) !== before.files;
      const gone = regrouped ? goneFiles : [];
      const causes = [...analysis, ...own, ...gone];
      return orElsewhere(causes.length === 0 && regrouped && files.length === 0 ? [{ kind: 'regrouped' }] : causes);
    },
    ofGone({ id }) {
      // What it was of is named in its id; the files themselves were recorded as a digest only.
      const subjects = id.split('/').slice(1);
      const own = files.filter(({ file }) => subjects.includes(stemOf(file)));
      const gone = own.filter(({ kind }) => kind === 'gone');
      return orElsewhere(gone.length > 0 ? gone : [...analysis, ...own]);
    },
  };
}

/** `data/sessions/a.csv` → `a`. */
function stemOf(path: string): string {
  return path.replace(/^.*\//, '').replace(/\.[^.]*$/, '');
}
