/**
 * The sizes of variation among which a publication's sessions decide, and what is thought of them beforehand.
 *
 * A judgement, no measurement: most benches change little, and any size up to a whole frame interval is possible. The
 * weights were tried on simulated benches with seeds of their own; `npm run error-rates` reports on others.
 */
import type { LevelVariation, Sizes } from './variation.ts';

/** Sizes at the levels between which sessions can tell. Fractions of T_d; probabilities for steps. */
export interface LevelSizes {
  readonly clip: LevelVariation;
  readonly day: LevelVariation;
}

/** What is thought of each body's sizes before any session. */
export const SIZES_BEFOREHAND: LevelSizes = {
  clip: {
    change: sizes([0, 0.42], [0.06, 0.17], [0.12, 0.16], [0.25, 0.14], [0.5, 0.08], [1, 0.02], [2, 0.01]),
    step: sizes([0, 0.82], [0.05, 0.06], [0.2, 0.05], [0.5, 0.04], [0.8, 0.03]),
  },
  day: {
    change: sizes([0, 0.18], [0.06, 0.26], [0.12, 0.28], [0.25, 0.2], [0.5, 0.07], [1, 0.01]),
    step: sizes([0, 0.92], [0.05, 0.03], [0.2, 0.02], [0.5, 0.02], [0.8, 0.01]),
  },
};

/** One size of each kind, by its place in its list: change and step of clips, change and step of days. */
export type Node = readonly [number, number, number, number];

export function listsOf({ clip, day }: LevelSizes): readonly [Sizes, Sizes, Sizes, Sizes] {
  return [clip.change, clip.step, day.change, day.step];
}

/** Every combination of sizes, in one order that all likelihoods share. */
export const NODES: readonly Node[] = listsOf(SIZES_BEFOREHAND).reduce<readonly (readonly number[])[]>(
  (nodes, list) => nodes.flatMap((node) => list.map((_, place) => [...node, place])),
  [[]],
) as readonly (readonly number[])[] as readonly Node[];

/** The weight of every combination where sizes of different kinds are independent. */
export function weightsOf(levels: LevelSizes): readonly number[] {
  const own = listsOf(levels);
  const places = listsOf(SIZES_BEFOREHAND).map((list, kind) =>
    list.map(({ size }) => own[kind]!.find((other) => other.size === size)?.weight ?? 0),
  );
  return NODES.map((node) => node.reduce((product, place, kind) => product * places[kind]![place]!, 1));
}

/** The weight of every size from the weights of the combinations. */
export function sizesOf(weights: readonly number[]): LevelSizes {
  const lists = listsOf(SIZES_BEFOREHAND).map((list, kind) =>
    list.map(({ size }, place) => ({
      size,
      weight: NODES.reduce((sum, node, i) => (node[kind] === place ? sum + weights[i]! : sum), 0),
    })),
  );
  return { clip: { change: lists[0]!, step: lists[1]! }, day: { change: lists[2]!, step: lists[3]! } };
}

function sizes(...list: readonly (readonly [size: number, weight: number])[]): Sizes {
  return list.map(([size, weight]) => ({ size, weight }));
}
