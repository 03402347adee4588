/** What no file of the project may hold. */
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PROJECT, projectFiles } from '../support/project-files.ts';

const files = projectFiles();
const texts = files
  .filter((path) => !/\.(?:woff2|png)$/.test(path))
  .map((path) => [path, readFileSync(join(PROJECT, path), 'utf8')] as const);

/** Put together from pieces, so that this file does not hold what it looks for. */
const word = (...pieces: readonly string[]): RegExp => new RegExp(pieces.join(''), 'i');
const folder = (...pieces: readonly string[]): RegExp => new RegExp(`(?<![\\w.\\]})-])/${pieces.join('')}(?![\\w-])`);

const FORBIDDEN: readonly (readonly [what: string, pattern: RegExp])[] = [
  ['a word about how it was written', word('seed', '[ -]?', 'document')],
  ['a word about how it was written', word('trans', 'cript')],
  ['a folder of one machine', folder('wo', 'rk')],
  ['a folder of one machine', folder('ro', 'ot')],
  ['a folder of one machine', folder('t', 'mp')],
  ['a folder of one machine', folder('ho', 'me')],
  ['a package registry', word('regis', 'try\\.', '(?:npmjs|yarnpkg)')],
];

describe('no file of the project holds', () => {
  it('anything unread: there are files to look at', () => {
    expect(texts.length).toBeGreaterThan(250);
    expect(files).toEqual(
      expect.arrayContaining([
        'package.json',
        'package-lock.json',
        '.npmrc',
        'README.md',
        'src/model/bench.ts',
        'data/settings.yaml',
      ]),
    );
  });

  it.each(FORBIDDEN)('%s (%s)', (_what, pattern) => {
    const hits = texts.flatMap(([path, text]) =>
      text
        .split('\n')
        .flatMap((line, index) => (pattern.test(line) ? [`${path}:${index + 1}: ${line.trim().slice(0, 120)}`] : [])),
    );
    expect(hits).toEqual([]);
  });

  it.each([
    [['see /wo', 'rk/main'], true],
    [['cd /t', 'mp'], true],
    [['`/ro', 'ot`'], true],
    [['from "/ho', 'me/me/x"'], true],
    [['/rigs/wo', 'rkshop/'], false],
    [['/wo', 'rkshop'], false],
    [['${ro', 'ot}/t', 'mp/x'], false],
    [['src/pages/ho', 'me'], false],
  ] as const)('the folder of one machine, told from other paths: %s', (pieces, expected) => {
    const text = pieces.join('');
    expect(
      FORBIDDEN.filter(([what]) => what === 'a folder of one machine').some(([, pattern]) => pattern.test(text)),
    ).toBe(expected);
  });
});

describe('the lockfile', () => {
  interface Locked {
    readonly packages: Readonly<
      Record<string, { readonly version?: string; readonly resolved?: string; readonly integrity?: string }>
    >;
  }
  const text = readFileSync(join(PROJECT, 'package-lock.json'), 'utf8');
  const installed = Object.entries((JSON.parse(text) as Locked).packages).filter(([path]) => path !== '');

  it('records no address of any registry', () => {
    expect(installed.length).toBeGreaterThan(300);
    expect(installed.filter(([, { resolved }]) => resolved !== undefined).map(([path]) => path)).toEqual([]);
    expect(readFileSync(join(PROJECT, '.npmrc'), 'utf8')).toMatch(/^omit-lockfile-registry-resolved=true$/m);
  });

  it('pins every package by its content', () => {
    expect(
      installed
        .filter(([, { integrity, version }]) => !integrity?.startsWith('sha512-') || !version)
        .map(([path]) => path),
    ).toEqual([]);
  });
});

it('package.json pins every direct dependency to one version', () => {
  const { dependencies, devDependencies, optionalDependencies } = JSON.parse(
    readFileSync(join(PROJECT, 'package.json'), 'utf8'),
  ) as Record<string, Record<string, string>>;
  const versions = Object.entries({ ...dependencies, ...devDependencies, ...optionalDependencies });
  expect(versions.length).toBeGreaterThan(25);
  expect(versions.filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
});

it('.ci/run can be executed', () => {
  expect(statSync(join(PROJECT, '.ci/run')).mode & 0o111).toBe(0o111);
});
