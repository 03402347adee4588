/** The network of a bench, fitted once for everything that is read off it. */
import { bracketChain, type ChainBrackets } from '../../analysis/chain-brackets.ts';
import { fitChain, type ChainFit } from '../../analysis/chain-network.ts';
import { DEFAULT_LEVEL } from '../../analysis/interval.ts';
import { once } from '../../model/once.ts';
import type { Session } from '../../model/bench.ts';
import type { Compilation } from '../compilation.ts';
import { nameElements } from './element-names.ts';
import { isBody } from './elements.ts';
import { findIslands, type Island } from './network.ts';

export interface TakenApart {
  readonly island: Island;
  readonly chain: ChainFit;
  readonly brackets: ChainBrackets;
}

interface Network {
  readonly taken: readonly TakenApart[];
  /** They take no part. */
  readonly withoutUncertainty: readonly Session[];
  readonly nameOf: (element: string) => string;
}

/** Each island is fitted by itself: what no session joins cannot tell anything of the other. */
export const takeApart: (compilation: Compilation) => Network = once((compilation) => {
  const { bench, find } = compilation;
  const { islands, withoutUncertainty } = findIslands(compilation);
  const taken = islands.flatMap((island): readonly TakenApart[] => {
    const chain = fitChain(island.observations, [...island.sharedErrors, ...island.anchors], DEFAULT_LEVEL, isBody);
    return chain.kind === 'chain'
      ? [{ island, chain, brackets: bracketChain(island.totals, { atLeast: island.atLeast }) }]
      : [];
  });
  const elements = islands.flatMap((island) => island.elements);
  return { taken, withoutUncertainty, nameOf: nameElements(bench, find, elements) };
});
