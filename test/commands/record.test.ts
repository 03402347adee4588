import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/analysis/random.ts';
import { VALID_FILES, writeBenchFolder, type Files } from '../support/bench-folder.ts';
import { PROJECT } from '../support/project-files.ts';

/** What the first record of the bench wrote: the same in every test that goes on from there. */
let firstRecord: Files | undefined;

/** A bench that was recorded once, on 2 May, in a folder of its own. */
function recorded() {
  if (firstRecord === undefined) {
    using bench = recorder();
    expect(bench.record('First publication', '2026-05-02')).toMatchObject({ status: 0, stderr: '' });
    firstRecord = bench.all();
  }
  return recorder(firstRecord);
}

/** A bench to record, in a folder of its own. */
function recorder(files: Files = {}) {
  const folder = writeBenchFolder(files);
  const run = (command: string, ...words: readonly string[]) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [join(PROJECT, 'src/commands', command), ...words], {
      env: { ...process.env, LAGFOLIO_PUBLICATION: folder.root },
      encoding: 'utf8',
    });
    return { status, stdout, stderr };
  };
  const ledger = join(folder.root, 'content/ledger');
  return {
    write: (path: string, text: string) => {
      mkdirSync(dirname(join(folder.root, path)), { recursive: true });
      writeFileSync(join(folder.root, path), text);
    },
    /** The publication as it was, with nothing beside it. */
    restore: (files: Readonly<Record<string, string>>) => {
      for (const path of ['data', 'content', '.writing'])
        rmSync(join(folder.root, path), { recursive: true, force: true });
      for (const [path, text] of Object.entries(files)) {
        mkdirSync(dirname(join(folder.root, path)), { recursive: true });
        writeFileSync(join(folder.root, path), text);
      }
    },
    /** Starts a record and kills it after a while; false where it was done before. */
    killed: async (words: readonly string[], afterMs: number): Promise<boolean> => {
      const child = spawn(process.execPath, [join(PROJECT, 'src/commands/record.ts'), ...words], {
        cwd: folder.root,
        env: { ...process.env, LAGFOLIO_PUBLICATION: folder.root },
        stdio: 'ignore',
      });
      const ended = once(child, 'exit');
      await setTimeout(afterMs);
      const killed = child.kill('SIGKILL');
      await ended;
      return killed;
    },
    record: (reason: string, date: string) => run('record.ts', '--reason', reason, '--date', date),
    call: (...words: readonly string[]) => run('record.ts', ...words),
    news: () => run('figures.ts').stderr,
    /** Names without their digests. */
    entries: () =>
      existsSync(`${ledger}/entries`)
        ? readdirSync(`${ledger}/entries`)
            .map((name) => name.replace(/-[0-9a-f]{6}\./, '.'))
            .sort()
        : [],
    /** The files of the entries whose names begin so, one after the other. */
    entry: (name: string) =>
      readdirSync(`${ledger}/entries`)
        .filter((file) => file.startsWith(name))
        .map((file) => readFileSync(`${ledger}/entries/${file}`, 'utf8'))
        .join('\n'),
    all: () => readFolder(folder.root),
    [Symbol.dispose]: () => folder[Symbol.dispose](),
  };
}

const READINGS = 'data/sessions/a.csv';
const SLOWER = VALID_FILES[READINGS].replace('00:31.482', '00:31.982');

