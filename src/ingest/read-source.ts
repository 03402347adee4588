import { hash } from 'node:crypto';
import { lstat, readFile, realpath, stat } from 'node:fs/promises';
import { sep } from 'node:path';
import type { SourceFile } from '../model/bench.ts';
import { checkEncoding } from './encoding.ts';
import { lineOfMergeMark } from './merge-marks.ts';
import type { ProblemList } from './problem-list.ts';
import { reportOn, type Source } from './source.ts';

const MIB = 2 ** 20;
const LIMIT_MIB = 64;

/** A folder that files may be read from, and the names under which they are published. */
export interface Area {
  /** Real path: no symbolic link in it. */
  readonly realFolder: string;
  /** As the author knows it: `data`. */
  readonly name: string;
}

/** A file of any kind, whole. */
export interface FileBytes {
  readonly file: SourceFile;
  readonly bytes: Buffer<ArrayBuffer>;
}

/**
 * Reads one file of text whole. Undefined, with one problem reported, also when it is not UTF-8 text, is empty or holds
 * the marks of an unfinished merge; the ledger’s tables follow from its entries, and look for such marks themselves.
 */
export async function readSource(
  path: string,
  published: string,
  area: Area,
  problems: ProblemList,
): Promise<Source | undefined> {
  const report = reportOn(published, problems);
  const read = await readBytes(path, published, area, problems);
  if (read === undefined) return undefined;
  const bytes = checkEncoding(read.bytes, report);
  if (bytes === undefined) return undefined;
  const line = published.startsWith('content/ledger/') ? undefined : lineOfMergeMark(new TextDecoder().decode(bytes));
  if (line !== undefined) {
    report({ code: 'merge-unfinished', line });
    return undefined;
  }
  if (bytes.length > 0) return { file: read.file, bytes, report };
  report({ code: 'empty-file' });
  return undefined;
}

/**
 * Reads one file whole: bytes, size and checksum. Undefined, with one problem reported, when it lies outside
 * its area, is no ordinary file or is too large. Where it lies and how large it is are settled before a byte of it is
 * read.
 */
export async function readBytes(
  path: string,
  published: string,
  area: Area,
  problems: ProblemList,
): Promise<FileBytes | undefined> {
  const report = reportOn(published, problems);
  try {
    const real = await realpath(path);
    if (!isInside(real, area.realFolder)) {
      report({ code: 'link-leads-out', expected: `${area.name}/` });
      return undefined;
    }
    const status = await stat(real);
    if (!status.isFile()) {
      report({ code: 'not-a-file' });
      return undefined;
    }
    if (status.size > LIMIT_MIB * MIB) {
      report({ code: 'file-too-large', found: `${(status.size / MIB).toFixed(1)} MiB`, expected: `${LIMIT_MIB} MiB` });
      return undefined;
    }
    const bytes = await readFile(real);
    const sha256 = hash('sha256', bytes);
    return { file: { path: published, sha256, bytes: bytes.length }, bytes };
  } catch (error) {
    const code = errorCode(error);
    report(
      code === 'ENOENT' && !(await isListed(path))
        ? { code: 'missing-file' }
        : { code: 'unreadable-file', found: code },
    );
    return undefined;
  }
}

/**
 * Of a file of any kind, a workbook for one; undefined where it is not there, lies outside its area or is too large.
 */
export async function checksumOf(path: string, published: string, area: Area): Promise<SourceFile | undefined> {
  try {
    const real = await realpath(path);
    const status = await stat(real);
    if (!isInside(real, area.realFolder) || !status.isFile() || status.size > LIMIT_MIB * MIB) return undefined;
    const bytes = await readFile(real);
    return { path: published, sha256: hash('sha256', bytes), bytes: bytes.length };
  } catch (error) {
    errorCode(error);
    return undefined;
  }
}

/** Whether a folder lists it: true for a symbolic link whose target is gone, too. */
export async function isListed(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}

export function isInside(realFile: string, realFolder: string): boolean {
  return realFile === realFolder || realFile.startsWith(realFolder.endsWith(sep) ? realFolder : realFolder + sep);
}

/** `ENOENT`, `EACCES`, …; an error that is not the file system's is a fault of ours and goes on up. */
export function errorCode(error: unknown): string {
  if (error instanceof Error && 'code' in error && typeof error.code === 'string') return error.code;
  throw error;
}
