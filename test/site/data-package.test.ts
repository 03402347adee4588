/** The data package of the demonstration, as it is published, judged by programs that others wrote. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Ajv2020 from 'ajv/dist/2020.js';
import { Package } from 'datapackage';
import { unzipSync } from 'fflate';
import { describe, expect, inject, it } from 'vitest';
import { openCopy } from '../support/project-copy.ts';

const { dist, root } = openCopy(inject('builtProject'));
const json = (path: string): unknown => JSON.parse(readFileSync(join(dist, path), 'utf8'));

describe('the published register', () => {
  it('is what its schema says', () => {
    const validate = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true }).compile(
      json('figures.schema.json') as object,
    );
    validate(json('figures.json'));
    expect(validate.errors).toBeNull();
  });
});

describe('the published tables', () => {
  it('are a valid Frictionless data package, with every reference kept', async () => {
    const data = await Package.load(join(dist, 'datapackage.json'), { strict: true });
    expect(data.errors).toEqual([]);
    const rows = await Promise.all(
      data.resources.map((one) => one.read({ keyed: true, relations: one.name !== 'sessions' })),
    );
    const { figures } = json('figures.json') as { readonly figures: readonly unknown[] };
    expect(rows[0]?.length).toBe(figures.length);
    expect(Math.min(...rows.map(({ length }) => length))).toBeGreaterThan(40);
  });
});

it('the archive holds what the site holds, and the files of its authors, byte for byte', () => {
  const files = Object.entries(unzipSync(readFileSync(join(dist, 'data-package.zip'))));
  const written = files.filter(([path]) => /^(?:data|content)\//.test(path));
  expect(written.length).toBeGreaterThan(100);
  expect(files.length - written.length).toBe(8);
  for (const [path, bytes] of files.filter(([name]) => name !== 'ro-crate-metadata.json')) {
    const from = written.some(([name]) => name === path) ? root : dist;
    expect(Buffer.compare(bytes, readFileSync(join(from, path))), path).toBe(0);
  }
});
