import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeBenchFolder, type Files } from '../support/bench-folder.ts';
import { PROJECT } from '../support/project-files.ts';
import { TWO_DISPLAYS } from '../support/two-displays.ts';
import { xlsx, type XlsxCell } from '../support/workbooks.ts';

const NAME = 'Meßwerte #2.xlsx';
/** A time as a fraction of a day: ECMA-376-1, 18.17.4.2. */
const time = (seconds: number): XlsxCell => ({ v: seconds / 86_400, format: 'mm:ss.000' });
const WORKBOOK = xlsx([
  {
    name: 'Tuesday',
    rows: [
      ['Clip', 'Timer', 'Display', 'Note'],
      [1, time(31.482), time(31.317), null],
      [1, time(33.905), time(33.741), 'a "dim", late one'],
      [2, time(12.044), time(11.88), null],
    ],
  },
]);

function importer(bytes: Uint8Array = WORKBOOK, changes: Files = {}) {
  const folder = writeBenchFolder(changes);
  writeFileSync(join(folder.root, NAME), bytes);
  return {
    run: (...words: readonly string[]) => {
      const { status, stdout, stderr } = spawnSync(
        process.execPath,
        [join(PROJECT, 'src/commands/import.ts'), join(folder.root, NAME), ...words],
        { env: { ...process.env, LAGFOLIO_PUBLICATION: folder.root }, encoding: 'utf8', input: '' },
      );
      return { status, stdout, stderr: stderr.replaceAll(folder.root, 'FOLDER') };
    },
    read: (path: string) => readFileSync(join(folder.root, path)),
    has: (path: string) => existsSync(join(folder.root, path)),
    bench: () => folder.read(),
    [Symbol.dispose]: () => folder[Symbol.dispose](),
  };
}

const SAID = ['--body', 'vennick', '--rig', 'pit', '--rate', '59.94', '--set', 'audio-out=on', '--date', '2026-05-02'];

describe('npm run import', () => {
  it('writes a session that a build reads, with the workbook beside it, after saying all that it took', async () => {
    using desk = importer();
    const { status, stdout, stderr } = desk.run(...SAID, '--firmware', '1.40');
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toContain(
      "  read: run from A 'Clip', source from B 'Timer', shown from C 'Display', note from D 'Note'",
    );
    expect(stdout).toMatch(/\n {2}2 +1 +0\.000364375 +00:31\.482 +0\.00036246\d+ +00:31\.317\n/);
    expect(stdout).toContain('Not said: bit-depth, chroma. What is not stated cannot be compared later;');
    const { sessions, workbooks } = await desk.bench();
    expect(sessions.find(({ id }) => id === 'vennick-59-94-a')).toMatchObject({
      body: 'vennick',
      rig: 'pit',
      firmware: '1.40',
      date: '2026-05-02',
      // 31.482 − 31.317, 33.905 − 33.741 and 12.044 − 11.880 s
      readings: [{ latencyMs: 165 }, { latencyMs: 164, note: 'a "dim", late one' }, { latencyMs: 164, run: 2 }],
      importedFrom: { path: 'data/sources/messwerte-2.xlsx', sheet: 'Tuesday' },
    });
    expect(workbooks).toEqual([
      {
        path: 'data/sources/messwerte-2.xlsx',
        sha256: createHash('sha256').update(WORKBOOK).digest('hex'),
        bytes: WORKBOOK.length,
      },
    ]);
    expect(new Uint8Array(desk.read('data/sources/messwerte-2.xlsx'))).toEqual(WORKBOOK);
  });

  it('overwrites nothing, and keeps one workbook for two sessions of it', async () => {
    using desk = importer();
    expect(desk.run(...SAID, '--id', 'desk').status).toBe(0);
    const again = desk.run(...SAID, '--id', 'desk');
    expect([again.status, again.stderr]).toEqual([1, expect.stringContaining('data/sessions/desk.md')]);
    expect(desk.run(...SAID, '--id', 'desk-2').status).toBe(0);
    expect((await desk.bench()).workbooks).toHaveLength(1);
  });

  it('writes a comparison of two displays in the same way', async () => {
    using desk = importer(WORKBOOK, TWO_DISPLAYS);
    const said = [
      '--display',
      'wall',
      '--against',
      'screen',
      '--picture',
      '60',
      '--outputs',
      '1 ms',
      '--date',
      '2026-05-02',
    ];
    const { status, stderr } = desk.run(...said);
    expect([status, stderr]).toEqual([0, '']);
    const { displayPairs, workbooks } = await desk.bench();
    expect(displayPairs).toMatchObject([
      {
        id: 'wall-beside-screen',
        method: 'side-by-side',
        date: '2026-05-02',
        display: 'wall',
        against: 'screen',
        outputs: { standardUncertaintyMs: 1 },
        readings: [{ latencyMs: 165 }, { latencyMs: 164 }, { latencyMs: 164, run: 2 }],
        importedFrom: { path: 'data/sources/messwerte-2.xlsx', sheet: 'Tuesday' },
      },
    ]);
    expect(workbooks).toHaveLength(1);
  });

  it('can be tried without writing', () => {
    using desk = importer();
    const { status, stdout } = desk.run(...SAID, '--id', 'desk', '--dry');
    expect([status, stdout]).toEqual([0, expect.stringContaining('Nothing was written, as --dry says. Without it:')]);
    expect(desk.has('data/sources') || desk.has('data/sessions/desk.md')).toBe(false);
  });

  it('tells what a build would refuse by its row in the workbook, and writes nothing', () => {
    const rows = [['clip', 'source', 'shown'], [], [1, time(9), time(9.5)]];
    using desk = importer(xlsx([{ name: 'Tuesday', rows }]));
    const { status, stderr } = desk.run(...SAID, '--id', 'desk');
    expect(status).toBe(1);
    expect(stderr).toContain(`${NAME}, sheet 'Tuesday':3  shown  `);
    expect(desk.has('data/sources') || desk.has('data/sessions/desk.md')).toBe(false);
  });

  it.each([
    ['no day', SAID.slice(0, -2), /^A session needs its day/],
    [
      'a body that is none',
      ['--body', 'venick', ...SAID.slice(2)],
      /^There is no body 'venick'; did you mean vennick\?/,
    ],
    [
      'a role that is none',
      [...SAID, '--column', 'time=B'],
      /^--column says which column holds what.*not 'time=B'\.$/m,
    ],
    ['two rates', SAID.map((word) => (word === '59.94' ? '24,59.94' : word)), /^--rate is one frame rate/],
    [
      'rows that are none',
      [...SAID, '--rows', '9-3'],
      /^--rows takes the first and the last row, as in --rows 5-24, not '9-3'/,
    ],
  ])('refuses %s', (_what, words, message) => {
    using desk = importer();
    const { status, stderr } = desk.run(...words);
    expect([status, stderr]).toEqual([2, expect.stringMatching(message)]);
  });
});
