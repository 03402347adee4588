/** That what a part of a write-up is, is said in its definition alone: nothing else knows a part by its name. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PARTS } from '../../src/write-ups/parts.ts';
import { PROJECT } from '../support/project-files.ts';

const NAME = `(?:${PARTS.map(({ name }) => name).join('|')})`;
const QUOTED = `['"\`]${NAME}['"\`]`;
/** Asking whether something is a certain part, or looking one up; a name alone may be a label: `label: 'Ratio'`. */
const BY_NAME = new RegExp(
  [
    `(?:[!=]==?|\\bcase|\\b(?:has|includes|partNamed)\\(|\\bSet\\(\\[|\\w\\[)\\s*${QUOTED}`,
    `${QUOTED}\\s*(?:[!=]==?|:)`,
    `\\bPARTS\\.${NAME}\\b`,
    `^\\s*${NAME}\\??:`,
  ].join('|'),
  'm',
);
/** Definitions, and the markup that prints what they hand it. */
const OWN = /^src\/(?:write-ups\/parts|components\/write-up)\//;

function source(path: string): string {
  return readFileSync(join(PROJECT, path), 'utf8').replace(/\/\*.*?\*\/|^\s*\/\/.*$/gms, '');
}

describe('parts of write-ups', () => {
  const files = readdirSync(join(PROJECT, 'src'), { recursive: true, encoding: 'utf8' })
    .map((path) => `src/${path.replaceAll('\\', '/')}`)
    .filter((path) => /\.(?:ts|astro)$/.test(path));

  it('are known by name nowhere but where they are defined', () => {
    const others = files.filter((path) => !OWN.test(path));
    expect(others.length).toBeGreaterThan(150);
    expect(others.filter((path) => BY_NAME.test(source(path))).sort()).toEqual(EXCEPTIONS);
  });

  it('have one module each, and markup of their name', () => {
    const kebab = (name: string): string => name.replace(/(?<=[a-z])[A-Z]/g, '-$&').toLowerCase();
    expect(PARTS.length).toBeGreaterThan(18);
    expect(new Set(PARTS.map(({ name }) => name)).size).toBe(PARTS.length);
    for (const { name } of PARTS) {
      expect(source(`src/write-ups/parts/${kebab(name)}.ts`)).toContain(`name: '${name}',`);
      expect(files).toContain(`src/components/write-up/${name}.astro`);
    }
  });

  it('are printed by markup that looks nothing up', () => {
    // Tables of Markdown are printed by markup of their own.
    const markup = files.filter((path) => /^src\/components\/write-up\/(?!MarkdownTable).*\.astro$/.test(path));
    expect(markup.length).toBe(PARTS.length);
    expect(
      markup.filter((path) => /lagfolio\/site|src\/register|\/register\/|\/views\/|\/ledger\//.test(source(path))),
    ).toEqual([]);
  });
});

/**
 * Prose is read before parts are known: what three of them mark is left out of it. Markdown notes hold no parts, but
 * take two marks that are written alike.
 */
const EXCEPTIONS = ['src/components/render-markdown.ts', 'src/ingest/prose.ts', 'src/model/note-mark.ts'];

describe('the search for names', () => {
  it.each([
    ["if (name === 'Claim') return;", true],
    ["case 'Advice':", true],
    ["new Set(['Quoted', 'Setting'])", true],
    ["PARTS['Figure']", true],
    ['PARTS.Figure', true],
    ['  Verdict: { needs: [] },', true],
    ["label: 'Ratio',", false],
    ["['Readings', 'Runs']", false],
    ['const { Figure } = x;', false],
  ])('%s', (text, found) => expect(BY_NAME.test(text)).toBe(found));
});
