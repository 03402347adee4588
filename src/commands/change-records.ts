/** Changes of several files of a publication at once: tried on a copy as a build would read it, then made, all or none. */
import { cp, mkdtemp, mkdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Changes } from '../rename/rename-record.ts';
import { RECORD_KINDS, type RecordKind } from '../rename/record-kinds.ts';
import type { Bench } from '../model/bench.ts';
import { compileRemembering } from 'lagfolio/site';
import { foldersOf } from '../site/publication.ts';
import { CallError } from './run.ts';
import { whileWriting } from './write-all.ts';

/** Throws a ProblemsError with everything that a build would refuse afterwards. */
export async function tryChanges(root: string, changes: Changes): Promise<void> {
  const copy = await mkdtemp(join(tmpdir(), 'tried-'));
  try {
    for (const top of ['data', 'content']) await cp(join(root, top), join(copy, top), { recursive: true });
    for (const [path, text] of changes) {
      await mkdir(dirname(join(copy, path)), { recursive: true });
      await (text === undefined ? rm(join(copy, path), { force: true }) : writeFile(join(copy, path), text));
    }
    await compileRemembering(foldersOf(copy));
  } finally {
    await rm(copy, { recursive: true, force: true });
  }
}

/** Makes them, or says that nothing was changed. */
export async function makeChanges(
  root: string,
  changes: Changes,
  existing: ReadonlySet<string>,
  dry: boolean | undefined,
): Promise<string> {
  const list = [...changes].map(([path, text]) =>
    text === undefined ? `  ${path}: removed` : `  ${path}: ${existing.has(path) ? 'changed' : 'new'}`,
  );
  if (dry === true) return `Nothing was changed, as --dry says. Without it:\n${list.join('\n')}`;
  await whileWriting(root, (write) =>
    write(
      [...changes].map(([path, text]) =>
        text === undefined
          ? { path, text: '', removes: true }
          : { path, text, ...(existing.has(path) ? { replaces: true } : {}) },
      ),
    ),
  );
  return list.join('\n');
}

export function kindOf(word: string | undefined, usage: string): RecordKind {
  const kinds = Object.keys(RECORD_KINDS) as RecordKind[];
  const kind = kinds.find((each) => each === word);
  if (kind === undefined) throw new CallError(`Say first of which kind it is: ${kinds.join(', ')}.\n\n${usage}`);
  return kind;
}

/** All that there are of a kind. */
export function recordsOf(bench: Bench, kind: RecordKind): readonly { readonly id: string }[] {
  if (kind === 'session') return [...bench.sessions, ...bench.planned];
  const reports = [...bench.reports, ...(bench.drafts ?? []).map((id) => ({ id }))];
  return { body: bench.bodies, rig: bench.rigs, report: reports }[kind];
}