describe('npm run record', () => {
  it.each([
    ['no reason', ['--date', '2026-05-02'], 'A record needs a reason: --reason "why the numbers moved".'],
    [
      'a blank reason',
      ['--date', '2026-05-02', '--reason', ' \n'],
      'A record needs a reason: --reason "why the numbers moved".',
    ],
    [
      'no date',
      ['--reason', 'x'],
      'A record needs its day, as YYYY-MM-DD: --date 2026-05-02. None was given, and nothing here reads a clock.',
    ],
    [
      'a day that no calendar has',
      ['--reason', 'x', '--date', '2026-02-30'],
      "A record needs its day, as YYYY-MM-DD: --date 2026-05-02. '2026-02-30' is no calendar date.",
    ],
    [
      'a reason without quotes',
      ['--date', '2026-05-02', '--reason', 'two', 'words'],
      "'words' belongs to no option; put text of several words in quotes.",
    ],
  ])('refuses %s, and writes nothing', (_what, words, message) => {
    using bench = recorder();
    const { status, stdout, stderr } = bench.call(...words);
    expect({ status, stdout, first: stderr.split('\n')[0] }).toEqual({ status: 2, stdout: '', first: message });
    expect(bench.entries()).toEqual([]);
  });

  it('records, after which nothing is news, and refuses to record again', () => {
    using bench = recorder();
    expect(bench.news()).toMatch(/^Since the last record: \d+ new; 0 as recorded\./);
    const first = bench.record('First publication', '2026-05-02');
    expect(first).toMatchObject({ status: 0, stderr: '' });
    expect(first.stdout).toMatch(
      /\nRecorded in content\/ledger\/entries\/2026-05-02-first-publication-[0-9a-f]{6}\.yaml\n$/,
    );
    expect(bench.news()).toBe('');
    expect(bench.record('Again', '2026-05-03')).toEqual({
      status: 2,
      stdout: '',
      stderr: 'Nothing to record: every number and every file is as recorded.\n',
    });
    expect(bench.entries()).toEqual(['2026-05-02-first-publication.csv', '2026-05-02-first-publication.yaml']);
  });

  it('keeps what was and what became of each number, and why', () => {
    using bench = recorded();
    bench.write(READINGS, SLOWER);
    const { stdout } = bench.record('  One reading\nmistyped ', '2026-05-09');
    expect(stdout).toContain('data/sessions/a.csv changed:\n');
    // 33.905 − 33.590 s is 315 ms; 31.482 − 31.181 s was 301 ms and is 801 ms with half a second more.
    const entry = bench.entry('2026-05-09-one-reading-mistyped');
    expect(entry).toContain('date: 2026-05-09\nreason: One reading mistyped\nanalysis:');
    expect(entry).toContain('causes:\n  - [ { changed: data/sessions/a.csv } ]\n');
    expect(entry).toMatch(/^maximum\/a,,801 ms,801,,,[^\n]+,1$/m);
    expect(bench.entry('2026-05-02')).toMatch(/^maximum\/a,,315 ms,315,/m);
    expect(bench.news()).toBe('');
  });

  it('records which files changed where nothing that is published moved', () => {
    using bench = recorded();
    bench.write('data/settings.yaml', `${VALID_FILES['data/settings.yaml']}# a comment\n`);
    expect(bench.news()).toBe('');
    expect(bench.record('Comments', '2026-05-09').stdout).toMatch(
      /^Nothing that is published moved; which files changed is recorded\./,
    );
    expect(bench.entry('2026-05-09')).toMatch(/^input\/data\/settings\.yaml,,[0-9a-f]{64},/m);
    expect(bench.record('Comments', '2026-05-09').status).toBe(2);
  });

  it('refuses a day before the last record', () => {
    using bench = recorded();
    bench.write(READINGS, SLOWER);
    expect(bench.record('Mistyped', '2026-05-01')).toMatchObject({
      status: 2,
      stderr: expect.stringMatching(
        /^The last record is of 2026-05-02, and days never fall: --date 2026-05-02 or later\./,
      ),
    });
    expect(bench.entries()).toHaveLength(2);
  });

  it('refuses what was measured after its day', () => {
    using bench = recorder();
    expect(VALID_FILES['data/sessions/a.md']).toContain('date: 2026-04-11');
    expect(bench.record('First publication', '2026-04-10')).toMatchObject({
      status: 2,
      stderr: `Measured after 2026-04-10, the day of this record:
  data/sessions/a.md  date  2026-04-11
Correct those days, or the one of the record.
`,
    });
    expect(bench.entries()).toEqual([]);
    expect(bench.record('First publication', '2026-04-11').status).toBe(0);
  });

  it('refuses a reason that no build could read', () => {
    using bench = recorder();
    expect(bench.record('turned \u202e round', '2026-05-02')).toMatchObject({
      status: 2,
      stderr: 'The reason holds the character U+202E, which steers terminals; leave it out.\n',
    });
  });

  it('refuses to go on with a ledger that was edited, and writes what is missing again from its entries', () => {
    using bench = recorded();
    const figures = 'content/ledger/figures.csv';
    const whole = bench.all()[figures] ?? '';
    bench.write(figures, whole.replace(/^maximum\/a,.*\n/m, ''));
    expect(bench.news()).toMatch(
      /^The ledger cannot be relied on; a strict build refuses it:\n {2}content\/ledger\/figures\.csv {2}maximum\/a {2}is missing here/,
    );
    bench.write(READINGS, SLOWER);
    expect(bench.record('Mistyped', '2026-05-09')).toMatchObject({ status: 1 });
    bench.write(READINGS, VALID_FILES[READINGS]);
    expect(bench.call('--join')).toMatchObject({
      status: 0,
      stdout: 'The state was written again from the 1 entries.\n',
    });
    expect(bench.all()[figures]).toBe(whole);
  });

  it('gives the same entry once, at whatever moment it was killed', async () => {
    using bench = recorded();
    bench.write(READINGS, SLOWER);
    const before = bench.all();
    bench.record('Mistyped', '2026-05-09');
    const after = bench.all();
    bench.restore(before);
    const start = performance.now();
    bench.record('Mistyped', '2026-05-09');
    const wholeMs = performance.now() - start;
    const random = seededRandom(20260509);
    let cut = 0;
    for (let round = 0; round < 5; round += 1) {
      bench.restore(before);
      // it writes at its end
      const afterMs = wholeMs * random.between(0.4, 1);
      if (await bench.killed(['--reason', 'Mistyped', '--date', '2026-05-09'], afterMs)) cut += 1;
      const { status, stderr } = bench.record('Mistyped', '2026-05-09');
      expect([0, 2], stderr).toContain(status);
      expect(bench.all()).toEqual(after);
    }
    expect(cut).toBeGreaterThan(0);
  }, 600_000);

  it('finishes what was listed before it was killed, and says that nothing is left to record', () => {
    using bench = recorded();
    bench.write(READINGS, SLOWER);
    const before = bench.all();
    bench.record('Mistyped', '2026-05-09');
    const after = bench.all();
    bench.restore(before);
    const changed = Object.keys(after).filter((path) => after[path] !== before[path]);
    bench.write(
      '.writing/list.json',
      JSON.stringify(changed.map((path) => (path in before ? { path, replaces: true } : path))),
    );
    changed.forEach((path, index) => bench.write(`.writing/stage/${index}`, after[path] ?? ''));
    expect(bench.record('Mistyped', '2026-05-09')).toMatchObject({
      status: 0,
      stdout: 'Nothing more to record: what was cut short is recorded now.\n',
    });
    expect(bench.all()).toEqual(after);
  });

  it('gives a second record of the same day and reason a name of its own', () => {
    using bench = recorder();
    bench.record('Same', '2026-05-02');
    bench.write(READINGS, SLOWER);
    bench.record('Same', '2026-05-02');
    expect(bench.entries()).toEqual([
      '2026-05-02-same.csv',
      '2026-05-02-same.csv',
      '2026-05-02-same.yaml',
      '2026-05-02-same.yaml',
    ]);
  });
});

