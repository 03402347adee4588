import type { Part } from '../../model/bench.ts';
import type { Problem } from '../../model/problem.ts';
import type { Figure } from '../../register/register.ts';
import { selectFigures } from '../../register/select.ts';
import type { Answering } from '../parts/definition.ts';
import type { Among, Claim } from './claim.ts';
import { describeAssertions } from './describe.ts';
import { judgeQuantity, judgeRank, judgeVerdict, type Judgement } from './judge.ts';
import { targetOf } from './target.ts';

type Unplaced = Omit<Problem, 'file' | 'line' | 'column'>;

/** What the data have against a claim. One that asks for what does not exist is left to the check of write-ups. */
export function judgeClaim(
  claim: Claim,
  answering: Answering,
  { name: part, words = '' }: Pick<Part, 'name' | 'words'>,
): readonly Unplaced[] {
  const figure = targetOf(claim, answering);
  if (figure === undefined) return [];
  const judged: readonly (readonly [name: string, written: string, judgement: Judgement])[] = [
    ...claim.quantities.map(
      ({ assertion, quantity }) =>
        [assertion, quantity.text, judgeQuantity(answering.bench, figure, assertion, quantity)] as const,
    ),
    ...claim.ranks.map(
      ({ assertion, among }) =>
        [assertion, '', judgeRank(figure, assertion, figuresAmong(answering, figure, among))] as const,
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

function figuresAmong({ site }: Answering, { kind }: Figure, among: Among): readonly Figure[] {
  if ('length' in among) return among.flatMap((id) => site.figure(id) ?? []);
  return selectFigures(site.bench, site.register.figures, { ...among, kind });
}
