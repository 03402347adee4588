import { expect, it } from 'vitest';
import { parseReferences as parse } from '../../src/ingest/references.ts';
import type { Problem } from '../../src/model/problem.ts';

function parseReferences(source: string) {
  const problems: Omit<Problem, 'file'>[] = [];
  return { ...parse(source, (problem) => problems.push(problem)), problems };
}

const SOURCE = `---
title: A
---
The total is <Figure id="total/a" /> [here](/sessions/a/).

<FigureTable ids={["total/a", 'total/b']} where={{ resolution: 'uhd' }} wide limit={3} order={mine} />

import Mine from './mine.astro'
`;

it('finds every part with its place and its plain values', () => {
  const { parts, links, ownNames } = parseReferences(SOURCE);
  expect(parts).toEqual([
    {
      name: 'Figure',
      line: 4,
      column: 14,
      attributes: { id: { known: true, value: 'total/a' } },
      sentence: { before: 'The total is ', after: ' here.' },
    },
    {
      name: 'FigureTable',
      line: 6,
      column: 1,
      attributes: {
        ids: { known: true, value: ['total/a', 'total/b'] },
        where: { known: true, value: { resolution: 'uhd' } },
        wide: { known: true, value: true },
        limit: { known: true, value: 3 },
        order: { known: false },
      },
    },
  ]);
  expect(links).toEqual([{ to: '/sessions/a/', line: 4, column: 38 }]);
  expect(ownNames).toContain('Mine');
});

it('says where a text is not MDX', () => {
  const { parts, problems } = parseReferences('---\ntitle: A\n---\n\nHi <Figure id="x" \n\nmore');
  expect(parts).toEqual([]);
  expect(problems).toEqual([
    { code: 'bad-mdx', line: 5, column: 4, found: expect.stringMatching(/^Unexpected character after `<`.*\)$/) },
  ]);
});

it('does not mistake code for a part', () => {
  expect(parseReferences('`<Figure id="total/a" />`\n\n```mdx\n<Figure id="x" />\n```\n').parts).toEqual([]);
});

it('reads the words between the tags of a part, and what they hold', () => {
  const { parts } = parseReferences(
    'A <Claim of="x">slower by\n**at least** `100` ms</Claim> and <Claim of="y"><Figure id="z" /> [so](/x/)</Claim> <Claim></Claim>',
  );
  expect(parts.map(({ name, words, holds }) => [name, words, holds])).toEqual([
    ['Claim', 'slower by at least 100 ms', []],
    ['Claim', 'so', ['<Figure>', 'a link']],
    ['Figure', undefined, undefined],
    ['Claim', undefined, undefined],
  ]);
});

it('reads prose block by block, with the line of each piece', () => {
  const { prose } = parseReferences('# One\n\ntwo **three**\nfour `code`\n');
  expect(prose).toEqual([
    [{ text: 'One', line: 1 }],
    [
      { text: 'two ', line: 3 },
      { text: 'three', line: 3 },
      { text: '\nfour ', line: 3 },
      { text: 'code', line: 4 },
    ],
  ]);
});
