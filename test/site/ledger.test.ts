/** That no published number moves in silence: a copy of the demonstration is recorded, changed, and built strictly. */
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { checkLedger } from '../../src/ledger/check.ts';
import { compareWithLedger } from '../../src/ledger/compare.ts';
import { compileSite } from '../../src/site/compile.ts';
import { copyProject, type ProjectCopy } from '../support/project-copy.ts';
import { PROJECT, projectFiles } from '../support/project-files.ts';

const READINGS = 'data/sessions/vennick-uhd30-a.csv';
const BODIES = ['data/bodies/vennick-q4.md', 'data/bodies/dunmere-30.md'] as const;
const SESSIONS = ['data/sessions/vennick-uhd30-a.csv', 'data/sessions/dunmere-uhd30-a.csv'] as const;
/** A session that no write-up names, so that it is the ledger which notices that it is gone. */
const UNNAMED = projectFiles('data/sessions')
  .map((path) => path.replace(/^.*\/|\.[^.]*$/g, ''))
  .find(
    (id) =>
      !projectFiles('content')
        .filter((path) => path.endsWith('.mdx'))
        .some((path) => readFileSync(join(PROJECT, path), 'utf8').includes(id)),
  );
const RIG = 'data/rigs/balcony.md';
const TEXT = 'src/register/text.ts';
const VERSION = 'src/analysis/version.ts';

let copy: ProjectCopy;
beforeAll(() => {
  copy = copyProject({ builtAs: inject('builtProject') });
  rmSync(join(copy.root, 'content/ledger'), { recursive: true, force: true });
  const { code, stderr } = copy.run('record', ['--reason', 'The state before the mutations', '--date', '2026-05-02']);
  if (code !== 0) throw new Error(stderr);
});
afterAll(() => copy[Symbol.dispose]());

/** Half a second more on the first source time, in whatever way it is written. */
const halfASecondMore = (csv: string): string =>
  csv.replace(
    /^(1,(?:\d+:)*)(\d+\.\d{3}),/m,
    (_all, before: string, seconds: string) => `${before}${(Number(seconds) + 0.5).toFixed(3).padStart(6, '0')},`,
  );
const coarser = (source: string): string => source.replace(/(placeOfSignificant\(\w+, )2\)/, '$11)');

/** What was recorded on a day, row by row. */
function tableOf(day: string): string {
  const name = readdirSync(join(copy.root, 'content/ledger/entries')).find(
    (file) => file.startsWith(day) && file.endsWith('.csv'),
  );
  return copy.read(`content/ledger/entries/${name}`);
}

function swap([one, two]: readonly [string, string]): void {
  const [first, second] = [copy.read(one), copy.read(two)];
  copy.write(one, second);
  copy.write(two, first);
}

interface Mutation {
  readonly name: string;
  /** Put back afterwards. */
  readonly files: readonly string[];
  mutate(): void;
  /** What a strict build must say, of which figure. */
  readonly says: readonly RegExp[];
}

