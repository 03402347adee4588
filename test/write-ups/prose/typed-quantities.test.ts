import { describe, expect, it } from 'vitest';
import { typedQuantities } from '../../../src/write-ups/prose/typed-quantities.ts';
import { describeProblem } from '../../../src/model/problem-text.ts';
import { TYPED_CODES } from '../../../src/model/problem.ts';
import { checkTyped } from '../../../src/write-ups/prose/typed-quantities.ts';
import { readChanged, VALID_FILES, type Files } from '../../support/bench-folder.ts';

const REPORT = 'content/reports/first.mdx';
const FRONT = '---\ntitle: First\nsummary: The first.\ndate: 2026-04-12\n---\n\n';

async function found(changes: Files): Promise<readonly string[]> {
  const bench = await readChanged(changes);
  return typedQuantities(bench).map(({ file, line, text }) => `${file.split('/').at(-1)}:${line} ${text}`);
}
const inReport = async (text: string): Promise<readonly string[]> =>
  (await found({ [REPORT]: FRONT + text })).map((each) => each.replace(/^.*?:/, ''));

describe('of a write-up', () => {
  it('finds what was typed wherever a reader reads it, with its line', async () => {
    expect(
      await found({
        [REPORT]: `---
title: Late by 40 ms
summary: >
  It gains
  30 % of it.
author: "The half-\\u0066rame team"
date: 2026-01-05
---

## A step of 5 ms

It takes **307**
ms, [12 ms more](/reports/first/ "for 13 ms"), <abbr title="14 ms">soon</abbr>, 300&nbsp;m&shy;s, \`15 ms\`.

- 7.4 frames, and 21{/* nothing */} ms, 22<b></b> ms

> a quotation of 8 ms

| a | Lag / ms |
|---|---|
| 9 ms | 10 |

\`\`\`
11 ms
\`\`\`

<FigureTable kind="total" caption="Below 100 ms" />

<details>

<summary>After 16 <b>ms</b></summary>

Inside, 6 ms.[^1]

</details>

<p>17 <b>ms</b></p>

[^1]: Or 18 ms.
`,
      }),
    ).toEqual(
      [
        '2 40 ms',
        '5 30 %',
        '6 half-frame',
        '10 5 ms',
        '12 307 ms',
        '13 12 ms',
        '13 300 m\u00ads',
        '13 15 ms',
        '13 for 13 ms',
        '13 14 ms',
        '15 7.4 frames',
        '15 21 ms',
        '15 22 ms',
        '17 8 ms',
        '21 9 ms',
        '21 10 ms',
        '24 11 ms',
        '27 100 ms',
        '31 16 ms',
        '33 6 ms',
        '37 17 ms',
        '39 18 ms',
      ].map((each) => `first.mdx:${each.replace('for ', '')}`),
    );
  });

  it('lets link targets, properties that are no prose, and what is marked stand', async () => {
    expect(
      await inReport(
        '[x](</reports/first/?5 ms>) <Quoted from="a standard of 3 ms">125 ms</Quoted> <Setting>2 ms</Setting>, `<Verdict margin="8 m">`\n\n<Setting>\n```yaml\nexposure: 1/500 s\n```\n</Setting>\n',
      ),
    ).toEqual([]);
  });

  it('takes the rates that the bench sets or runs at for settings, and no others', async () => {
    expect(
      await inReport(
        'At 59.94 frames a second, 24 fps, on a 60 Hz screen, sixty times a second; then 47 frames a second.',
      ),
    ).toEqual(['7 47 frames a second']);
  });
});

describe('of notes', () => {
  const NOTE = 'Late by 9 ms, 7 frames.';

  it.each([
    'content/site.md',
    'data/bodies/vennick.md',
    'data/displays/screen.md',
    'data/links/air.md',
    'data/rigs/balcony.md',
    'data/sessions/a.md',
  ] as const)('finds them in %s', async (file) => {
    const text = `${VALID_FILES[file]}\n${NOTE}\n`;
    const line = text.split('\n').indexOf(NOTE) + 1;
    const name = file.split('/').at(-1);
    expect(await found({ [file]: text })).toEqual([`${name}:${line} 9 ms`, `${name}:${line} 7 frames`]);
  });

  it('finds them in the texts of front matter', async () => {
    expect(
      await found({
        'content/site.md': '---\ntitle: T\ntagline: 300 ms and less\npublisher: P\n---\n\nHello.\n',
        'data/links/air.md':
          '---\nname: Air\nlatency: { value: 1.5 ms, uncertainty: 0.2 ms, source: its sheet says 1.5 ms or 9 ms }\n---\n',
        'data/rigs/pit.md':
          '---\nname: Pit\nsource-timer:\n  name: Tablet, 5 ms\n  refresh: 120\n  wraps-after: 60 s\ndisplay: screen\n---\n',
      }),
    ).toEqual(['site.md:3 300 ms', 'air.md:3 9 ms', 'pit.md:4 5 ms']);
  });

  it('lets stand what the file itself states, and what is marked', async () => {
    const note =
      'The timer runs at 60 Hz, the observer at 120 frames a second, with 1/500 s or 2 ms; <Setting>3 ms</Setting>, <Quoted from="x">4 ms</Quoted>.';
    expect(
      await found({ 'data/rigs/balcony.md': `${VALID_FILES['data/rigs/balcony.md']}\n${note} Or 5 ms.\n` }),
    ).toEqual(['balcony.md:13 5 ms']);
  });
});

