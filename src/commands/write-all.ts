/**
 * Files of a publication, written all or none. They are written into a folder aside first, then a list says
 * where each belongs, and then each is moved there:
 *
 *     .writing/stage/0, 1, …     the files, whole
 *     .writing/list.json         where they belong; from now on they count as written
 *
 * A command that is killed before the list is there has written nothing; after it, the next command moves the
 * rest. Meanwhile no other command writes.
 */
import { existsSync } from 'node:fs';
import { lstat, mkdir, readFile, realpath, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { errorCode, isInside } from '../ingest/read-source.ts';
import { problemsError } from '../model/problem-text.ts';
import type { Problem, ProblemsError } from '../model/problem.ts';
import { withLock } from './lock.ts';

const WORKSHOP = '.writing';
/** Of what commands write, and nothing else: a list that came with a repository cannot write elsewhere. */
const PATH = /^(?:README\.md|\.gitignore|\.gitattributes|(?:data|content)(?:\/[a-z0-9][a-z0-9-]*)+\.[a-z]+)$/;
const LIST = `${WORKSHOP}/list.json`;

export interface NewFile {
  /** From the root of the publication, with forward slashes. */
  readonly path: string;
  readonly text: string | Uint8Array;
  /** Whether it takes the place of what is there; else that is a problem, and nothing is written. */
  readonly replaces?: boolean;
  /** Whether what is there goes, and nothing takes its place. */
  readonly removes?: boolean;
}

/** A file that is listed as written. */
type Listed =
  | string
  | { readonly path: string; readonly replaces: true }
  | { readonly path: string; readonly removes: true };

/** Lets a function read and then write, with no other command writing in between. */
export async function whileWriting<T>(
  root: string,
  act: (write: (files: readonly NewFile[]) => Promise<void>, finished: readonly string[]) => Promise<T>,
): Promise<T> {
  await mkdir(join(root, WORKSHOP), { recursive: true });
  return withLock(join(root, WORKSHOP, 'files'), 'data/, content/', async (lock) => {
    const finished = await moveListed(root);
    return act(async (files) => {
      await stage(root, files);
      lock.assertHeld();
      await list(root, files);
      await moveListed(root);
    }, finished);
  });
}

/** Moves what a killed command had listed; says which files that were. Writes nothing where there was none. */
export async function finishWriting(root: string): Promise<readonly string[]> {
  return existsSync(join(root, LIST)) ? await whileWriting(root, async (_write, finished) => finished) : [];
}

/** Throws a ProblemsError where a file is there already that is not to be replaced. */
async function stage(root: string, files: readonly NewFile[]): Promise<void> {
  const there: Problem[] = [];
  for (const { path, replaces, removes } of files)
    if (replaces !== true && removes !== true && (await isThere(join(root, path))))
      there.push({ code: 'there-already', file: path });
  if (there.length > 0) throw problemsError(there);
  await rm(join(root, WORKSHOP, 'stage'), { recursive: true, force: true });
  await mkdir(join(root, WORKSHOP, 'stage'));
  for (const [index, { text }] of files.entries())
    await writeFileAtomic(stagedAt(root, index), typeof text === 'string' ? text : Buffer.from(text));
}

async function list(root: string, files: readonly NewFile[]): Promise<void> {
  await writeFileAtomic(
    join(root, LIST),
    `${JSON.stringify(
      files.map(({ path, replaces, removes }): Listed => {
        if (removes === true) return { path, removes };
        return replaces === true ? { path, replaces } : path;
      }),
      undefined,
      2,
    )}\n`,
  );
}

/** What is moved already is no longer aside, so that it does not matter how often this begins. */
async function moveListed(root: string): Promise<readonly string[]> {
  const listed = await readList(root);
  for (const [index, file] of listed.entries()) {
    const path = pathOf(file);
    const [from, to] = [stagedAt(root, index), join(root, path)];
    if (!existsSync(from)) continue;
    await mkdir(dirname(to), { recursive: true });
    if (!isInside(await realpath(dirname(to)), await realpath(root))) throw notAList();
    // written by somebody in the meantime: theirs stays
    if (typeof file !== 'string' && 'removes' in file) {
      await rm(to, { force: true });
      await rm(from);
    } else if (typeof file !== 'string' || !(await isThere(to))) await move(from, to);
  }
  await rm(join(root, LIST), { force: true });
  await rm(join(root, WORKSHOP, 'stage'), { recursive: true, force: true });
  return listed.map(pathOf);
}

async function readList(root: string): Promise<readonly Listed[]> {
  try {
    if (!(await lstat(join(root, LIST))).isFile()) throw notAList();
    const listed: unknown = JSON.parse(await readFile(join(root, LIST), 'utf8'));
    if (Array.isArray(listed) && listed.every(isListed)) return listed;
  } catch (error) {
    if (error instanceof SyntaxError) throw notAList();
    if (errorCode(error) === 'ENOENT') return [];
    throw error;
  }
  throw notAList();
}

function isListed(file: unknown): file is Listed {
  if (typeof file === 'string') return PATH.test(file);
  if (typeof file !== 'object' || file === null || !('path' in file)) return false;
  const is = 'replaces' in file ? file.replaces : 'removes' in file ? file.removes : false;
  return typeof file.path === 'string' && PATH.test(file.path) && is === true;
}

function pathOf(file: Listed): string {
  return typeof file === 'string' ? file : file.path;
}

async function move(from: string, to: string): Promise<void> {
  try {
    await rename(from, to);
  } catch (error) {
    // `data/` on a disk of its own: whole all the same, under its name
    if (errorCode(error) !== 'EXDEV') throw error;
    await writeFileAtomic(to, await readFile(from));
    await rm(from);
  }
}

/** A link counts, even one that leads nowhere. */
async function isThere(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    (error: unknown) => {
      if (errorCode(error) === 'ENOENT') return false;
      throw error;
    },
  );
}

function stagedAt(root: string, index: number): string {
  return join(root, WORKSHOP, 'stage', String(index));
}

function notAList(): ProblemsError {
  return problemsError([{ code: 'not-a-list', file: LIST }]);
}
