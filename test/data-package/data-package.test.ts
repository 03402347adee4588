/** The data package of a small bench, read and judged by programs that others wrote. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { parse } from 'csv-parse/sync';
import Ajv2020 from 'ajv/dist/2020.js';
import { Package } from 'datapackage';
import { unzipSync } from 'fflate';
import { ROCrate } from 'ro-crate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checksum } from '../../src/ingest/files-in-hand.ts';
import { tableOf } from '../../src/data-package/table.ts';
import { zipPackage } from '../../src/data-package/zip-package.ts';
import { copiedPaths } from '../../src/data-package/package-files.ts';
import type { Bench } from '../../src/model/bench.ts';
import { readRegister } from '../../src/register/packed-register.ts';
import type { Register } from '../../src/register/register.ts';
import { recomputeSessions } from '../../src/recompute/recompute-sessions.ts';
import { compareFigures } from '../../src/recompute/compare-figures.ts';
import { compileRegister } from '../../src/site/compile.ts';
import { VALID_FILES, writeBenchFolder, type BenchFolder } from '../support/bench-folder.ts';

const PAIR = {
  'data/sessions/b.md': VALID_FILES['data/sessions/a.md'].replace('audio-out: on', 'audio-out: off'),
  'data/sessions/b.csv': VALID_FILES['data/sessions/a.csv'].replace('00:31.181', '00:31.165'),
};

interface CsvwTable {
  readonly url: string;
  readonly tableSchema: {
    readonly columns: readonly { readonly name: string; readonly datatype: string; readonly required?: boolean }[];
    readonly primaryKey: readonly string[];
    readonly foreignKeys: readonly {
      readonly columnReference: string;
      readonly reference: { readonly resource: string; readonly columnReference: string };
    }[];
  };
}

/** Lexical forms of XML Schema 1.1, part 2, as far as they are used. */
const LEXICAL: Readonly<Record<string, RegExp>> = {
  string: /./,
  number: /^(?:-?\d+(?:\.\d+)?(?:e[+-]?\d+)?|-?INF)$/,
  integer: /^-?\d+$/,
  boolean: /^(?:true|false)$/,
  date: /^\d{4}-\d{2}-\d{2}$/,
};

let folder: BenchFolder;
let bench: Bench;
let register: Register;
let zip: Uint8Array;
let files: Readonly<Record<string, Uint8Array>>;
let unpacked: string;
const text = (path: string): string => new TextDecoder().decode(files[path]);

beforeAll(async () => {
  folder = writeBenchFolder(PAIR);
  bench = await folder.read();
  register = compileRegister(bench);
  zip = await zipPackage(folder.root, bench, register);
  files = unzipSync(zip);
  unpacked = mkdtempSync(join(tmpdir(), 'package-'));
  for (const [path, bytes] of Object.entries(files)) {
    mkdirSync(dirname(join(unpacked, path)), { recursive: true });
    writeFileSync(join(unpacked, path), bytes);
  }
});
afterAll(() => {
  folder[Symbol.dispose]();
  rmSync(unpacked, { recursive: true });
});

describe('the archive', () => {
  it('holds what was computed, and what authors wrote byte for byte', () => {
    expect(Object.keys(files)).toEqual(
      expect.arrayContaining([
        'ro-crate-metadata.json',
        'datapackage.json',
        'csv-metadata.json',
        'figures.json',
        'figures.schema.json',
        'figures.csv',
        'readings.csv',
        'sessions.csv',
        'content/reports/first.mdx',
        'content/site.md',
      ]),
    );
    const written: Readonly<Record<string, string>> = { ...VALID_FILES, ...PAIR };
    expect(copiedPaths(bench).length).toBeGreaterThan(12);
    for (const path of copiedPaths(bench)) expect(text(path), path).toBe(written[path]);
  });

  it('is the same bytes whatever the time and zone', async () => {
    const zone = process.env['TZ'];
    process.env['TZ'] = 'Pacific/Apia';
    try {
      expect(checksum(await zipPackage(folder.root, bench, register))).toBe(checksum(zip));
    } finally {
      process.env['TZ'] = zone;
    }
  });

  it('is enough to recompute every figure of a session', () => {
    const data = new Map(Object.entries(files).filter(([path]) => path.startsWith('data/')));
    const figures = recomputeSessions(data).sessions.flatMap((session) => session.figures);
    const published = readRegister(text('figures.json')).figures;
    expect(figures.length).toBe(24);
    expect(compareFigures(published, figures).flatMap(({ differing }) => differing)).toEqual([]);
  });
});