it('is refused by a strict build with its place and the ways out', async () => {
  const problems = checkTyped(await readChanged({ [REPORT]: `${FRONT}It takes 300 ms.\n` }));
  expect(problems.map(describeProblem)).toEqual([
    'content/reports/first.mdx:7  "300 ms" was typed by hand, so it stays as it is when the data move. Ask for it with <Figure>, bind it to data with <Claim>, or mark it as meant: <Quoted from="…"> for a number from elsewhere, <Setting> for one that was chosen or planned; titles and captions do without it.',
  ]);
  expect(problems.map(({ code }) => code)).toEqual(TYPED_CODES);
});

describe('of a size that has no number of its own', () => {
  it.each([
    ['1<Figure id="total/a" />', '1…'],
    ['It is 0.<Figure id="total/a" />', '0.…'],
    ['It is −<Figure id="total/a" />', '−…'],
    ['<Figure id="count/sessions" />00 sessions', '…0'],
    ['<Figure id="total/a" />e3', '…e3'],
    ['half of <Figure id="total/a" />', 'half of …'],
    ['twice the <Figure id="total/a" />', 'twice the …'],
    ['three times <Figure id="total/a" />', 'three times …'],
    ['<Figure id="total/a" /> / 2', '… / 2'],
    ['<Figure id="total/a" /> × 2', '… × 2'],
    ['<Figure id="total/a" /> divided by two', '… divided by two'],
    ['<Figure id="total/a" /> and a half', '… and a half'],
    ['<Figure id="count/sessions" /> ms', '… ms'],
    ['<Figure id="count/sessions" />%', '…%'],
    ['late by a few frames', 'a few frames'],
    ['late by a handful of frames', 'a handful of frames'],
    ['late by several milliseconds', 'several milliseconds'],
    ['late by tens of milliseconds', 'tens of milliseconds'],
  ])('%j', async (text, found) => expect(await inReport(text)).toEqual([`7 ${found}`]));

  it.each([
    'from <Figure id="minimum/a" /> to <Figure id="maximum/a" />',
    '<Figure id="minimum/a" />–<Figure id="maximum/a" />',
    'In 2026, <Figure id="total/a" />; <Figure id="count/sessions" /> times.',
    'a clip of a few seconds, a few runs, several sessions',
    'Frames: <Figure id="count/sessions" /> sessions, in <Figure id="total/a" />.',
  ])('and finds none in %j', async (text) => expect(await inReport(text)).toEqual([]));
});

describe('of a number and a unit in two blocks', () => {
  it.each([
    ['the mark of an item', '300. ms is what it takes', '7 300 ms'],
    ['the first mark of a list', '<ol start="300"><li>ms is what it takes</li></ol>', '7 300 ms'],
    ['the mark of one item', '<ol><li value="300">ms is what it takes</li></ol>', '7 300 ms'],
    ['two cells', '| a | b |\n|-|-|\n| 300 | ms |', '9 300 ms'],
    ['a head of more words', '| Lag in milliseconds, all told |\n|-|\n| 300 |', '9 300 milliseconds'],
    ['a term and what it means', '<dl><dt>300</dt><dd>ms</dd></dl>', '7 300 ms'],
    ['the head of a row and its cell', '| what | value |\n|-|-|\n| lag in ms | 300 |', '9 300 ms'],
    ['a fold and what it hides', '<details><summary>300 ms</summary>later</details>', '7 300 ms'],
    ['two paragraphs', '<p>It takes 300</p><p>ms of time</p>', '7 300 ms'],
    ['a heading and its text', '## It takes 300\n\nmilliseconds.', '7 300 milliseconds'],
  ])('%s', async (_what, text, found) => expect(await inReport(text)).toEqual([found]));

  it.each([
    ['a list from one', '1. ms stands for milliseconds\n2. frames are what a body puts out'],
    ['the ends of rows', '| a | b |\n|-|-|\n| lost | 10 |\n| frames kept | 12 |'],
    ['a sentence of its own', '## What changed in 2026\n\nFrames are counted.'],
  ])('and finds none in %s', async (_what, text) => expect(await inReport(text)).toEqual([]));
});
