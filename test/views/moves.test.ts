import { expect, it } from 'vitest';
import { moveGroups } from '../../src/views/moves.ts';
import { bench, session } from '../support/small-bench.ts';

const site = {
  bench: bench([session('a', { resolution: 'hd', rate: '24', 'audio-out': 'off' })]),
  figure: () => undefined,
};

it('what moved is told by what kind of thing it is: the important first, limits and statistics folded', () => {
  const groups = moveGroups(
    [
      { id: 'mean/a', from: '251 ms', to: '249 ms' },
      { id: 'bracket/x', from: '0 to 9 ms', to: '0 to 8 ms' },
      { id: 'verdict/f/a/b', from: 'slower by 5 ± 1 ms', to: 'the same within ± 8.3 ms' },
      { id: 'verdict/f/a/c', from: 'slower by 5 ± 1 ms', to: 'slower by 6.2 ± 1.1 ms' },
      { id: 'rate-law-lack-of-fit/f', from: '0.59', to: '0.24' },
      { id: 'total/a', from: '251.9 ± 8.4 ms', to: '248.8 ± 5.1 ms' },
      { id: 'body/brae', from: 'Brae 1', to: 'Brae 2' },
      { id: 'total/b', from: '1 ms (u 2)', to: '1 ms (u 3)', quiet: 'behind' },
      { id: 'words/reports/r', from: '2 words (0123abcd)', to: '3 words (abcd0123)' },
      { id: 'level/audio-out/off', from: 'Off', to: 'On' },
      { id: 'finding/drift/a', from: 'note: one', to: 'note: other' },
    ],
    site,
  );
  expect(groups.map(({ title, isImportant }) => [title, isImportant])).toEqual([
    ['What bodies and sessions are', true],
    ['What displays, rigs and settings are', true],
    ['Texts revised', true],
    ['Latency measured', true],
    ['Bodies and settings compared', true],
    ['Verdicts whose words stay', false],
    ['Findings', false],
    ['Limits and parts of the chain', false],
    ['Counts and statistics', false],
    ['Behind the same words', false],
  ]);
});

it.each([
  ['251.9 ± 8.4 ms', '248.8 ± 5.1 ms', '251.9 ± 8.4'],
  ['7.55 ± 0.25 frames', '7.46 ± 0.15 frames', '7.55 ± 0.25'],
  ['−55 ± 11 ms', '−58.3 ± 8.4 ms', '−55 ± 11'],
  ['slower by 130 ± 10 ms', 'slower by 126.5 ± 7.8 ms', 'slower by 130 ± 10 ms'],
  ['251 ms', 'not to be judged', '251 ms'],
])('from %s to %s the unit is said once: %s', (from, to, shown) => {
  expect(moveGroups([{ id: 'total/a', from, to }], site)[0]?.rows[0]).toMatchObject({ from: shown, to });
});
