import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { compareOutputs, parseOutput } from './compare-outputs.ts';

const here = new URL('.', import.meta.url);

it('finds a changed number, a missing name and a name that is new', () => {
  const got = compareOutputs('a 1 2\nb 3\n', 'a 1 2.00001\nc 4\n');
  expect(got.numbers).toBe(2);
  expect(got.differences).toEqual([
    'a[1]: 2 committed, 2.00001 now',
    'b: 1 numbers committed, none now',
    'c: no numbers committed, 1 now',
  ]);
});

it('lets rounding pass: nine digits, and remainders of zero', () => {
  expect(compareOutputs('a 1 0\n', 'a 1.0000000001 1e-15\n').differences).toEqual([]);
});

it.each(['a', 'a one', 'a NA', 'a 1\na 2', 'a 1  2 x'])('refuses output like %j', (text) => {
  expect(() => parseOutput(text)).toThrow('a line of reference output has a new name and finite numbers');
});

it('every R script has its committed output, and every output its script', () => {
  const names = (extension: string, folder: string): string[] =>
    readdirSync(new URL(folder, here))
      .filter((name) => name.endsWith(extension))
      .map((name) => name.slice(0, -extension.length));
  const scripts = names('.R', '.')
    .filter((name) => name !== 'emit')
    .sort();
  expect(scripts.length).toBeGreaterThan(5);
  expect(
    names('.txt', 'outputs')
      .filter((name) => name !== 'r-version')
      .sort(),
  ).toEqual(scripts);
  expect(readFileSync(new URL('outputs/r-version.txt', here), 'utf8')).toMatch(/^R version \d+\.\d+\.\d+/);
});
