/** That README.md and DEVELOPERS.md name files and commands that exist. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PROJECT, projectFiles } from '../support/project-files.ts';

const read = (path: string): string => readFileSync(join(PROJECT, path), 'utf8');
const DOCUMENTS = ['README.md', 'DEVELOPERS.md'];
const scripts = Object.keys((JSON.parse(read('package.json')) as { scripts: Record<string, string> }).scripts);
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
    .filter((target) => target !== '' && !/^[a-z]+:/.test(target));
  return [...new Set([...code.filter((word) => tops.has(word.split('/')[0] ?? '')), ...links])].filter(
    (path) => !BUILT.test(path),
  );
}

/** A path up to the first word that stands for any name. */
function known(path: string): string {
  const words = path.split('/');
  const any = words.findIndex((word) => !tops.has(word) && STANDS_FOR_ANY.test(word));
  return any < 0 ? path : words.slice(0, any).join('/');
}

describe.each(DOCUMENTS)('%s', (document) => {
  it('names only files and folders that exist', () => {
    const named = pathsNamed(document);
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter((path) => !existsSync(join(PROJECT, known(path))))).toEqual([]);
  });

  it('names only commands that exist', () => {
    const named = [...read(document).matchAll(/\bnpm (?:run )?(?:(?:--silent|-s) )?([\w:-]+)/g)].map(
      ([, name = '']) => name,
    );
    const ofNpm = new Set(['ci', 'scripts']);
    expect(named.filter((name) => scripts.includes(name)).length).toBeGreaterThan(3);
    expect(named.filter((name) => !scripts.includes(name) && !ofNpm.has(name))).toEqual([]);
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
