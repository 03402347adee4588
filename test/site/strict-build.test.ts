/**
 * That no published number moves in silence, and that claims hold the demonstration's words to its data: a copy of it is
 * recorded, changed, and built strictly.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { checkLedger } from '../../src/ledger/check.ts';
import { compareWithLedger } from '../../src/ledger/compare.ts';
import { compileSite } from '../../src/site/compile.ts';
import { EVERY_EXAMPLE } from '../support/guide.ts';
import { copyProject, type ProjectCopy } from '../support/project-copy.ts';
import { PROJECT, projectFiles } from '../support/project-files.ts';

const session = (id: string): string => `data/sessions/${id}.csv`;
const READINGS = session('vennick-uhd30-a');
const BODIES = ['data/bodies/vennick-q4.md', 'data/bodies/dunmere-30.md'] as const;
/** A session that no write-up names, so that it is the ledger which notices that it is gone. */
const UNNAMED = projectFiles('data/sessions')
  .map((path) => path.replace(/^.*\/|\.[^.]*$/g, ''))
  .find(
    (id) =>
      !projectFiles('content')
        .filter((path) => path.endsWith('.mdx'))
        .some((path) => readFileSync(join(PROJECT, path), 'utf8').includes(id)),
  );
const TEXT = 'src/register/text.ts';

let copy: ProjectCopy;
beforeAll(() => {
  copy = copyProject({ builtAs: inject('builtProject') });
  // Numbers are held to the state of this very commit.
  copy.remove('content/ledger');
  const { code, stderr } = copy.run('record', ['--reason', 'The state before the changes', '--date', '2026-05-02']);
  if (code !== 0) throw new Error(stderr);
});
afterAll(() => copy[Symbol.dispose]());

/** Source times of a readings file, later by so much. */
const later =
  (seconds: number, which: 'first' | 'all') =>
  (csv: string): string =>
    csv.replace(
      new RegExp(String.raw`^(\d+,(?:\d+:)*)(\d+\.\d{3}),`, which === 'all' ? 'gm' : 'm'),
      (_all, before: string, read: string) => `${before}${(Number(read) + seconds).toFixed(3).padStart(6, '0')},`,
    );
const coarser = (source: string): string => source.replace(/(placeOfSignificant\(\w+, )2\)/, '$11)');

/** What was recorded on a day, row by row. */
function tableOf(day: string): string {
  const name = readdirSync(join(copy.root, 'content/ledger/entries')).find(
    (file) => file.startsWith(day) && file.endsWith('.csv'),
  );
  return copy.read(`content/ledger/entries/${name}`);
}

function swap(one: string, two: string): void {
  const [first, second] = [copy.read(one), copy.read(two)];
  copy.write(one, second);
  copy.write(two, first);
}

interface Mutation {
  readonly name: string;
  /** Put back afterwards. */
  readonly files: readonly string[];
  mutate(): void;
  /** What a strict build must say, of which figure or claim. */
  readonly says: readonly RegExp[];
}

/** Of numbers that moved, and that no claim rests on. */
const NUMBERS: readonly Mutation[] = [
  {
    name: 'one reading is half a second longer',
    files: [READINGS],
    mutate: () => copy.edit(READINGS, later(0.5, 'first')),
    says: [
      /\n {2}data\/sessions\/vennick-uhd30-a\.csv changed:\n(?: {4}[^\n]+\n)*? {4}total\/vennick-uhd30-a +[^\n]+ ms → [^\n]+ ms\n/,
    ],
  },
  {
    name: 'two bodies’ files change places',
    files: BODIES,
    mutate: () => swap(...BODIES),
    says: [
      / {2}body\/vennick-q4 {2}was "Vennick Q4 [^"]+", is now "Dunmere 30 [^"]+": data\/bodies\/vennick-q4\.md changed\./,
      / {2}body\/dunmere-30 {2}was "Dunmere 30 [^"]+", is now "Vennick Q4 [^"]+": data\/bodies\/dunmere-30\.md changed\./,
    ],
  },
  {
    name: 'a session that no write-up names is deleted',
    files: [`data/sessions/${UNNAMED}.csv`, `data/sessions/${UNNAMED}.md`],
    mutate: () => {
      for (const end of ['csv', 'md']) copy.remove(`data/sessions/${UNNAMED}.${end}`);
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
    name: 'the rounding is another',
    files: [TEXT],
    mutate: () => copy.edit(TEXT, coarser),
    says: [
      / was "[^"]+", is now "[^"]+": no file changed and the analysis still calls itself version \S+: its code, or a library, changed without a new version in src\/analysis\/version\.ts\./,
    ],
  },
];

/** Of claims that the data no longer support. */
const CLAIMS: readonly Mutation[] = [
  {
    name: 'every reading is a tenth of a second longer',
    files: [session('vennick-uhd25-c')],
    mutate: () => copy.edit(session('vennick-uhd25-c'), later(0.1, 'all')),
    says: [
      /^content\/reports\/how-we-measure\.mdx:\d+:\d+ {2}Claim {2}the data do not support "within half a frame" \(the same within half a frame\): difference\/vennick-uhd25-c\/vennick-uhd25-b is [^;]+; its interval ends [\d.]+ ms too high\. Since the last record: data\/sessions\/vennick-uhd25-c\.csv changed\./m,
    ],
  },
  {
    name: 'the readings of two bodies change places',
    files: [session('skelby-uhd25-a'), session('dunmere-uhd25-a')],
    mutate: () => swap(session('skelby-uhd25-a'), session('dunmere-uhd25-a')),
    says: [
      /"the Skelby leads" \(the lowest, told from every other\): total\/skelby-uhd25-a is [^;]+; total\/dunmere-uhd25-a \([^)]+\) is beyond it by [\d.]+ ms\. Since the last record: data\/sessions\/skelby-uhd25-a\.csv changed\./,
      /"the Dunmere is last at either rate" \(the highest, told from every other\): total\/dunmere-uhd25-a is .* Since the last record: data\/sessions\/dunmere-uhd25-a\.csv changed\./,
    ],
  },
  {
    name: 'a session that a write-up names is deleted',
    files: [session('dunmere-uhd25-a'), 'data/sessions/dunmere-uhd25-a.md'],
    mutate: () => {
      copy.remove(session('dunmere-uhd25-a'));
      copy.remove('data/sessions/dunmere-uhd25-a.md');
    },
    says: [/^content\/reports\/stage-screen\.mdx:\d+:\d+ {2}Claim than {2}unknown session "dunmere-uhd25-a"/m],
  },
  {
    name: 'the refresh of a rig is another',
    files: ['data/rigs/balcony.md'],
    mutate: () => copy.edit('data/rigs/balcony.md', (text) => text.replace(/^( {2}refresh:) \d+$/m, '$1 50')),
    says: [/data\/rigs\/balcony\.md changed/],
  },
];