describe('npm run record -- --join', () => {
  it('takes no reason and no day', () => {
    using bench = recorder();
    expect(bench.call('--join', '--date', '2026-05-02')).toMatchObject({
      status: 2,
      stderr: expect.stringMatching(/^--join keeps the reasons and days of what was recorded, and takes none\./),
    });
  });

  it('joins two branches that git merged, conflicts in the lists included', () => {
    using bench = recorded();
    const base = bench.all();
    bench.write(READINGS, SLOWER);
    bench.record('Ours', '2026-05-10');
    const ours = bench.all();
    bench.restore(base);
    const body = VALID_FILES['data/bodies/vennick.md'].replace('14 ms', '15 ms');
    bench.write('data/bodies/vennick.md', body);
    bench.write('data/bodies/other.md', body.replace('Vennick Q4', 'Other'));
    bench.record('Theirs', '2026-05-09');
    const theirs = bench.all();
    // as a merge leaves it: the entries and files of both, and marks in the lists
    bench.restore({ ...theirs, ...ours, 'data/bodies/vennick.md': body });
    for (const name of ['figures.csv', 'inputs.csv'])
      bench.write(`content/ledger/${name}`, `id\n<<<<<<< HEAD\n=======\n>>>>>>> theirs\n`);
    expect(bench.record('Ours', '2026-05-11')).toMatchObject({ status: 1 });
    expect(bench.call('--join')).toMatchObject({ status: 0, stderr: '' });
    expect(bench.news()).toBe('');
    expect(bench.entries()).toHaveLength(6);
    // a second time there is nothing to place anew
    expect(bench.call('--join').stdout).toBe('The state was written again from the 3 entries.\n');
  });
});

/** Every file of a publication by its path, but for the marks of commands. */
function readFolder(root: string): Readonly<Record<string, string>> {
  const paths = readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(root, join(entry.parentPath, entry.name)))
    .filter((path) => !path.startsWith('.writing'));
  return Object.fromEntries(paths.sort().map((path) => [path, readFileSync(join(root, path), 'utf8')]));
}
