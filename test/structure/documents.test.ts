/** That README.md, DEVELOPERS.md and the documentation name files, commands and options that exist. */
import { existsSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { DOCUMENTATION } from '../../src/register/paths.ts';
import { describe, expect, it } from 'vitest';
import { PROJECT, projectFiles } from '../support/project-files.ts';

const read = (path: string): string => readFileSync(join(PROJECT, path), 'utf8');
const PAGES = projectFiles('src/documentation');
const DOCUMENTS = ['README.md', 'DEVELOPERS.md', ...PAGES];
/** Its paths are those of the publication that it is written into. */
const BEGUN = 'src/begun/README.md';
const lines = (JSON.parse(read('package.json')) as { scripts: Record<string, string> }).scripts;
const scripts = Object.keys(lines);
const tops = new Set(projectFiles().map((path) => path.split('/')[0] ?? ''));

/** Words of a path that stand for any name: `ID`, `NAME.mdx`, `<id>`, `*`, `…`. */
const STANDS_FOR_ANY = /^(?:[A-Z]+(?:\.\w+)?|.*[<*…{].*)$/;
/** Made by a build, so there only after one. */
const BUILT = /^(?:dist|node_modules|\.astro)\b/;

/** Paths from the root that a document names: in backticks, in listings, and as targets of links. */
function pathsNamed(document: string): readonly string[] {
  const text = read(document);
  const code = [...text.matchAll(/`([^`\n]+)`/g), ...text.matchAll(/```[^\n]*\n([\s\S]*?)```/g)].flatMap(
    ([, inside = '']) => inside.split(/[\s,;:()"'=]+/),
  );
  const links = [...text.matchAll(/\]\(([^)\s]+)\)/g)]
    .map(([, target = '']) => target.replace(/#.*$/, ''))
    .filter((target) => target !== '' && !/^[a-z]+:|^\//.test(target))
    .map((target) => posix.join(posix.dirname(document), target));
  return [...new Set([...code.filter((word) => tops.has(word.split('/')[0] ?? '')), ...links])].filter(
    (path) => !BUILT.test(path),
  );
}

/** Commands that a document names, each with the options that follow on its line. */
function commandsNamed(document: string): readonly { readonly name: string; readonly options: readonly string[] }[] {
  return [...read(document).matchAll(/\bnpm (?:run )?(?:(?:--silent|-s) )?([\w:-]+)((?: -- [^`\n|]*)?)/g)].map(
    ([, name = '', rest = '']) => ({ name, options: rest.match(/--[a-z][a-z-]*/g) ?? [] }),
  );
}

/** A path up to the first word that stands for any name. */
function known(path: string): string {
  const words = path.split('/');
  const any = words.findIndex((word) => !tops.has(word) && STANDS_FOR_ANY.test(word));
  return any < 0 ? path : words.slice(0, any).join('/');
}

it('they are there to be read', () => {
  expect(DOCUMENTS.flatMap(pathsNamed).length).toBeGreaterThan(100);
  expect(DOCUMENTS.flatMap(commandsNamed).length).toBeGreaterThan(60);
  expect(PAGES.map((path) => posix.basename(path, '.md'))).toEqual(DOCUMENTATION.toSorted());
});

it('README.md is short enough to be read', () => expect(read('README.md').split('\n').length).toBeLessThanOrEqual(150));

it.each(DOCUMENTS)('%s names only files and folders that exist', (document) => {
  const named = pathsNamed(document);
  expect(named.filter((path) => !existsSync(join(PROJECT, known(path))))).toEqual([]);
});

describe.each([...DOCUMENTS, BEGUN])('%s', (document) => {
  it('names only commands that exist', () => {
    const ofNpm = new Set(['ci', 'scripts']);
    const named = commandsNamed(document).map(({ name }) => name);
    expect(named.filter((name) => !scripts.includes(name) && !ofNpm.has(name))).toEqual([]);
  });

  it('gives commands only options that they have', () => {
    const unknown = commandsNamed(document).flatMap(({ name, options }) => {
      const [, file] = /launch\.mjs (src\/commands\/\S+\.ts)$/.exec(lines[name] ?? '') ?? [];
      // What every command takes stands in one file, what those that plan have in common in two others.
      const shared = ['run', 'plan-options', 'pair-options'].map((one) => `src/commands/${one}.ts`);
      const known = [...shared, file].map((path) => path && read(path));
      return file === undefined
        ? []
        : options.filter((option) => option !== '--help' && !known.some((text) => text?.includes(option)));
    });
    expect(unknown).toEqual([]);
  });
});

it('every command of package.json is named in one of them', () => {
  const text = DOCUMENTS.map(read).join('\n');
  expect(scripts.filter((name) => !new RegExp(`npm (?:run )?(?:--silent )?${name}\\b`).test(text))).toEqual([]);
});

it('what runs on every change is the test command of README.md', () => {
  const [command] = /^npm ci && npm test$/m.exec(read('README.md')) ?? [];
  expect(command).toBeDefined();
  expect(read('.ci/run').trimEnd().split('\n').at(-1)).toBe(command);
});
