/** Parts of a chain as pages list them, from figures written out here. */
import { expect, it } from 'vitest';
import { lookup } from '../../src/register/lookup.ts';
import type { Figure } from '../../src/register/register.ts';
import { briefRows, chainRows } from '../../src/views/chain-rows.ts';
import { bench } from '../support/small-bench.ts';

const figure = (kind: 'bracket' | 'element', element: string, high?: number): Figure => ({
  id: `${kind}/${element}`,
  kind,
  of: {},
  unit: 'ms',
  value: 0,
  readings: 0,
  runs: 0,
  excluded: 0,
  ...(high === undefined ? {} : { limits: { low: 0, high } }),
  sources: [],
  text: '',
  label: '',
  entry: '',
});
const whole = bench([], {
  links: [
    {
      id: 'radio',
      name: 'Radio pair',
      invented: true,
      description: '',
      prose: [],
      file: { path: 'data/links/radio.md', sha256: '0'.repeat(64), bytes: 1 },
    },
  ],
});
const find = lookup(whole);
const figures = [
  figure('bracket', 'body/alba-one/24', 300),
  figure('element', 'link/radio', 20),
  figure('bracket', 'body/alba-one/25', 200),
  figure('bracket', 'body/brae/24'),
  figure('bracket', 'body/alba-one/24/than/link/radio', 1),
  figure('bracket', 'display/screen', 50),
  figure('bracket', 'link/radio', 40),
];
const rows = chainRows(whole, find, figures);

it('displays come first, then links, then bodies, each once with its limits and its latency', () => {
  expect(rows.map(({ type, name, bracket, latency }) => [type, name, bracket?.id, latency?.id])).toEqual([
    ['display', 'Screen', 'bracket/display/screen', undefined],
    ['link', 'Radio pair', 'bracket/link/radio', 'element/link/radio'],
    ['body', 'alba-one/24', 'bracket/body/alba-one/24', undefined],
    ['body', 'alba-one/25', 'bracket/body/alba-one/25', undefined],
    ['body', 'brae/24', 'bracket/body/brae/24', undefined],
  ]);
});

it('in brief, each body stands once, in the condition whose upper limit is least', () => {
  expect(briefRows(rows, find).map(({ name, element }) => [name, element])).toEqual([
    ['Screen', 'display/screen'],
    ['Radio pair', 'link/radio'],
    ['Alba One, at its fastest', 'body/alba-one/25'],
    ['Brae, at its fastest', 'body/brae/24'],
  ]);
});
