/** That the folders of src import each other in the one direction that DEVELOPERS.md states. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PROJECT, projectFiles } from '../support/project-files.ts';
import { importsOf, readSourceImports, type Import } from './source-imports.ts';

interface Permission {
  readonly folder: string;
  readonly typesOnly: boolean;
}

/** The table of folders, row by row: those of the first column, and the last column, `model, register (types)`. */
function readGroups(): ReadonlyMap<readonly string[], readonly Permission[]> {
  const rows = readFileSync(join(PROJECT, 'DEVELOPERS.md'), 'utf8').matchAll(/^\| (`src\/[^|]*`) \|.*\| ([^|]*) \|$/gm);
  return new Map(
    [...rows].map(([, folders = '', allowed = '']) => {
      const permissions =
        allowed === 'nothing'
          ? []
          : allowed
              .split(', ')
              .map((one) => ({ folder: one.replace(/ \(types\)$/, ''), typesOnly: one.endsWith(' (types)') }));
      return [[...folders.matchAll(/`src\/([\w-]+)`/g)].map(([, folder = '']) => folder), permissions] as const;
    }),
  );
}

const table: ReadonlyMap<string, readonly Permission[]> = new Map(
  [...readGroups()].flatMap(([folders, permissions]) => folders.map((folder) => [folder, permissions] as const)),
);
const byFile = readSourceImports();
const all = [...byFile.values()].flat();
const inSource = all.filter((one): one is Import & { to: string } => one.to !== undefined);
const folderOf = (path: string): string => path.split('/')[1] ?? '';
const tell = ({ from, specifier }: Import): string => `${from} imports ${specifier}`;

