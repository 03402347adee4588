/** CSV on the Web: what the columns of the tables mean (W3C, Metadata Vocabulary for Tabular Data, 2015). */
import type { Table } from './table.ts';

/** Where readers of CSVW look for it by themselves. */
export const CSVW_FILE = 'csv-metadata.json';

export function csvwMetadata(tables: readonly Table[], title: string): string {
  return `${JSON.stringify(
    {
      '@context': ['http://www.w3.org/ns/csvw', { '@language': 'en' }],
      'dc:title': title,
      tables: tables.map(({ file, title: name, description, columns, primaryKey, references }) => ({
        url: file,
        'dc:title': name,
        'dc:description': description,
        tableSchema: {
          columns: columns.map((column) => ({
            name: column.name,
            titles: column.name,
            'dc:title': column.title,
            'dc:description': column.description,
            datatype: column.datatype,
            ...(column.required === true ? { required: true } : {}),
          })),
          primaryKey,
          foreignKeys: references.map(({ column, file: resource, to }) => ({
            columnReference: column,
            reference: { resource, columnReference: to },
          })),
        },
      })),
    },
    null,
    2,
  )}\n`;
}