describe('a strict build', () => {
  it('says nothing of the state that was recorded, and accepts what the demonstration claims', () => {
    const { code, stderr } = copy.run('figures');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  });

  /** What it says while a mutation stands. */
  function refusalOf({ files, mutate }: Mutation): string {
    const before = files.map((path) => [path, copy.read(path)] as const);
    try {
      mutate();
      const { code, stderr } = copy.run('build', ['--strict']);
      expect({ code, published: existsSync(copy.dist) }).toEqual({ code: 1, published: false });
      return stderr;
    } finally {
      for (const [path, text] of before) copy.write(path, text);
    }
  }

  it.each(NUMBERS)('refuses it when $name, and names the cause', (mutation) => {
    const stderr = refusalOf(mutation);
    expect(stderr).toMatch(/^Since the last record: .*(?:moved|gone).*\n/);
    expect(stderr).toMatch(/\n\n\d+ problems? in 1 file:\n\ncontent\/ledger\/figures\.csv:\d+ {2}\S+ {2}was "/);
    for (const words of mutation.says) expect(stderr).toMatch(words);
  });

  it.each(CLAIMS)('refuses it when $name, and names the claim and the cause', (mutation) => {
    const stderr = refusalOf(mutation);
    for (const words of mutation.says) expect(stderr).toMatch(words);
  });

  it('reports every failing claim at once', () => {
    copy.write(
      'content/reports/x-claims.mdx',
      `---
title: X
summary: X
date: 2026-04-21
---

<Claim of="count/bodies" exactly="4">four bodies</Claim>, <Claim of="total/vennick-uhd25-a" atMost="100 ms">at most 100 ms</Claim>
`,
    );
    const { code, stderr } = copy.run('build');
    copy.remove('content/reports/x-claims.mdx');
    expect(code).toBe(1);
    expect(stderr).toMatch(/^2 problems in 1 file:/);
    expect(stderr).toContain('the data do not support "four bodies" (exactly 4): count/bodies is 3; 1.0 too low.');
    expect(stderr).toMatch(
      /the data do not support "at most 100 ms" \(at most 100 ms\): total\/vennick-uhd25-a is \S+ ± \S+ ms, 95 % interval \S+ to \S+ ms; its interval ends \S+ ms too high\./,
    );
  });
});

describe('what moved, and was recorded', () => {
  it('is built strictly, with the old address of a renamed session', () => {
    copy.edit(READINGS, later(0.5, 'first'));
    expect(copy.run('record', ['--reason', 'A source time was read again', '--date', '2026-06-01']).code).toBe(0);
    for (const end of ['csv', 'md']) {
      copy.write(`data/sessions/renamed.${end}`, copy.read(`data/sessions/${UNNAMED}.${end}`));
      copy.remove(`data/sessions/${UNNAMED}.${end}`);
    }
    const refused = copy.run('build', ['--strict']);
    expect(refused.stderr).toContain(
      `data/sessions/${UNNAMED}  is called data/sessions/renamed now, so its address is another.`,
    );
    copy.write('content/reports/every-part.mdx', EVERY_EXAMPLE);
    expect(copy.run('record', ['--reason', 'A session has a better name', '--date', '2026-06-02']).code).toBe(0);
    const { code, stderr } = copy.run('build', ['--strict']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  });

  it('is told to readers where it stands', () => {
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

  it('leads on from the old address of a session that was renamed', () => {
    const old = copy.read(`dist/sessions/${UNNAMED}/index.html`);
    expect(old).toContain('content="0; url=../renamed/"');
    expect(old).toContain('href="../renamed/"');
    expect(copy.read('dist/corrections/index.html')).toContain('href="../sessions/renamed/"');
  });
});

it('every example of the authoring guide is drawn', () => {
  const html = copy.read('dist/reports/every-part/index.html');
  for (const sign of [
    'data-claim="difference/vennick-uhd25-genlock/vennick-uhd25-b"',
    'data-quoted="ITU-R BT.1359-1"',
    'data-setting',
    'data-figure="total/vennick-uhd25-a"',
    '>Skelby Dome</a>',
  ])
    expect(html).toContain(sign);
  expect(html).not.toMatch(/&lt;[A-Z]/);
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
