/**
 * That claims hold the demonstration's words to its data: a copy is changed, and a strict build must name the cause.
 */
import { existsSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { EVERY_EXAMPLE } from '../support/guide.ts';
import { copyProject, type ProjectCopy } from '../support/project-copy.ts';

let copy: ProjectCopy;
beforeAll(() => {
  copy = copyProject({ builtAs: inject('builtProject') });
  // Numbers are held to the state of this very commit.
  copy.remove('content/ledger');
  const { code, stderr } = copy.run('record', ['--reason', 'The state before the changes', '--date', '2026-05-02']);
  if (code !== 0) throw new Error(stderr);
});
afterAll(() => copy[Symbol.dispose]());

const session = (id: string): string => `data/sessions/${id}.csv`;
/** Half a second more on the first source time. */
/** One reading half a second off is taken for the misread that it is; all of them are a longer delay. */
const everyOneLonger = (csv: string): string =>
  csv.replace(
    /^(\d+,(?:\d+:)*)(\d+\.\d{3}),/gm,
    (_all, before: string, seconds: string) => `${before}${(Number(seconds) + 0.1).toFixed(3).padStart(6, '0')},`,
  );

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
  readonly says: readonly RegExp[];
}

const MUTATIONS: readonly Mutation[] = [
  {
    name: 'every reading is a tenth of a second longer',
    files: [session('vennick-uhd25-c')],
    mutate: () => copy.edit(session('vennick-uhd25-c'), everyOneLonger),
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
    name: 'two bodies’ files change places',
    files: ['data/bodies/vennick-q4.md', 'data/bodies/skelby-dome.md'],
    mutate: () => swap('data/bodies/vennick-q4.md', 'data/bodies/skelby-dome.md'),
    says: [/ {2}body\/vennick-q4 {2}was "[^"]+", is now "[^"]+": data\/bodies\/vennick-q4\.md changed\./],
  },
  {
    name: 'a session is deleted',
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
  it('accepts what the demonstration claims', () => expect(copy.run('figures')).toMatchObject({ code: 0, stderr: '' }));

  it.each(MUTATIONS)('refuses it when $name, and names the cause', ({ files, mutate, says }) => {
    const before = files.map((path) => [path, copy.read(path)] as const);
    try {
      mutate();
      const { code, stderr } = copy.run('build', ['--strict']);
      expect({ code, published: existsSync(copy.dist) }).toEqual({ code: 1, published: false });
      for (const words of says) expect(stderr).toMatch(words);
    } finally {
      for (const [path, text] of before) copy.write(path, text);
    }
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

describe('every example of the authoring guide', () => {
  it('builds, and is drawn', () => {
    copy.write('content/reports/every-part.mdx', EVERY_EXAMPLE);
    copy.build();
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
    copy.remove('content/reports/every-part.mdx');
  });
});
