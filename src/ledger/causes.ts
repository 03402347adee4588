/** Why something moved: the recorded inputs against those of now. */
import type { Cause, Inputs, Published } from '../model/ledger.ts';
import { digestOf } from './digest.ts';
import { formerPath, type Rename } from './renames.ts';
import type { Statement } from './statements.ts';

type FileCause = Extract<Cause, { readonly file: string }>;

/** Every file that is not as recorded, by path; what was only renamed is neither gone nor new. */
function changedFiles(recorded: Inputs, now: Inputs, renames: readonly Rename[]): readonly FileCause[] {
  const former = new Map(Object.keys(now.checksums).map((path) => [path, formerPath(path, renames)]));
  const taken = new Set(former.values());
  const left = Object.keys(recorded.checksums).filter((path) => !taken.has(path));
  return [...former.keys(), ...left].sort().flatMap((file): readonly FileCause[] => {
    const [before, after] = [recorded.checksums[former.get(file) ?? file], now.checksums[file]];
    if (before === after) return [];
    return [{ kind: before === undefined ? 'new' : after === undefined ? 'gone' : 'changed', file, own: true }];
  });
}

/** Finds causes. Never empty: where no input changed, the code did. */
export function causeFinder(
  recorded: Inputs,
  now: Inputs,
  renames: readonly Rename[] = [],
): {
  ofMoved(now: Statement, before: Published): readonly Cause[];
  ofGone(before: Published): readonly Cause[];
} {
  const files = changedFiles(recorded, now, renames);
  const goneFiles = files.filter(({ kind }) => kind === 'gone');
  const newFiles = new Set(files.filter(({ kind }) => kind === 'new').map(({ file }) => file));
  const analysis: readonly Cause[] =
    recorded.analysis === now.analysis ? [] : [{ kind: 'analysis', from: recorded.analysis, to: now.analysis }];
  /** What is left to blame where nothing of a figure's own changed. */
  const elsewhere = (id: string): readonly Cause[] =>
    files.length > 0
      ? files.map((cause) => ({ ...cause, own: mayRestOnAnything(id) }))
      : [{ kind: 'code', analysis: now.analysis }];
  const orElsewhere = (id: string, causes: readonly Cause[]): readonly Cause[] =>
    causes.length > 0 ? causes : elsewhere(id);

  return {
    ofMoved({ id, sources }, before) {
      const own = files.filter(({ file }) => sources.includes(file));
      // The files that it had before, were none gone: then the recorded digest is theirs.
      const kept = sources.filter((file) => !newFiles.has(file)).map((file) => formerPath(file, renames));
      const regrouped = digestOf(kept) !== before.files;
      const gone = regrouped ? goneFiles : [];
      const renamed = renames
        .filter(({ to }) => sources.some((file) => file.startsWith(`${to}.`)))
        .map((rename): Cause => ({ kind: 'renamed', ...rename }));
      const causes = [...analysis, ...own, ...gone, ...renamed];
      return orElsewhere(id, causes.length === 0 && regrouped && files.length === 0 ? [{ kind: 'regrouped' }] : causes);
    },
    ofGone({ id }) {
      // What it was of is named in its id; the files themselves were recorded as a digest only.
      const subjects = id.split('/').slice(1);
      const own = files.filter(({ file }) => namesOf(file).some((name) => subjects.includes(name)));
      const gone = own.filter(({ kind }) => kind === 'gone');
      return orElsewhere(id, gone.length > 0 ? gone : [...analysis, ...own]);
    },
  };
}

/** A finding of one session may have been found by looking at the others. */
function mayRestOnAnything(id: string): boolean {
  return id.startsWith('finding/');
}

/** What stands for a file in ids: `data/sessions/a.csv` → `a`; `content/reports/r.mdx` → `r`, `report-r`. */
function namesOf(path: string): readonly string[] {
  const stem = path.replace(/^.*\//, '').replace(/\.[^.]*$/, '');
  const [, kind] = /(report|method)s\/[^/]+\.mdx$/.exec(path) ?? [];
  return kind === undefined ? [stem] : [stem, `${kind}-${stem}`];
}
