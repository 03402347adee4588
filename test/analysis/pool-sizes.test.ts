import { expect, it } from 'vitest';
import { poolSizes } from '../../src/analysis/pool-sizes.ts';
import { NODES, SIZES_BEFOREHAND, weightsOf } from '../../src/analysis/size-grid.ts';
import { seededRandom } from '../../src/analysis/random.ts';

/** K of the documentation, for whole combinations at once: what falls by 0.2 and 0.04 a place, normalised by kind. */
const FALLS = [0.2, 0.04, 0.2, 0.04];
const LENGTHS = [0, 1, 2, 3].map((kind) => 1 + Math.max(...NODES.map((node) => node[kind]!)));
const FALL_SUMS = LENGTHS.map((length, kind) =>
  Array.from({ length }, (_, m) =>
    Array.from({ length }, (_one, i) => FALLS[kind]! ** Math.abs(i - m)).reduce((sum, value) => sum + value, 0),
  ),
);
const BY_KIND = LENGTHS.map((length, kind) =>
  Array.from({ length }, (_, m) =>
    Array.from({ length }, (_one, i) => FALLS[kind]! ** Math.abs(i - m) / FALL_SUMS[kind]![m]!),
  ),
);
function kernel(m: number, theta: number): number {
  const [common, own] = [NODES[m]!, NODES[theta]!];
  let product = 1;
  for (let kind = 0; kind < 4; kind += 1) product *= BY_KIND[kind]![common[kind]!]![own[kind]!]!;
  return product;
}

it('is Bayes’ rule over common sizes and each body’s own, summed one by one (seed 71)', () => {
  const random = seededRandom(71);
  const logs = [0, 1, 2].map(() => NODES.map(() => 4 * random.uniform()));
  const beforehand = weightsOf(SIZES_BEFOREHAND);
  const K = NODES.map((_, m) => NODES.map((_node, theta) => kernel(m, theta)));
  // Σ_θ K(θ | m) L_b(θ) for every m and body
  const ofCommon = logs.map((own) => K.map((row) => row.reduce((sum, k, theta) => sum + k * Math.exp(own[theta]!), 0)));
  const got = poolSizes(logs);
  for (const place of [0, 17, 400, NODES.length - 1]) {
    const weightOf = (theta: number): number =>
      Math.exp(logs[1]![theta]!) *
      NODES.reduce((sum, _, m) => sum + beforehand[m]! * K[m]![theta]! * ofCommon[0]![m]! * ofCommon[2]![m]!, 0);
    expect(got.bodies[1]![place]! / got.bodies[1]![5]!).toBeCloseTo(weightOf(place) / weightOf(5), 9);
    const elsewhere = (theta: number): number =>
      NODES.reduce(
        (sum, _, m) => sum + beforehand[m]! * K[m]![theta]! * ofCommon.reduce((product, own) => product * own[m]!, 1),
        0,
      );
    expect(got.others[place]! / got.others[5]!).toBeCloseTo(elsewhere(place) / elsewhere(5), 9);
  }
});
