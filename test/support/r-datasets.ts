import type { FactorLevels, Factor } from '../../src/analysis/design-matrix.ts';
import { readReference } from './r-reference.ts';

/** Data sets of R's `datasets` package, as test/reference/datasets.R prints them. */
const data = readReference('datasets');

export const SLEEP_1 = data('sleep.group1');
export const SLEEP_2 = data('sleep.group2');
export const CARS = { speed: data('cars.speed'), dist: data('cars.dist') };

/** `npk`: yields of peas in six blocks, with and without nitrogen, phosphate and potassium. */
export const NPK = rowsOf(data('npk.yield'), {
  block: data('npk.block'),
  N: data('npk.N'),
  P: data('npk.P'),
  K: data('npk.K'),
});
export const NPK_FACTORS: readonly Factor[] = [
  { id: 'block', kind: 'unordered', levels: ['1', '2', '3', '4', '5', '6'] },
  ...['N', 'P', 'K'].map((id) => ({ id, kind: 'unordered', levels: ['0', '1'] }) as const),
];

/** `warpbreaks`: breaks by wool (1 A, 2 B) and tension (1 L, 2 M, 3 H). */
export const WARPBREAKS = rowsOf(data('warpbreaks.breaks'), {
  wool: data('warpbreaks.wool'),
  tension: data('warpbreaks.tension'),
});
export const WARPBREAKS_FACTORS: readonly Factor[] = [
  { id: 'wool', kind: 'unordered', levels: ['1', '2'] },
  { id: 'tension', kind: 'unordered', levels: ['1', '2', '3'] },
];

/** Plant weights: ctrl, trt1, trt2. */
export const PLANT_GROWTH = groupsOf(data('PlantGrowth.weight'), data('PlantGrowth.group'));

function rowsOf(
  values: readonly number[],
  columns: Readonly<Record<string, readonly number[]>>,
): { condition: FactorLevels; value: number }[] {
  return values.map((value, i) => ({
    value,
    condition: Object.fromEntries(Object.entries(columns).map(([id, levels]) => [id, String(levels[i])])),
  }));
}

function groupsOf(values: readonly number[], keys: readonly number[]): number[][] {
  const groups = new Map<number, number[]>();
  values.forEach((value, i) => {
    const key = keys[i] ?? Number.NaN;
    groups.set(key, [...(groups.get(key) ?? []), value]);
  });
  return [...groups.keys()].sort((a, b) => a - b).map((key) => groups.get(key) ?? []);
}