const MUTATIONS: readonly Mutation[] = [
  {
    name: 'one reading is half a second longer',
    files: [READINGS],
    mutate: () => copy.edit(READINGS, halfASecondMore),
    says: [
      /\n {2}data\/sessions\/vennick-uhd30-a\.csv changed:\n(?: {4}[^\n]+\n)*? {4}total\/vennick-uhd30-a +[^\n]+ ms → [^\n]+ ms\n/,
    ],
  },
  {
    name: 'two bodies’ files change places',
    files: BODIES,
    mutate: () => swap(BODIES),
    says: [
      / {2}body\/vennick-q4 {2}was "Vennick Q4 [^"]+", is now "Dunmere 30 [^"]+": data\/bodies\/vennick-q4\.md changed\./,
      / {2}body\/dunmere-30 {2}was "Dunmere 30 [^"]+", is now "Vennick Q4 [^"]+": data\/bodies\/dunmere-30\.md changed\./,
    ],
  },
  {
    name: 'the readings of two bodies change places',
    files: SESSIONS,
    mutate: () => swap(SESSIONS),
    says: [
      /\n {2}data\/sessions\/vennick-uhd30-a\.csv changed:\n(?: {4}[^\n]+\n)*? {4}total\/vennick-uhd30-a +[^\n]+ ms → [^\n]+ ms\n/,
      /\n {2}data\/sessions\/dunmere-uhd30-a\.csv changed:\n(?: {4}[^\n]+\n)*? {4}total\/dunmere-uhd30-a +[^\n]+ ms → [^\n]+ ms\n/,
    ],
  },
  {
    name: 'a session is deleted',
    files: [`data/sessions/${UNNAMED}.csv`, `data/sessions/${UNNAMED}.md`],
    mutate: () => {
      for (const end of ['csv', 'md']) rmSync(join(copy.root, `data/sessions/${UNNAMED}.${end}`));
    },
    says: [
      new RegExp(
        `\n {2}data/sessions/${UNNAMED}\\.csv is gone; data/sessions/${UNNAMED}\\.md is gone:\n {4}count/sessions +\\d+ → \\d+\n`,
      ),
      new RegExp(
        ` {2}\\S+ {2}was "[^"]+", is no longer published: data/sessions/${UNNAMED}\\.csv is gone\\b[^;]*; data/sessions/${UNNAMED}\\.md is gone\\b`,
      ),
    ],
  },
  {
    name: 'the refresh of a rig is another',
    files: [RIG],
    mutate: () => copy.edit(RIG, (text) => text.replace(/^( {2}refresh:) \d+$/m, '$1 50')),
    says: [/ was "[^"]+", is now "[^"]+": data\/rigs\/balcony\.md changed\./],
  },
  {
    name: 'the rounding is another',
    files: [TEXT],
    mutate: () => copy.edit(TEXT, coarser),
    says: [
      / was "[^"]+", is now "[^"]+": no file changed and the analysis still calls itself version \S+: its code, or a library, changed without a new version in src\/analysis\/version\.ts\./,
    ],
  },
  {
    name: 'the rounding and the version are others',
    files: [TEXT, VERSION],
    mutate: () => {
      copy.edit(TEXT, coarser);
      copy.edit(VERSION, (text) => text.replace(/'[^']+'/, "'next'"));
    },
    says: [/ was "[^"]+", is now "[^"]+": the analysis went from version \S+ to version next\./],
  },
];

describe('a strict build', () => {
  it('says nothing of the state that was recorded', () => {
    const { code, stderr } = copy.run('figures');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  });

  it.each(MUTATIONS)('refuses it when $name, and names the cause', ({ files, mutate, says }) => {
    const before = files.map((path) => [path, copy.read(path)] as const);
    try {
      mutate();
      const { code, stderr } = copy.run('build', ['--strict']);
      expect({ code, published: existsSync(copy.dist) }).toEqual({ code: 1, published: false });
      expect(stderr).toMatch(/^Since the last record: .*(?:moved|gone).*\n/);
      expect(stderr).toMatch(/\n\n\d+ problems? in 1 file:\n\ncontent\/ledger\/figures\.csv:\d+ {2}\S+ {2}was "/);
      for (const words of says) expect(stderr).toMatch(words);
    } finally {
      for (const [path, text] of before) copy.write(path, text);
    }
  });

  it('publishes what moved once it is recorded, and readers are told where it stands', () => {
    copy.edit(READINGS, halfASecondMore);
    expect(copy.run('record', ['--reason', 'A source time was read again', '--date', '2026-06-01']).code).toBe(0);
    const { code, stderr } = copy.run('build', ['--strict']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const [from = '', to = ''] = ['2026-05-02', '2026-06-01'].map(
      (day) => /^total\/vennick-uhd30-a,,([^,]+),/m.exec(tableOf(day))?.[1],
    );
    expect(from).toMatch(/ms$/);
    expect(to).not.toBe(from);
    for (const page of ['corrections', 'reports/stage-screen', 'sessions/vennick-uhd30-a']) {
      // what holds a number together on one line is no part of it
      const html = copy.read(`dist/${page}/index.html`).replaceAll(/<span class="whole">|<\/span>/g, '');
      expect(html, page).toContain(`<del>${page.startsWith('sessions') ? from : from.replace(/ ms$/, '')}</del>`);
      expect(html, page).toContain(to);
      expect(html, page).toContain('1 June 2026');
      if (!page.startsWith('sessions')) expect(html, page).toContain('A source time was read again');
    }
  });

  it('leaves a page at the old address of a session that was renamed', () => {
    for (const end of ['csv', 'md']) {
      copy.write(`data/sessions/renamed.${end}`, copy.read(`data/sessions/${UNNAMED}.${end}`));
      copy.remove(`data/sessions/${UNNAMED}.${end}`);
    }
    const refused = copy.run('build', ['--strict']);
    expect(refused.stderr).toContain(
      `data/sessions/${UNNAMED}  is called data/sessions/renamed now, so its address is another.`,
    );
    expect(copy.run('record', ['--reason', 'A session has a better name', '--date', '2026-06-02']).code).toBe(0);
    expect(copy.run('build', ['--strict']).code).toBe(0);
    const old = copy.read(`dist/sessions/${UNNAMED}/index.html`);
    expect(old).toContain('content="0; url=../renamed/"');
    expect(old).toContain('href="../renamed/"');
    expect(copy.read('dist/corrections/index.html')).toContain('href="../sessions/renamed/"');
  });
});

it('the committed state is recorded: npm run demonstration-ledger records it afresh', async () => {
  const { bench, register } = await compileSite({
    root: PROJECT,
    dataDir: join(PROJECT, 'data'),
    contentDir: join(PROJECT, 'content'),
  });
  const changes = compareWithLedger(bench, register);
  expect(changes.added).toEqual([]);
  expect(checkLedger(bench, changes)).toEqual([]);
  expect(changes.unchanged).toBeGreaterThan(400);
});
