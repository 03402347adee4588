import { writeUpFamilyId } from '../asked-families.ts';
import { parseDurationMs } from '../../ingest/quantities.ts';
import { differenceId, ratioId, verdictId, type SessionPair } from '../../register/comparisons/family.ts';
import type { Figure } from '../../register/register.ts';
import { pairOf, type Claim } from './claim.ts';

/** By id. */
export type Figures = ReadonlyMap<string, Figure>;

/**
 * The figure that a claim is about. Of two sessions: their verdict in the write-up's family, where one is claimed;
 * their ratio, where it is set against a share; else their difference. Undefined where there is none.
 */
export function targetOf(
  claim: Claim,
  folder: 'reports' | 'method',
  writeUp: string,
  figures: Figures,
): Figure | undefined {
  const pair = pairOf(claim);
  if (claim.verdict !== undefined && pair !== undefined)
    return verdictOf(writeUpFamilyId(folder, writeUp), pair, claim.margin, figures);
  if (claim.than === undefined || pair === undefined) return figures.get(claim.of);
  const isShare = claim.quantities.some(({ quantity: { unit } }) => unit === 'ratio' || unit === '1');
  return figures.get(isShare ? ratioId(pair) : differenceId(pair));
}

/** Without a margin of its own, a claim takes the one that the write-up states elsewhere. */
function verdictOf(
  family: string,
  pair: SessionPair,
  margin: string | undefined,
  figures: Figures,
): Figure | undefined {
  const marginMs = margin === undefined ? undefined : parseDurationMs(margin);
  const id = verdictId(family, marginMs === undefined ? pair : { ...pair, marginMs });
  return (
    figures.get(id) ??
    (marginMs === undefined ? [...figures.values()].find((figure) => figure.id.startsWith(`${id}/within-`)) : undefined)
  );
}
