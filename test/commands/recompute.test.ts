import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { renderRegister } from '../../src/register/render-register.ts';
import type { Register } from '../../src/register/register.ts';
import { compileRegister } from '../../src/site/compile.ts';
import { readChanged, VALID_FILES } from '../support/bench-folder.ts';
import { PROJECT } from '../support/project-files.ts';

const root = mkdtempSync(join(tmpdir(), 'recompute-'));
afterAll(() => rmSync(root, { recursive: true }));

const OF_SESSION = ['sessions/a.md', 'sessions/a.csv', 'bodies/vennick.md', 'rigs/balcony.md', 'displays/screen.md'];
const REST = ['links/air.md', 'settings.yaml'];

/** Writes some of the files into a folder: all in one, as downloads are, or in the folders of `data/`. */
function folder(name: string, files: readonly string[], flat = true): string {
  for (const path of files) {
    const file = join(root, name, flat ? basename(path) : join('data', path));
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, VALID_FILES[`data/${path}` as keyof typeof VALID_FILES]);
  }
  return name;
}

function recompute(...words: readonly string[]) {
  const program = join(PROJECT, 'src/commands/recompute.ts');
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, INIT_CWD: root },
  });
  return { status, stdout, stderr };
}

describe('npm run recompute', () => {
  it('prints the figures that a build publishes, from one folder of downloads or from the folders of data/', async () => {
    const published = compileRegister(await readChanged());
    const expected = published.figures.filter(({ of }) => of['session'] === 'a');
    for (const files of [
      folder('flat', [...OF_SESSION, ...REST]),
      folder('package', [...OF_SESSION, ...REST], false),
    ]) {
      const { status, stdout } = recompute(files);
      expect(status).toBe(0);
      const { figures } = JSON.parse(stdout) as Register;
      expect(figures).toEqual(JSON.parse(renderRegister({ ...published, figures: expected })).figures);
    }
    writeFileSync(join(root, 'figures.json'), renderRegister(published));
    expect(recompute('flat', '--against', 'figures.json')).toEqual({
      status: 0,
      stdout: '12 figures identical to the last digit.\n',
      stderr: '',
    });
  });

  it('ends with a failure where a figure is not what was published', async () => {
    folder('changed', [...OF_SESSION, ...REST]);
    writeFileSync(join(root, 'changed/a.csv'), VALID_FILES['data/sessions/a.csv'].replace('31.181', '31.191'));
    writeFileSync(join(root, 'figures.json'), renderRegister(compileRegister(await readChanged())));
    const { status, stdout } = recompute('changed', '--against', 'figures.json');
    expect(status).toBe(1);
    expect(stdout).toMatch(/^mean\/a: published 308\.0 ms, recomputed 303 ms; differs in value, files, text$/m);
  });

  it.each([
    [
      ['flat-short'],
      'Needed besides; the page of the session lists them to download:\n  data/links/air.md\n  data/settings.yaml\n',
    ],
    [['nowhere'], 'nowhere is not there.\n'],
    [['other.txt'], 'other.txt is no file of a session: name its pair, and the files that its page lists.\n'],
    [['flat', '--session', 'aa'], "there is no session 'aa' among the files; there are a. Did you mean a?\n"],
    [['flat', '--level', '95'], "--level is a probability from 0.5 to 0.9999, not '95'.\n"],
    [['flat', '--than', 'a'], '--than compares one session with another: name both, --session A --than B.\n'],
    [['flat', '--against', 'other.txt'], 'other.txt is no published figures.json that can be read.\n'],
  ])('says what is missing or misspelt: %s', (words, says) => {
    folder('flat', [...OF_SESSION, ...REST]);
    folder('flat-short', OF_SESSION);
    writeFileSync(join(root, 'other.txt'), 'text');
    expect(recompute(...words)).toEqual({ status: 2, stdout: '', stderr: says });
  });

  it('names file and line of what is wrong', () => {
    folder('faulty', [...OF_SESSION, ...REST]);
    writeFileSync(join(root, 'faulty/a.csv'), 'run,source,shown,exclude,note\n1,0.5,x,,\n');
    const { status, stderr } = recompute('faulty');
    expect(status).toBe(1);
    expect(stderr).toMatch(/^ *data\/sessions\/a\.csv:2/m);
  });
});