describe('the imports of src', () => {
  it('were read, from every folder of the table', () => {
    expect(byFile.size).toBeGreaterThan(130);
    expect(inSource.length).toBeGreaterThan(350);
    expect(table.size).toBeGreaterThan(12);
    expect([...new Set([...byFile.keys()].map(folderOf))].sort()).toEqual([...table.keys()].sort());
    expect(
      [...byFile].filter(([path, imports]) => path.endsWith('.astro') && imports.length > 0).length,
    ).toBeGreaterThan(20);
  });

  it('name files that exist, with their ending', () => {
    expect(
      inSource.filter(({ to }) => !existsSync(join(PROJECT, to)) || !/\.(?:ts|astro|css|json)$/.test(to)).map(tell),
    ).toEqual([]);
  });

  it('go one way', () => {
    const astray = inSource.filter(({ from, to, isType }) => {
      const [here, there] = [folderOf(from), folderOf(to)];
      const permission = table.get(here)?.find(({ folder }) => folder === there);
      return (
        !to.startsWith('src/') || (here !== there && (permission === undefined || (permission.typesOnly && !isType)))
      );
    });
    expect(astray.map(tell)).toEqual([]);
  });

  it('use every permission of the table', () => {
    const used = new Set(
      inSource.flatMap(({ from, to, isType }) => {
        const arrow = `${folderOf(from)} → ${folderOf(to)}`;
        return isType ? [`${arrow} (types)`] : [arrow, `${arrow} (types)`];
      }),
    );
    const groups = [...readGroups()].flatMap(([folders, permissions]) =>
      permissions.map(({ folder, typesOnly }) =>
        folders.map((from) => `${from} → ${folder}${typesOnly ? ' (types)' : ''}`),
      ),
    );
    expect(groups.filter((arrows) => !arrows.some((arrow) => used.has(arrow)))).toEqual([]);
  });

  it('make no cycle between folders', () => {
    const reach = (folder: string, seen = new Set<string>()): ReadonlySet<string> => {
      for (const { folder: next } of table.get(folder) ?? []) if (!seen.has(next)) reach(next, seen.add(next));
      return seen;
    };
    expect([...table.keys()].filter((folder) => reach(folder).has(folder))).toEqual([]);
  });

  it('make no cycle', () => {
    const cycles: string[] = [];
    const done = new Set<string>();
    const visit = (path: string, trail: readonly string[]): void => {
      const at = trail.indexOf(path);
      if (at >= 0) cycles.push([...trail.slice(at), path].join(' → '));
      if (at >= 0 || done.has(path)) return;
      for (const { to } of byFile.get(path) ?? []) if (to !== undefined) visit(to, [...trail, path]);
      done.add(path);
    };
    for (const path of byFile.keys()) visit(path, []);
    expect(done.size).toBeGreaterThanOrEqual(byFile.size);
    expect(cycles).toEqual([]);
  });

  it.each([
    ['vega and vega-lite', /^vega/, /^src\/charts\//],
    ['the MDX and Markdown parser', /^satteri$/, /^src\/(?:ingest|components)\//],
    ['CSV and front matter', /^(?:csv-parse|gray-matter)\b/, /^src\/(?:ingest|import)\//],
    ['spreadsheets', /xlsx|^hucre\b/, /^src\/import\//],
    // What authors write: files, and the properties of parts.
    ['schemas', /^zod$/, /^src\/(?:ingest|write-ups\/parts)\//],
    // Planned sessions are written as authors write them; the citation file is YAML by its own rules.
    ['YAML', /^yaml$/, /^src\/(?:ingest|planning|citation\/citation-file\.ts)/],
    // Raw files are published as they are, and fonts and the drawing of pictures come from their packages, the
    // stylesheet from its sheets; results are kept from build to build.
    [
      'the file system',
      /^(?:node:)?fs\b/,
      /^src\/(?:data-package\/zip-package\.ts|ingest|memory|verify|commands|site\/documentation\.ts|pages\/data\/\[\.\.\.path\]\.ts|pages\/site\.css\.ts|fonts\/subset\.ts|illustrations\/illustration-file\.ts|pictures\/(?:outlines|draw-png)\.ts)/,
    ],
  ])('keep %s to where it belongs', (_what, packages, place) => {
    const users = all.filter(({ specifier }) => packages.test(specifier));
    expect(users.length).toBeGreaterThan(0);
    expect(users.filter(({ from }) => !place.test(from)).map(tell)).toEqual([]);
  });

  it('never reach for the network', () => {
    expect(
      all.filter(({ specifier }) => /^(?:node:)?(?:https?|http2|net|dns|tls|dgram)\b/.test(specifier)).map(tell),
    ).toEqual([]);
  });

  it('give the mathematics nothing of Node, so that it runs in a browser alike', () => {
    const ofMathematics = all.filter(({ from }) => ['analysis', 'model'].includes(folderOf(from)));
    expect(ofMathematics.length).toBeGreaterThan(20);
    expect(ofMathematics.filter(({ specifier }) => specifier.startsWith('node:')).map(tell)).toEqual([]);
  });
});

/** Functions of `Math` whose last digit ECMA-262 (21.3.2) leaves to the engine: all but those of rounding, size and `sqrt`. */
const OF_THE_ENGINE = /\bMath\.(?:a?cosh?|a?sinh?|a?tanh?|atan2|cbrt|exp|expm1|hypot|log|log1p|log10|log2|pow)\b/;

describe('what a reader can recompute', () => {
  it('takes elementary functions that are the same to the last digit in every engine', () => {
    const computing = projectFiles('src').filter((path) =>
      ['analysis', 'model', 'register', 'recompute'].includes(folderOf(path)),
    );
    expect(computing.length).toBeGreaterThan(100);
    expect(computing.filter((path) => OF_THE_ENGINE.test(readFileSync(join(PROJECT, path), 'utf8')))).toEqual([]);
    expect(readFileSync(join(PROJECT, 'src/charts/axis.ts'), 'utf8')).toMatch(OF_THE_ENGINE);
  });
});

describe('the reader of imports', () => {
  it.each([
    ['a.ts', "import a from './b.ts';", [['src/x/b.ts', false]]],
    ['a.ts', "import type { A } from '../y/b.ts';", [['src/y/b.ts', true]]],
    [
      'a.ts',
      "export { a } from './b.ts'; export type { B } from './c.ts';",
      [
        ['src/x/b.ts', false],
        ['src/x/c.ts', true],
      ],
    ],
    [
      'a.ts',
      "const a = await import('./b.ts'); type C = import('./c.ts').C;",
      [
        ['src/x/b.ts', false],
        ['src/x/c.ts', true],
      ],
    ],
    [
      'a.ts',
      "import css from './b.css?raw'; import 'vega';",
      [
        ['src/x/b.css', false],
        [undefined, false],
      ],
    ],
    ['a.ts', "// import a from './b.ts'\nconst text = \"import a from './b.ts'\";", []],
    ['a.astro', "---\nimport A from './A.astro';\n---\n<p>import B from './B.astro'</p>", [['src/x/A.astro', false]]],
    ['a.astro', '<p>nothing</p>', []],
  ] as const)('finds in %s: %s', (name, text, expected) => {
    expect(importsOf(`src/x/${name}`, text).map(({ to, isType }) => [to, isType])).toEqual(expected);
  });
});
