import type { Part } from '../../model/bench.ts';
import type { Problem } from '../../model/problem.ts';
import type { Figure } from '../../register/register.ts';
import { pOfPairs, RANKABLE } from '../../register/comparisons/ranking.ts';
import { matchesQuery, selectFigures } from '../../register/select.ts';
import type { Answering } from '../parts/definition.ts';
import type { Among, Claim } from './claim.ts';
import { describeAssertions } from './describe.ts';
import { boundsOf, judgeQuantity, judgeRank, judgeVerdict, type Judgement } from './judge.ts';
import { pOutside } from '../../register/comparisons/p-outside.ts';
import { targetOf } from './target.ts';

type Unplaced = Omit<Problem, 'file' | 'line' | 'column'>;

/** How many statements about what is not exact a claim makes, as far as can be told before anything is computed. */
export function countStatements({ quantities, ranks }: Claim, { bench }: Pick<Answering, 'bench'>): number {
  return (
    quantities.filter(({ assertion }) => assertion !== 'exactly').length +
    ranks.reduce((sum, { among }) => {
      const others =
        'length' in among
          ? among.length
          : bench.sessions.filter((one) => matchesQuery(one, { ...among, kind: '' })).length - 1;
      return sum + ((others + 1) * others) / 2;
    }, 0)
  );
}

/** The two-sided p of each of them. */
export function pOfClaim(claim: Claim, answering: Omit<Answering, 'adjust'>): readonly number[] {
  const { bench, site } = answering;
  const figure = targetOf(claim, answering);
  if (figure === undefined) return [];
  return [
    ...claim.quantities.flatMap(({ assertion, quantity }) => {
      const within = boundsOf(bench, figure, assertion, quantity);
      return within.kind === 'bounds' ? (pOutside(figure, within, site) ?? []) : [];
    }),
    ...claim.ranks.flatMap(({ among }) =>
      RANKABLE.has(figure.kind) ? pOfPairs([figure, ...othersAmong(answering, figure, among)]) : [],
    ),
  ];
}

/** What the data have against a claim. One that asks for what does not exist is left to the check of write-ups. */
export function judgeClaim(
  claim: Claim,
  answering: Answering,
  { name: part, words = '' }: Pick<Part, 'name' | 'words'>,
): readonly Unplaced[] {
  const { bench, site, adjust } = answering;
  const figure = targetOf(claim, answering);
  if (figure === undefined) return [];
  const judged: readonly (readonly [name: string, written: string, judgement: Judgement])[] = [
    ...claim.quantities.map(
      ({ assertion, quantity }) =>
        [
          assertion,
          quantity.text,
          judgeQuantity(bench, figure, assertion, quantity, (within) => {
            const p = pOutside(figure, within, site);
            return p === undefined ? 0 : (adjust([p])[0] ?? 1);
          }),
        ] as const,
    ),
    ...claim.ranks.map(
      ({ assertion, among }) =>
        [assertion, '', judgeRank(figure, assertion, othersAmong(answering, figure, among), adjust)] as const,
    ),
    ...(claim.verdict === undefined ? [] : [['verdict', claim.verdict, judgeVerdict(figure, claim.verdict)] as const]),
  ];
  return judged.flatMap(([name, written, judgement]): readonly Unplaced[] => {
    switch (judgement.kind) {
      case 'holds':
        return [];
      case 'fails':
        return [
          {
            code: 'claim-fails',
            key: part,
            found: words,
            expected: describeAssertions(claim, name),
            evidence: judgement.evidence,
          },
        ];
      case 'no-question':
        return [noQuestion(judgement.why, `${part} ${name}`, written, figure)];
    }
  });
}

function noQuestion(
  why: 'unit' | 'one-sided' | 'not-rankable',
  key: string,
  written: string,
  { id, text }: Figure,
): Unplaced {
  if (why === 'unit') return { code: 'wrong-unit', key, found: written, expected: `${id} (${text})` };
  return { code: why, key, found: id };
}

function othersAmong({ site }: Pick<Answering, 'site'>, { id: own, kind }: Figure, among: Among): readonly Figure[] {
  const all =
    'length' in among
      ? among.flatMap((id) => site.figure(id) ?? [])
      : selectFigures(site.bench, site.register.figures, { ...among, kind });
  return all.filter(({ id }) => id !== own);
}
