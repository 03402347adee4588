import type { DisplayPair, Session, SourceFile } from '../model/bench.ts';
import type { Folder } from './folder.ts';
import type { ProblemList } from './problem-list.ts';
import { WORKBOOK_NAME, WORKBOOKS } from './workbook-names.ts';

/**
 * The workbooks that sessions say they were imported from, each once; what is not there, or is another, is reported.
 */
export async function checkWorkbooks(
  data: Folder,
  sessions: readonly Pick<Session | DisplayPair, 'importedFrom' | 'file'>[],
  problems: ProblemList,
): Promise<readonly SourceFile[]> {
  const found = new Map<string, SourceFile>();
  for (const { importedFrom, file } of sessions) {
    if (importedFrom === undefined) continue;
    const { path, sha256 } = importedFrom;
    const name = path.slice(`${WORKBOOKS}/`.length);
    const workbook = WORKBOOK_NAME.test(name)
      ? (found.get(path) ?? (await data.checksum(`sources/${name}`)))
      : undefined;
    const where = { file: file.path, key: 'imported-from' };
    if (workbook === undefined) problems.add({ code: 'missing-workbook', ...where, found: path });
    else if (workbook.sha256 !== sha256) problems.add({ code: 'changed-workbook', ...where, found: path });
    else found.set(path, workbook);
  }
  return [...found.values()].sort((a, b) => (a.path < b.path ? -1 : 1));
}
