/**
 * That no character of an author's file changes in silence: it is refused where it is read, or something is said to
 * have moved.
 */
import { expect, it } from 'vitest';
import { seededRandom } from '../../src/analysis/random.ts';
import { compareWithLedger, isUnchanged } from '../../src/ledger/compare.ts';
import { ProblemsError } from '../../src/model/problem.ts';
import { compileSite } from '../../src/site/compile.ts';
import { ledgerAfter } from '../support/ledger.ts';
import { VALID_FILES, writeBenchFolder, type Files } from '../support/bench-folder.ts';

const FILES: Files = {
  ...VALID_FILES,
  'content/reports/first.mdx': `---
title: First
summary: The first report.
date: 2026-04-12
author: A. Nobody
---

The picture comes <Figure id="total/a" /> late, {/* a comment */} which is *long*.

| a table | of two cells |
|---|---|
| one | [another](/method/) |

<FigureTable kind="total" caption="All of them." />
`,
};
const EDITS = 104;

async function compile(changes: Files) {
  using folder = writeBenchFolder(changes);
  const folders = { root: folder.root, dataDir: `${folder.root}/data`, contentDir: `${folder.root}/content` };
  return await compileSite(folders);
}

/** Characters that tell something: no blank, and nothing in a comment. */
function tellingPlaces(text: string): readonly number[] {
  const comments = [...text.matchAll(/\{\/\*.*?\*\/\}/gs)].map(
    ({ index, 0: all }) => [index, index + all.length] as const,
  );
  return [...text.matchAll(/[\p{L}\d]/gu)]
    .map(({ index }) => index)
    .filter((index) => !comments.some(([from, to]) => index >= from && index < to));
}

it('an edit of one letter or digit anywhere is refused, or moves something', async () => {
  const before = await compile(FILES);
  const ledger = ledgerAfter([{ bench: before.bench, date: '2026-05-01' }]);
  const random = seededRandom(20260501);
  const paths = Object.keys(FILES);
  const ends = { refused: 0, shown: 0 };
  const silent: string[] = [];
  for (let edit = 0; edit < EDITS; edit += 1) {
    const path = paths[edit % paths.length] ?? '';
    const text = String(FILES[path]);
    const places = tellingPlaces(text);
    const at = places[Math.floor(random.uniform() * places.length)] ?? 0;
    const found = text[at] ?? '';
    const other = /\d/.test(found) ? String((Number(found) + 1) % 10) : found === 'x' ? 'y' : 'x';
    const mutated = text.slice(0, at) + other + text.slice(at + 1);
    try {
      const { bench, register } = await compile({ ...FILES, [path]: mutated });
      if (isUnchanged(compareWithLedger({ ...bench, ledger }, register)))
        silent.push(`${path}: ${mutated.slice(Math.max(0, at - 20), at + 20)}`);
      else ends.shown += 1;
    } catch (error) {
      if (!(error instanceof ProblemsError)) throw error;
      ends.refused += 1;
    }
  }
  expect(silent).toEqual([]);
  // the test sees both ends
  expect(ends.refused).toBeGreaterThan(15);
  expect(ends.shown).toBeGreaterThan(25);
}, 600_000);
