import { expect, it } from 'vitest';
import type { Figure } from '../../src/register/register.ts';
import { printView, readPage } from '../../src/views/printed-page.ts';

const figure: Figure = {
  id: 'total/a',
  kind: 'total',
  of: { session: 'a' },
  unit: 'ms',
  value: 300,
  standardUncertainty: 2,
  interval: { low: 296, high: 304, level: 0.95 },
  readings: 3,
  runs: 1,
  excluded: 0,
  components: [],
  sources: [{ file: 'data/sessions/a.csv', sha256: '0' }],
  text: '300.0 ± 4.0 ms',
  label: 'Total latency',
  entry: '/sessions/a/#total',
};
const reread = (view: unknown): unknown => readPage({ text: () => printView(view) });

it('is the view as it was, without what is undefined', () => {
  const view = { words: 'a ± b', list: [1, [null, true]], none: undefined, nested: { number: -0.5 } };
  expect(reread(view)).toEqual(view);
});

it('holds of a figure what pages print of it, so that other files and budgets draw no page anew', () => {
  const { kind: _kind, of: _of, standardUncertainty: _u, components: _c, sources: _s, ...printed } = figure;
  expect(reread({ deep: [{ figure }] })).toStrictEqual({ deep: [{ figure: printed }] });
  expect(printView(figure)).toBe(printView({ ...figure, sources: [], components: [], standardUncertainty: 3 }));
  expect(printView(figure)).not.toBe(printView({ ...figure, text: '300.0 ± 4.1 ms' }));
});

it.each([
  ['a number without end', Number.POSITIVE_INFINITY],
  ['no number', Number.NaN],
  ['a function', () => 1],
  ['a map', new Map([[1, 2]])],
  ['a set', new Set([1])],
  ['a day', new Date(0)],
  ['a class of its own', new (class Own {})()],
  ['a hole in a list', [undefined]],
  ['a big integer', 1n],
])('refuses what would be lost on the way: %s', (_what, value) => {
  expect(() => printView({ view: { lost: value } })).toThrow(TypeError);
});
