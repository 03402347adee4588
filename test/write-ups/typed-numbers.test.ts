import { expect, it } from 'vitest';
import { typedNumbers } from '../../src/write-ups/prose/typed-numbers.ts';
import { parseReferences } from '../../src/ingest/references.ts';
import type { WriteUp } from '../../src/model/bench.ts';
import { bench } from '../support/small-bench.ts';

function found(text: string): readonly string[] {
  const refuse = (): never => {
    throw new Error('the text of a test must be MDX');
  };
  const report: WriteUp = {
    id: 'r',
    title: 'r',
    summary: 'r',
    date: '2026-01-05',
    ...parseReferences(text, refuse),
    text,
    file: { path: 'content/reports/r.mdx', sha256: '0'.repeat(64), bytes: text.length },
  };
  return typedNumbers(bench([], { reports: [report] })).map(
    ({ where, message }) => `${where['place']?.split(':')[1]} ${/“(.*)”/.exec(message)?.[1]}`,
  );
}

it('finds what was typed into text, headings, lists, cells, quotations, captions, title and summary, with its line', () => {
  expect(
    found(`---
title: Late by 40 ms
summary: >
  It gains
  30 % of it.
date: 2026-01-05
---

## A step of 5 ms

It takes **307**
ms, and [12 ms more](/x/).

- 7.4 frames

> a quotation of 8 ms

| a | b |
|---|---|
| 1 | 9 ms |

<FigureTable ids={["total/a"]}
  caption="Below 100 ms" />

<Note>

Inside, 6 ms.

</Note>
`),
  ).toEqual([
    '2 40 ms',
    '5 30 %',
    '9 5 ms',
    '11 307 ms',
    '12 12 ms',
    '14 7.4 frames',
    '16 8 ms',
    '20 9 ms',
    '22 100 ms',
    '27 6 ms',
  ]);
});

it('lets code, link targets, properties and what is marked stand', () => {
  expect(
    found(
      '`5 ms` [x](/5 ms/) <Quoted from="a standard of 3 ms">125 ms</Quoted> <Setting>2 ms</Setting> <Verdict of="a" than="b" margin="8 ms" />\n\n```\n5 ms\n```\n'.replace(
        '/5 ms/',
        '</5 ms/>',
      ),
    ),
  ).toEqual([]);
});

it('takes the rates that the bench sets or runs at for settings, and no others', () => {
  expect(found('At 59.94 frames a second, 24 fps, on a 60 Hz screen; then 47 frames a second.')).toEqual([
    '1 47 frames a second',
  ]);
});

it('holds the words of a claim to what it asserts', () => {
  expect(
    found(
      '<Claim of="total/a" atLeast="100 ms">at least 100 milliseconds</Claim>, <Claim of="total/a" atLeast="100 ms">at least 120 ms</Claim>',
    ),
  ).toEqual(['1 120 ms']);
});
