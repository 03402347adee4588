/** That authors find in the guide what their own publication has, whatever the examples are of. */
import { expect, it } from 'vitest';
import { guidePage } from '../../src/write-ups/guide-page.ts';
import { bench, session } from '../support/small-bench.ts';

const small = bench([session('one', { resolution: 'hd', rate: '24', 'audio-out': 'on' })]);

it('lists bodies, rigs and displays by the ids that parts take, and each setting with its levels', () => {
  const own = new Map(guidePage({ bench: small }).own.map(({ name, ids }) => [name, ids]));
  expect(own.get('bodies')).toEqual(['alba-one', 'brae']);
  expect(own.get('rigs')).toEqual(['attic']);
  expect(own.get('displays')).toEqual(['screen']);
  expect(own.get('setting resolution')).toEqual(['hd', 'uhd']);
});

it('leaves out what there is none of', () => {
  expect(small.links).toEqual([]);
  expect(guidePage({ bench: small }).own.map(({ name }) => name)).not.toContain('links');
});
