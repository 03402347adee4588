import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readBench } from '../../src/ingest/read-bench.ts';
import type { Bench } from '../../src/model/bench.ts';
import { compileSite } from '../../src/site/compile.ts';
import { foldersOf } from '../../src/site/publication.ts';
import { PROJECT } from '../support/project-files.ts';

function emptyFolder() {
  const outer = realpathSync(mkdtempSync(join(tmpdir(), 'begin-')));
  return { outer, [Symbol.dispose]: () => rmSync(outer, { recursive: true, force: true }) };
}

function begin(...words: readonly string[]) {
  const { INIT_CWD, ...env } = process.env;
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(PROJECT, 'src/commands/begin.ts'), ...words], {
    cwd: PROJECT,
    env,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

const filesOf = (root: string): readonly string[] =>
  readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name).slice(root.length + 1))
    .filter((path) => !path.startsWith('.writing'))
    .sort();
const read = (root: string): Promise<Bench> => readBench(foldersOf(root));

describe('npm run begin', () => {
  it('writes a publication that reads without a mistake, into a folder of any name, and says what comes next', async () => {
    using folder = emptyFolder();
    const root = join(folder.outer, "Käse #1 & 'mine'", 'new');
    const { status, stdout, stderr } = begin(root);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toContain(`npm start -- --publication "${root}"`);
    expect(filesOf(root)).toEqual(
      expect.arrayContaining(['.gitattributes', '.gitignore', 'README.md', 'content/site.md', 'data/settings.yaml']),
    );
    for (const path of filesOf(root)) expect(stdout).toContain(`\n  ${path}`);
    const { bodies, displays, rigs, sessions, planned, methods } = await read(root);
    expect([bodies, displays, rigs, sessions, planned, methods].map((list) => list.length)).toEqual([1, 1, 1, 0, 1, 5]);
    expect([...bodies, ...displays, ...rigs].map(({ invented }) => invented)).toEqual([true, true, true]);
    expect(methods.filter(({ author }) => author !== undefined)).toEqual([]);
  });

  it('says in comments what may stand in a file, in words that a build takes when they are let stand', async () => {
    using folder = emptyFolder();
    begin(folder.outer);
    let count = 0;
    for (const path of filesOf(folder.outer).filter((name) => /^data\/.*\.md$/.test(name))) {
      const full = join(folder.outer, path);
      const text = readFileSync(full, 'utf8').replace(
        /^( *)# ([a-z-]+: .*)$/gm,
        (line, indent: string, stated: string) => {
          const isKey = /^[a-z-]+: (?:["{\d]|\S+$)/.test(stated) && !/^(?:input|free): /.test(stated);
          count += Number(isKey);
          return isKey ? indent + stated : line;
        },
      );
      writeFileSync(full, text);
    }
    expect(count).toBeGreaterThanOrEqual(8);
    const { bodies, displays, rigs, planned } = await read(folder.outer);
    expect(bodies[0]?.readoutMs).toBe(14);
    expect(displays[0]?.latency?.source).toContain('twenty flashes');
    expect(rigs[0]?.observer?.readoutMs).toBe(4);
    expect(planned).toHaveLength(1);
  });

  it('leaves a session to fill in, which is published once it is', async () => {
    using folder = emptyFolder();
    begin(folder.outer);
    const [front, csv] = ['md', 'csv'].map((end) => join(folder.outer, `data/sessions/fenn-3-50-a.${end}`)) as [
      string,
      string,
    ];
    writeFileSync(front, readFileSync(front, 'utf8').replace('planned: true\n', '').replace('# date:', 'date:'));
    writeFileSync(
      csv,
      `${readFileSync(csv, 'utf8')}1,10.120,10.004,,\n1,13.377,13.254,,\n2,4.551,4.436,,\n2,7.903,7.781,,\n`,
    );
    const { register } = await compileSite(foldersOf(folder.outer));
    expect(register.figures.find(({ id }) => id === 'readings/fenn-3-50-a')?.value).toBe(4);
    // (116 + 123 + 115 + 122) / 4, from the lines above
    expect(register.figures.find(({ id }) => id === 'mean/fenn-3-50-a')?.value).toBeCloseTo(119, 9);
  });

  it('takes a folder that version control was set up in, and none that holds anything else', () => {
    using folder = emptyFolder();
    mkdirSync(join(folder.outer, '.git'));
    expect(begin(folder.outer).status).toBe(0);
    const before = filesOf(folder.outer);
    const again = begin(folder.outer);
    expect([again.status, again.stderr.trim()]).toEqual([
      2,
      `${folder.outer} is not empty: it holds .gitattributes, .gitignore, README.md and 2 more. Nothing was written; name an empty folder or a new one.`,
    ]);
    expect(filesOf(folder.outer)).toEqual(before);
  });

  it.each([
    ['no folder', [], /^Say one folder/],
    ['two folders', ['a', 'b'], /^Say one folder/],
    ['a file', [join(PROJECT, 'package.json')], /in the tool's own folder/],
    ['a folder of the tool', ['my-bench'], /in the tool's own folder\. A publication stands apart from it/],
    ['the tool itself', ['.'], /in the tool's own folder/],
  ])('refuses %s, and writes nothing', (_what, words, message) => {
    const { status, stderr } = begin(...words);
    expect([status, stderr]).toEqual([2, expect.stringMatching(message)]);
    expect(existsSync(join(PROJECT, 'my-bench'))).toBe(false);
  });

  it('refuses a path that is a file', () => {
    using folder = emptyFolder();
    writeFileSync(join(folder.outer, 'notes'), 'mine');
    expect(begin(join(folder.outer, 'notes')).stderr).toMatch(/is a file/);
  });

  it('finishes what was cut short after it was decided, and begins anew where it was not', () => {
    using folder = emptyFolder();
    const [cut, undecided] = [join(folder.outer, 'cut'), join(folder.outer, 'undecided')];
    for (const root of [cut, undecided]) {
      mkdirSync(join(root, '.writing/stage'), { recursive: true });
      writeFileSync(join(root, '.writing/stage/0'), '---\ntitle: Whole\n');
    }
    writeFileSync(join(cut, '.writing/list.json'), '["content/site.md"]');
    expect(begin(cut).stdout).toContain('  content/site.md\n');
    expect(filesOf(cut)).toEqual(['content/site.md']);
    expect(begin(undecided).status).toBe(0);
    expect(filesOf(undecided).length).toBeGreaterThan(10);
    expect(readFileSync(join(undecided, 'content/site.md'), 'utf8')).not.toContain('Whole');
  });
});
