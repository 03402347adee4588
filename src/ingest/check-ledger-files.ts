/** That what is about to be written into the ledger can be read back: what a record writes, every build reads. */
import type { ChainedEntry } from '../model/ledger.ts';
import { checkEncoding } from './encoding.ts';
import { checkSchema } from './check-schema.ts';
import { parseChanges, parseFigures } from './ledger-rows.ts';
import { ProblemList } from './problem-list.ts';
import { parseInputs } from './read-ledger.ts';
import { ledgerEntrySchema } from './schemas/ledger-entry.ts';
import { reportOn, type Source } from './source.ts';
import { parseYaml } from './yaml.ts';

/** Throws a ProblemsError with what a build would say of these files. */
export function checkLedgerFiles(files: readonly { readonly path: string; readonly text: string }[]): void {
  const problems = new ProblemList();
  for (const { path, text } of files) {
    const report = reportOn(path, problems);
    const bytes = checkEncoding(Buffer.from(text), report);
    if (bytes === undefined) continue;
    const source: Source = { file: { path, sha256: '', bytes: bytes.length }, bytes, report };
    if (path.endsWith('.yaml')) parseEntry(source);
    else if (path.endsWith('/figures.csv')) parseFigures(source);
    else if (path.endsWith('/inputs.csv')) parseInputs(source);
    else parseChanges(source);
  }
  problems.throwIfAny();
}

function parseEntry({ bytes, report }: Source): Omit<ChainedEntry, 'id' | 'path' | 'changes'> | undefined {
  const yaml = parseYaml(new TextDecoder().decode(bytes), report);
  return yaml && checkSchema(yaml, ledgerEntrySchema, report);
}
