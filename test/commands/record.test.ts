import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { VALID_FILES, writeBenchFolder } from '../support/bench-folder.ts';
import { PROJECT } from '../support/project-files.ts';

/** A bench to record, in a folder of its own. */
function recorder() {
  const folder = writeBenchFolder();
  const run = (command: string, ...words: readonly string[]) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [join(PROJECT, 'src/commands', command), ...words], {
      env: { ...process.env, LAGFOLIO_PUBLICATION: folder.root },
      encoding: 'utf8',
    });
    return { status, stdout, stderr };
  };
  const ledger = join(folder.root, 'content/ledger');
  return {
    write: (path: string, text: string) => writeFileSync(join(folder.root, path), text),
    record: (reason: string, date: string) => run('record.ts', '--reason', reason, '--date', date),
    call: (...words: readonly string[]) => run('record.ts', ...words),
    news: () => run('figures.ts').stderr,
    entries: () => (existsSync(`${ledger}/entries`) ? readdirSync(`${ledger}/entries`).sort() : []),
    entry: (name: string) => readFileSync(`${ledger}/entries/${name}`, 'utf8'),
    state: () => ['figures.csv', 'inputs.csv'].map((name) => readFileSync(join(ledger, name), 'utf8')),
    restore: (name: string, text: string) => {
      mkdirSync(ledger, { recursive: true });
      writeFileSync(join(ledger, name), text);
    },
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
    expect(first.stdout).toMatch(/\nRecorded in content\/ledger\/entries\/2026-05-02-first-publication\.yaml\n$/);
    expect(bench.news()).toBe('');
    expect(bench.record('Again', '2026-05-03')).toEqual({
      status: 2,
      stdout: '',
      stderr: 'Nothing to record: every number and every file is as recorded.\n',
    });
    expect(bench.entries()).toEqual(['2026-05-02-first-publication.yaml']);
  });

  it('keeps what was and what became of each number, and why', () => {
    using bench = recorder();
    bench.record('First publication', '2026-05-02');
    bench.write(READINGS, SLOWER);
    const { stdout } = bench.record('  One reading\nmistyped ', '2026-05-09');
    expect(stdout).toContain('data/sessions/a.csv changed:\n');
    // 33.905 − 33.590 s is 315 ms; 31.482 − 31.181 s was 301 ms and is 801 ms with half a second more.
    expect(bench.entry('2026-05-09-one-reading-mistyped.yaml')).toContain(
      'date: 2026-05-09\nreason: One reading mistyped\nanalysis:',
    );
    expect(bench.entry('2026-05-09-one-reading-mistyped.yaml')).toContain('causes:\n  - data/sessions/a.csv changed\n');
    expect(bench.entry('2026-05-09-one-reading-mistyped.yaml')).toContain(
      '- { id: maximum/a, from: 315 ms, to: 801 ms }',
    );
    expect(bench.news()).toBe('');
  });

  it('brings checksums up to date without an entry where no number moved', () => {
    using bench = recorder();
    bench.record('First publication', '2026-05-02');
    bench.write('data/sessions/a.md', `${VALID_FILES['data/sessions/a.md']}More notes.\n`);
    expect(bench.news()).toBe('');
    expect(bench.record('Notes', '2026-05-09').stdout).toBe(
      'No number moved; the checksums were brought up to date, without an entry.\n',
    );
    expect(bench.entries()).toHaveLength(1);
  });

  it('finishes a record that was cut short, without a second entry', () => {
    using bench = recorder();
    bench.record('First publication', '2026-05-02');
    const before = bench.state();
    bench.write(READINGS, SLOWER);
    bench.record('Mistyped', '2026-05-09');
    const after = bench.state();
    bench.restore('figures.csv', before[0] ?? '');
    bench.restore('inputs.csv', before[1] ?? '');
    bench.record('Mistyped', '2026-05-09');
    expect(bench.state()).toEqual(after);
    expect(bench.entries()).toHaveLength(2);
  });

  it('gives a second record of the same day and reason a name of its own', () => {
    using bench = recorder();
    bench.record('Same', '2026-05-02');
    bench.write(READINGS, SLOWER);
    bench.record('Same', '2026-05-02');
    expect(bench.entries()).toEqual(['2026-05-02-same-2.yaml', '2026-05-02-same.yaml']);
  });
});
