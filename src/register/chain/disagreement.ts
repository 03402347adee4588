/** Which observations a network disagrees about: those without which the others agree. */
import { fitChain, type ChainAnchor, type ChainObservation } from '../../analysis/chain-network.ts';
import { DEFAULT_LEVEL } from '../../analysis/interval.ts';
import { isBody } from './elements.ts';

/** More are no help in finding the mistake. */
const NAMED = 3;

/**
 * Ids of the observations that χ² over the cycles falls most without, the worst first; only those without which the
 * rest agrees, where there are any (`mends`), and otherwise the three that it falls most without.
 */
export function disagreeing(
  observations: readonly ChainObservation[],
  anchors: readonly ChainAnchor[],
): { readonly ids: readonly string[]; readonly mends: boolean } {
  const left = observations.flatMap((taken) => {
    const fit = fitChain(
      observations.filter((one) => one !== taken),
      anchors,
      DEFAULT_LEVEL,
      isBody,
    );
    if (fit.kind !== 'chain') return [];
    return [
      { id: taken.id, chiSquare: fit.consistency?.chiSquare ?? 0, agrees: (fit.consistency?.inflation ?? 1) === 1 },
    ];
  });
  const sorted = left.toSorted((a, b) => a.chiSquare - b.chiSquare);
  const mending = sorted.filter(({ agrees }) => agrees);
  const named = (mending.length > 0 ? mending : sorted).slice(0, NAMED);
  return { ids: named.map(({ id }) => id), mends: mending.length > 0 };
}
