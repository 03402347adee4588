/**
 * The data package: everything that the publication was made of and everything that was computed, in one set of files.
 */
import type { Bench } from '../model/bench.ts';
import { publishedFiles } from '../register/published-files.ts';
import { renderPacked } from '../register/packed-register.ts';
import { REGISTER_SCHEMA, SCHEMA_FILE } from '../register/register-schema.ts';
import type { Register } from '../register/register.ts';
import { csvwMetadata, CSVW_FILE } from './csvw.ts';
import { figuresTable } from './figures-table.ts';
import { datapackage, DATAPACKAGE_FILE } from './frictionless.ts';
import { packageFacts } from './package-facts.ts';
import { readingsTable } from './readings-table.ts';
import { sessionsTable } from './sessions-table.ts';
import type { Table } from './table.ts';

export function tablesOf(bench: Bench, { figures }: Register): readonly Table[] {
  return [figuresTable(figures), readingsTable(bench), sessionsTable(bench)];
}

/** What stands beside the register on the site and in the package, by name. */
function describedFiles(bench: Bench, register: Register): ReadonlyMap<string, string> {
  const tables = tablesOf(bench, register);
  const facts = packageFacts(bench, register.analysis);
  return new Map([
    ...tables.map(({ file, csv }) => [file, csv] as const),
    [CSVW_FILE, csvwMetadata(tables, facts.title)],
    [DATAPACKAGE_FILE, datapackage(tables, facts)],
    [SCHEMA_FILE, `${JSON.stringify(REGISTER_SCHEMA, null, 2)}\n`],
  ]);
}

/** Everything in the package that is computed and not copied. */
export function computedFiles(bench: Bench, register: Register): ReadonlyMap<string, string> {
  return new Map([...describedFiles(bench, register), ['figures.json', renderPacked(register)]]);
}

/** What its authors wrote, by path from the publication's root: raw files, write-ups, ledger. */
export function copiedPaths(bench: Bench): readonly string[] {
  const { site, methods, reports, ledger } = bench;
  const folder = ledger?.path.replace(/[^/]*$/, '') ?? '';
  return [
    ...publishedFiles(bench),
    site.file,
    ...[...methods, ...reports].map(({ file }) => file),
    ...(ledger === undefined
      ? []
      : [
          { path: ledger.path },
          { path: `${folder}inputs.csv` },
          ...ledger.told.map(({ id }) => ({ path: `${folder}entries/${id}.yaml` })),
          ...ledger.chain.flatMap(({ id }) =>
            ['yaml', 'csv'].map((end) => ({ path: `${folder}entries/${id}.${end}` })),
          ),
        ]),
  ]
    .map(({ path }) => path)
    .sort();
}
