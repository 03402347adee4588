/** Whether the data still support every claim of every write-up; all that fail, each with what the data say now. */
import type { Bench, Part, WriteUp } from '../../model/bench.ts';
import type { Cause } from '../../model/ledger.ts';
import type { Problem } from '../../model/problem.ts';
import { compareWithLedger } from '../../ledger/compare.ts';
import type { Figure, Register } from '../../register/register.ts';
import { selectFigures, type Query } from '../../register/select.ts';
import { describeAssertions } from './describe.ts';
import { readClaim, type Among, type Claim } from './claim.ts';
import { judgeQuantity, judgeRank, judgeVerdict, type Judgement } from './judge.ts';
import { targetOf, type Figures } from './target.ts';

/** Claims that ask for what does not exist are left to the check of write-ups. */
export function checkClaims(bench: Bench, register: Register): readonly Problem[] {
  const figures = new Map(register.figures.map((figure) => [figure.id, figure]));
  const of = (folder: 'reports' | 'method', writeUp: WriteUp): readonly Problem[] =>
    writeUp.parts
      .filter(({ name, attributes }) => name === 'Claim' && !('...' in attributes))
      .flatMap((part) => {
        const claim = readClaim(part);
        const figure = claim && targetOf(claim, folder, writeUp.id, figures);
        return claim && figure ? checkClaim(bench, figures, writeUp, part, claim, figure) : [];
      });
  const problems = [
    ...bench.methods.flatMap((method) => of('method', method)),
    ...bench.reports.flatMap((report) => of('reports', report)),
  ];
  return problems.some(({ code }) => code === 'claim-fails') ? withCauses(problems, bench, register) : problems;
}

function checkClaim(
  bench: Bench,
  figures: Figures,
  { file }: WriteUp,
  part: Part,
  claim: Claim,
  figure: Figure,
): readonly Problem[] {
  const at = { file: file.path, line: part.line, column: part.column };
  const judged: readonly (readonly [name: string, written: string, judgement: Judgement])[] = [
    ...claim.quantities.map(
      ({ assertion, quantity }) =>
        [assertion, quantity.text, judgeQuantity(bench, figure, assertion, quantity)] as const,
    ),
    ...claim.ranks.map(
      ({ assertion, among }) =>
        [assertion, '', judgeRank(figure, assertion, figuresAmong(bench, figures, figure, among))] as const,
    ),
    ...(claim.verdict === undefined ? [] : [['verdict', claim.verdict, judgeVerdict(figure, claim.verdict)] as const]),
  ];
  return judged.flatMap(([name, written, judgement]): readonly Problem[] => {
    switch (judgement.kind) {
      case 'holds':
        return [];
      case 'fails':
        return [
          {
            code: 'claim-fails',
            ...at,
            key: 'Claim',
            found: part.words ?? '',
            expected: describeAssertions(claim, name),
            evidence: judgement.evidence,
          },
        ];
      case 'no-question':
        return [noQuestion(judgement.why, at, `Claim ${name}`, written, figure)];
    }
  });
}

function noQuestion(
  why: 'unit' | 'one-sided' | 'not-rankable',
  at: Pick<Problem, 'file' | 'line' | 'column'>,
  key: string,
  written: string,
  { id, text }: Figure,
): Problem {
  if (why === 'unit') return { code: 'wrong-unit', ...at, key, found: written, expected: `${id} (${text})` };
  return { code: why, ...at, key, found: id };
}

function figuresAmong(bench: Bench, figures: Figures, { kind }: Pick<Figure, 'kind'>, among: Among): readonly Figure[] {
  if (Array.isArray(among)) return among.flatMap((id: string) => figures.get(id) ?? []);
  return selectFigures(bench, [...figures.values()], { ...among, kind } as Query);
}

/** Why a figure that a claim rests on moved since the last record, where the ledger can tell. */
function withCauses(problems: readonly Problem[], bench: Bench, register: Register): readonly Problem[] {
  const causes = new Map<string, readonly Cause[]>(
    compareWithLedger(bench, register).moved.map((move) => [move.id, move.causes]),
  );
  return problems.map((problem) => {
    const known = causes.get(problem.evidence?.figure ?? '');
    return known === undefined ? problem : { ...problem, causes: known };
  });
}
