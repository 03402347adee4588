/** Frictionless Data: the package and its tables (Data Package and Table Schema, version 1). */
import type { Table } from './table.ts';

export const DATAPACKAGE_FILE = 'datapackage.json';

/** What a package says of itself besides its tables. */
export interface PackageFacts {
  /** Lower-case letters, digits and hyphens. */
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly publisher: string;
  /** Of the analysis. */
  readonly version: string;
}

export function datapackage(tables: readonly Table[], { publisher, ...facts }: PackageFacts): string {
  return `${JSON.stringify(
    {
      profile: 'tabular-data-package',
      ...facts,
      contributors: [{ title: publisher, role: 'publisher' }],
      resources: tables.map((table) => ({
        profile: 'tabular-data-resource',
        name: table.file.replace(/\.csv$/, ''),
        path: table.file,
        title: table.title,
        description: table.description,
        format: 'csv',
        mediatype: 'text/csv',
        encoding: 'utf-8',
        bytes: new TextEncoder().encode(table.csv).length,
        schema: tableSchema(table),
      })),
    },
    null,
    2,
  )}\n`;
}

function tableSchema({ columns, primaryKey, references }: Table) {
  return {
    fields: columns.map(({ name, title, description, datatype, required }) => ({
      name,
      title,
      description,
      type: datatype,
      ...(required === true ? { constraints: { required: true } } : {}),
    })),
    primaryKey,
    ...(references.length === 0
      ? {}
      : {
          foreignKeys: references.map(({ column, file, to }) => ({
            fields: column,
            reference: { resource: file.replace(/\.csv$/, ''), fields: to },
          })),
        }),
    missingValues: [''],
  };
}
