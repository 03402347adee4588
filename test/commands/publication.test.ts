/** Every command of package.json that works on a publication takes its folder in the same two ways. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { writeBenchFolder } from '../support/bench-folder.ts';
import { PROJECT } from '../support/project-files.ts';

const { scripts } = JSON.parse(readFileSync(join(PROJECT, 'package.json'), 'utf8')) as {
  scripts: Readonly<Record<string, string>>;
};
/** Those that work on no publication: on files that somebody saved. */
const APART = ['recompute'];
const COMMANDS = Object.entries(scripts).flatMap(([name, line]) => {
  if (name === 'begin') return []; // there is none yet
  const [, file] = /launch\.mjs (src\/commands\/\S+\.ts)$/.exec(line) ?? [];
  return file === undefined || APART.includes(name) ? [] : [[name, file] as const];
});
const empty = realpathSync(mkdtempSync(join(tmpdir(), 'empty-')));
afterAll(() => rmSync(empty, { recursive: true }));

function run(file: string, words: readonly string[], env: NodeJS.ProcessEnv = {}, cwd = PROJECT) {
  const { INIT_CWD, LAGFOLIO_PUBLICATION, ...rest } = process.env;
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(PROJECT, file), ...words], {
    cwd,
    env: { ...rest, ...env },
    encoding: 'utf8',
    input: '',
  });
  return { status, stdout, stderr };
}

const none = (by: string): string =>
  `${empty}, which ${by} names, holds no publication: neither data/ nor content/. To begin one: npm run begin -- DIR`;

it('the commands were found', () => expect(COMMANDS.length).toBeGreaterThanOrEqual(8));

describe.each(COMMANDS)('npm run %s', (_name, file) => {
  it('says its options', () => {
    const { status, stdout, stderr } = run(file, ['--help']);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^Usage: npm (?:run )?\S+/);
    expect(stdout).toContain('--publication DIR');
  });

  it('refuses a folder that holds no publication', () => {
    const { status, stderr } = run(file, ['--publication', empty]);
    expect([status, stderr.trim()]).toEqual([2, none('--publication')]);
  });
});

it('a folder that the environment names is refused in the same way', () => {
  const { status, stderr } = run('src/commands/figures.ts', [], { LAGFOLIO_PUBLICATION: empty });
  expect([status, stderr.trim()]).toEqual([2, none('LAGFOLIO_PUBLICATION')]);
});

describe('the folder of a publication', () => {
  const figure = (stdout: string): string => (JSON.parse(stdout) as { figures: [{ text: string }] }).figures[0].text;

  it('is meant from where the command was called, and the option comes before the environment', () => {
    using folder = writeBenchFolder();
    const bySaid = run('src/commands/figures.ts', ['count/sessions', '--publication', 'data/..'], {
      INIT_CWD: folder.root,
      LAGFOLIO_PUBLICATION: empty,
    });
    expect([bySaid.stderr, figure(bySaid.stdout)]).toEqual(['', '1']);
    const byPlace = run('src/commands/figures.ts', ['count/sessions', '--publication', '.'], {}, folder.root);
    expect(figure(byPlace.stdout)).toBe('1');
  });

  it('has to be there', () => {
    const missing = join(empty, 'nowhere');
    expect(run('src/commands/figures.ts', ['--publication', missing]).stderr.trim()).toBe(
      `There is no folder ${missing}, which --publication names. To begin one: npm run begin -- DIR`,
    );
    expect(run('src/commands/figures.ts', ['--publication', join(PROJECT, 'package.json')]).stderr).toContain(
      'is no folder',
    );
  });
});
