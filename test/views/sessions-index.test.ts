import { expect, it } from 'vitest';
import { compileBench } from '../../src/site/compile.ts';
import { filterRules, sessionsIndex } from '../../src/views/sessions-index.ts';
import { bench, session } from '../support/small-bench.ts';

const hd = (rate: string) => ({ resolution: 'hd', rate, 'audio-out': 'off' });

it('every session says by which options it is found, and a chosen option hides all others', () => {
  const index = sessionsIndex(
    compileBench(bench([session('a', hd('24')), session('b', hd('59.94'), { body: 'brae' })])),
  );
  expect(index.rows.map(({ session: { id }, classes }) => [id, classes])).toEqual([
    ['a', 'body-alba-one rig-attic rate-0'],
    ['b', 'body-brae rig-attic rate-1'],
  ]);
  expect(index.filters.map(({ id, options }) => [id, options.map(({ label }) => label)])).toEqual([
    ['body', ['Alba One', 'Brae']],
    ['rig', ['Attic']],
    ['rate', ['24 frames/s', '59.94 frames/s']],
  ]);
  expect(filterRules(index).split('\n')).toContain(
    'main:has(#filter-body-brae:checked) .sessions tbody tr:not(.body-brae) { display: none; }',
  );
  expect(filterRules(index).split('\n')).toHaveLength(5);
});

it('without a session there is nothing to choose', () => {
  const { rows, filters } = sessionsIndex(compileBench(bench([])));
  expect([rows, filters.flatMap(({ options }) => options)]).toEqual([[], []]);
});