describe('figures.json', () => {
  const validator = () =>
    new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true }).compile(
      JSON.parse(text('figures.schema.json')),
    );

  it('is what its schema says, which it names', () => {
    const stated = JSON.parse(text('figures.json')) as Record<string, unknown>;
    expect(stated['$schema']).toBe('figures.schema.json');
    const validate = validator();
    validate(stated);
    expect(validate.errors).toBeNull();
  });

  it('would be told from one that is not', () => {
    const stated = JSON.parse(text('figures.json')) as { figures: Record<string, unknown>[] };
    const [first = {}] = stated.figures;
    for (const wrong of [
      { ...first, value: '307' },
      { ...first, valeu: 307 },
      { ...first, text: undefined },
    ])
      expect(validator()(JSON.parse(JSON.stringify({ ...stated, figures: [wrong] })))).toBe(false);
  });
});

describe('the tables', () => {
  it('are a valid Frictionless data package, cell by cell, with every reference kept', async () => {
    const data = await Package.load(join(unpacked, 'datapackage.json'), { strict: true });
    expect(data.errors).toEqual([]);
    expect(data.resourceNames).toEqual(['figures', 'readings', 'sessions']);
    const [figures, readings, sessions] = await Promise.all(
      data.resources.map((resource) => resource.read({ keyed: true, relations: resource.name !== 'sessions' })),
    );
    expect(figures?.length).toBe(register.figures.length);
    expect(readings?.length).toBe(6);
    expect(sessions?.map((session: Record<string, unknown>) => session['body'])).toEqual(['vennick', 'vennick']);
    for (const [index, row] of (figures ?? []).entries()) {
      const { id, value, interval } = register.figures[index]!;
      expect([row['id'], row['value'], row['interval_low']]).toEqual([id, value, interval?.low ?? null]);
    }
  });

  it('are what their CSVW metadata state: columns, types, keys and what they refer to', () => {
    const { tables } = JSON.parse(text('csv-metadata.json')) as { readonly tables: readonly CsvwTable[] };
    const rowsOf = new Map(
      tables.map(({ url }) => [url, parse(text(url), { columns: true }) as Record<string, string>[]]),
    );
    expect([...rowsOf.keys()]).toEqual(['figures.csv', 'readings.csv', 'sessions.csv']);
    for (const { url, tableSchema } of tables) {
      const rows = rowsOf.get(url)!;
      expect(rows.length).toBeGreaterThan(1);
      expect(text(url).split('\n')[0]).toBe(tableSchema.columns.map(({ name }) => name).join(','));
      const keys = rows.map((row) => tableSchema.primaryKey.map((key) => row[key]).join('|'));
      expect(new Set(keys).size, url).toBe(rows.length);
      for (const { name, datatype, required } of tableSchema.columns)
        for (const row of rows)
          if (row[name] === '') expect(required, `${url} ${name}`).toBeUndefined();
          else expect(row[name], `${url} ${name}`).toMatch(LEXICAL[datatype]!);
      for (const { columnReference, reference } of tableSchema.foreignKeys) {
        const named = new Set(rowsOf.get(reference.resource)!.map((row) => row[reference.columnReference]));
        const references = rows.map((row) => row[columnReference]).filter((value) => value !== '');
        expect(references.filter((value) => !named.has(value))).toEqual([]);
      }
    }
  });
});

it('ro-crate-metadata.json names every file, with its size and checksum', () => {
  const crate = new ROCrate(JSON.parse(text('ro-crate-metadata.json')), { array: true, link: true });
  expect(crate.root?.['name']).toEqual(['Test bench']);
  const parts = (crate.root?.['hasPart'] ?? []) as Record<string, unknown>[];
  expect(parts.map((part) => part['@id']).sort()).toEqual(
    Object.keys(files)
      .filter((path) => path !== 'ro-crate-metadata.json')
      .sort(),
  );
  for (const part of parts) {
    const bytes = files[String(part['@id'])]!;
    expect([part['contentSize'], part['sha256']]).toEqual([[String(bytes.length)], [checksum(bytes)]]);
  }
});

it('cells are quoted where they have to be, and endless numbers have a word', () => {
  const column = {
    name: 'a',
    title: 'A',
    description: '',
    datatype: 'string',
    of: (cell: string | number | undefined) => cell,
  } as const;
  const { csv } = tableOf(
    { file: 'a.csv', title: '', description: '', primaryKey: ['a'], references: [] },
    [column],
    ['plain', 'with, comma', 'with "quotes"', 'two\nlines', 0.1 + 0.2, Infinity, undefined],
  );
  expect(csv).toBe('a\nplain\n"with, comma"\n"with ""quotes"""\n"two\nlines"\n0.30000000000000004\nINF\n\n');
});
