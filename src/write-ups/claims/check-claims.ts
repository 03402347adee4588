/** Whether the data still support what every write-up asserts; all that fail, each with what the data say now. */
import type { Cause } from '../../model/ledger.ts';
import type { Problem } from '../../model/problem.ts';
import { compareWithLedger } from '../../ledger/compare.ts';
import type { Published } from '../../register/published.ts';
import { answeringAll } from '../answering.ts';
import { partNamed } from '../parts.ts';
import { readProps } from '../parts/definition.ts';

export function checkClaims(site: Published): readonly Problem[] {
  const problems = answeringAll(site).flatMap(({ writeUp, answering }) =>
    writeUp.parts.flatMap((part): readonly Problem[] => {
      const definition = partNamed(part.name);
      const props = definition && readProps(definition, part);
      if (definition?.judge === undefined || props === undefined) return [];
      const at = { file: writeUp.file.path, line: part.line, column: part.column };
      return definition.judge(props, answering, part).map((problem) => ({ ...problem, ...at }));
    }),
  );
  return problems.some(({ code }) => code === 'claim-fails') ? withCauses(problems, site) : problems;
}

/** Why a figure that a claim rests on moved since the last record, where the ledger can tell. */
function withCauses(problems: readonly Problem[], { bench, register }: Published): readonly Problem[] {
  const causes = new Map<string, readonly Cause[]>(
    compareWithLedger(bench, register).moved.map((move) => [move.id, move.causes]),
  );
  return problems.map((problem) => {
    const known = causes.get(problem.evidence?.figure ?? '');
    return known === undefined ? problem : { ...problem, causes: known };
  });
}
