import { expect, it } from 'vitest';
import { differingSettings, findMatchedPairs, type PairCandidate } from '../../src/analysis/matched-pairs.ts';

const order = { rate: ['24', '30', '60'], audio: ['off', 'on'] };
const session = (id: string, rate: string, audio: string, context = 'vennick, balcony'): PairCandidate => ({
  id,
  context,
  settings: { rate, audio },
});

it('pairs sessions that differ in exactly one setting, lower level first', () => {
  const got = findMatchedPairs(
    [session('d', '60', 'on'), session('a', '24', 'off'), session('b', '24', 'on'), session('c', '60', 'off')],
    order,
  );
  expect(got.map((pair) => `${pair.setting}: ${pair.fromId} ${pair.from} → ${pair.toId} ${pair.to}`)).toEqual([
    'audio: a off → b on',
    'audio: c off → d on',
    'rate: a 24 → c 60',
    'rate: b 24 → d 60',
  ]);
});

it('pairs nothing across bodies or rigs, nor sessions that differ in two settings or in none', () => {
  expect(findMatchedPairs([session('a', '24', 'off'), session('b', '60', 'off', 'vennick, stalls')], order)).toEqual(
    [],
  );
  expect(findMatchedPairs([session('a', '24', 'off'), session('b', '60', 'on')], order)).toEqual([]);
  expect(findMatchedPairs([session('a', '24', 'off'), session('b', '24', 'off')], order)).toEqual([]);
});

it('a setting that one session does not state differs, and makes no pair', () => {
  expect(differingSettings({ rate: '24', audio: 'on' }, { rate: '24' })).toEqual(['audio']);
  expect(
    findMatchedPairs(
      [session('a', '24', 'off'), { id: 'b', context: 'vennick, balcony', settings: { rate: '24' } }],
      order,
    ),
  ).toEqual([]);
});

it('names the settings that differ, sorted', () => {
  expect(differingSettings({ rate: '24', audio: 'on' }, { audio: 'off', rate: '60' })).toEqual(['audio', 'rate']);
});

it('refuses a level nobody declared', () => {
  expect(() => findMatchedPairs([session('a', '24', 'off'), session('b', '25', 'off')], order)).toThrow(
    "'25' is no declared level of 'rate'",
  );
});
