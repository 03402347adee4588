/** That a page prints its view and nothing else: what it prints is then known before it is drawn. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PROJECT, projectFiles } from '../support/project-files.ts';
import { readSourceImports } from './source-imports.ts';

const read = (path: string): string => readFileSync(join(PROJECT, path), 'utf8');
const pages = projectFiles('src/pages').filter((path) => path.endsWith('.astro'));
const markup = ['src/components', 'src/layouts'].flatMap((folder) => projectFiles(folder));
/** The one line of a page that is not run while it is drawn. */
const ROUTE = /^export const getStaticPaths = \(\) => pagesOf\('\w+'\);$/m;
/** The page for lost addresses is no route of several pages, and is drawn every time. */
const LOST = 'src/pages/404.astro';
/** Where something other than the view could be read: files, the process, the clock, chance, the request. */
const ELSEWHERE =
  /\bloadSite\b|\bnode:(?!crypto|path)|\bprocess\b|\bnew Date\b|\bDate\.|\bMath\.random\b|\bAstro\.(?:request|cookies|glob)\b|\bgetCollection\b|\bfetch\(/;

describe('a page', () => {
  it.each(pages.filter((path) => path !== LOST))('takes part in what is kept from build to build: %s', (path) => {
    expect(read(path)).toMatch(ROUTE);
    expect(read(path)).toMatch(/^const \{\s+frame\b[^;]*\} = readPage<ViewOf<'\w+'>>\(Astro\.props\);$/m);
  });

  it.each(pages)('reads its view and nothing else: %s', (path) => {
    const drawn = read(path)
      .replace(ROUTE, '')
      .replace(/^import \{ pagesOf, type ViewOf \} from 'lagfolio\/site';$/m, '')
      .replace(path === LOST ? "await pagesOf('notFound')" : '', '');
    expect(drawn).not.toMatch(ELSEWHERE);
    expect(drawn).not.toMatch(/lagfolio\/site|\bpagesOf\b/);
  });

  it('is among many, and so are its parts', () => {
    expect(pages.length).toBeGreaterThan(15);
    expect(markup.length).toBeGreaterThan(60);
  });

  it('would be found out', () => {
    for (const line of [
      'await loadSite()',
      "from 'node:fs'",
      'process.cwd()',
      'new Date()',
      'Math.random()',
      'Astro.request',
    ])
      expect(line).toMatch(ELSEWHERE);
    expect("export const getStaticPaths = () => pagesOf('rig');").toMatch(ROUTE);
    expect('export const getStaticPaths = async () => [];').not.toMatch(ROUTE);
  });
});

describe('the parts of pages', () => {
  it.each(markup)('read what they are handed and nothing else: %s', (path) => {
    expect(read(path)).not.toMatch(ELSEWHERE);
  });

  it('know figures as pages print them, without their files and budgets', () => {
    const imports = [...readSourceImports()].filter(([path]) =>
      /^src\/(?:components|layouts|pages)\/.*\.astro$/.test(path),
    );
    expect(imports.length).toBeGreaterThan(60);
    const whole = imports.filter(([path]) =>
      /import type \{[^}]*\bFigure\b[^}]*\} from '.*register\/register\.ts'/.test(read(path)),
    );
    expect(whole.map(([path]) => path)).toEqual([]);
    expect(
      imports
        .filter(([path, list]) => !path.startsWith('src/pages/') && list.some(({ to }) => to?.startsWith('src/site/')))
        .map(([path]) => path),
    ).toEqual([]);
  });
});
