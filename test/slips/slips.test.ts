import { writeFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { seededRandom } from '../../src/analysis/random.ts';
import { ProblemsError } from '../../src/model/problem.ts';
import { compileCopy, demonstrationCopy, runSlips } from './run-slips.ts';

it('a few single slips of the demonstration are refused, found, or change nothing', async () => {
  const outcomes = await runSlips(1, 32);
  expect(outcomes.length).toBe(32);
  expect(outcomes.filter(({ end }) => end === 'got through' || end === 'crash')).toEqual([]);
  // One cause is one problem: what is sound is not blamed for a fault elsewhere.
  expect(outcomes.filter(({ end, elsewhere }) => end === 'refused' && elsewhere.length > 0)).toEqual([]);
});

it('files with bytes cut, doubled or replaced never end as an error without a file', async () => {
  using copy = demonstrationCopy();
  const random = seededRandom(7);
  const nat = (below: number): number => Math.floor(random.uniform() * below);
  const files = [
    'data/settings.yaml',
    'data/rigs/pit.md',
    'data/displays/pit-monitor.md',
    'data/sessions/vennick-uhd25-a.csv',
    'data/sessions/vennick-uhd25-a.md',
    'content/reports/stage-screen.mdx',
  ];
  let refused = 0;
  for (let at = 0; at < 18; at += 1) {
    const path = join(copy.root, files[at % files.length] ?? '');
    const sound = readFileSync(path);
    const [from, length] = [nat(sound.length), 1 + nat(40)];
    const scrap = Buffer.from(['', '\n', '---\n', '"', '{', ': ', ',,', '\0', '\u202e', '9'.repeat(30)][nat(10)] ?? '');
    writeFileSync(path, Buffer.concat([sound.subarray(0, from), scrap, sound.subarray(from + (at % 3) * length)]));
    try {
      await compileCopy(copy.root);
    } catch (error) {
      if (!(error instanceof ProblemsError)) throw error;
      refused += 1;
    }
    writeFileSync(path, sound);
  }
  expect(refused).toBeGreaterThan(6);
});
