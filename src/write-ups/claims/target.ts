import { differenceId, questionOfId, ratioId, verdictId, type SessionPair } from '../../register/comparisons/family.ts';
import type { Bench } from '../../model/bench.ts';
import type { Figure } from '../../register/register.ts';
import type { Answering } from '../parts/definition.ts';
import { asked, stated } from '../parts/question.ts';
import type { Claim } from './claim.ts';

/** The sessions that a claim compares, with the margin that it states. */
export function pairOf(
  { of, than, margin }: Pick<Claim, 'of' | 'than' | 'margin'>,
  { sessions }: Pick<Bench, 'sessions'>,
): SessionPair | undefined {
  const pair =
    than === undefined
      ? questionOfId(
          of,
          sessions.map(({ id }) => id),
        )
      : { a: of, b: than };
  return pair && asked(pair, margin);
}

/**
 * The figure that a claim is about. Of two sessions: their verdict in the write-up's family, where one is claimed;
 * their ratio, where it is set against a share; else their difference. Undefined where there is none.
 */
export function targetOf(
  claim: Claim,
  { bench, site, family }: Pick<Answering, 'bench' | 'site' | 'family'>,
): Figure | undefined {
  const pair = pairOf(claim, bench);
  if (claim.verdict !== undefined && pair !== undefined)
    return site.figure(verdictId(family?.id ?? '', stated(family, pair)));
  if (claim.than === undefined || pair === undefined) return site.figure(claim.of);
  const isShare = claim.quantities.some(({ quantity: { unit } }) => unit === 'ratio' || unit === '1');
  return site.figure(isShare ? ratioId(pair) : differenceId(pair));
}
