import { buildDesign, type FactorLevels, type Factor, type Term } from './design-matrix.ts';
import { fitLeastSquares } from './least-squares.ts';

/**
 * The terms that a set of conditions can support: every setting that varies, then interactions of two of them whose
 * columns add no confusion with the terms taken before, those with the fewest columns first, then in declared order.
 *
 * Settings that cannot be separated from each other are all kept, so that the fit names them; an interaction is taken
 * only where it can be told from everything else and leaves `spare` more conditions than parameters.
 *
 * `more` are further interactions to consider, whose last factor has no term of its own: with a rate as ordered levels
 * in the main terms, the frame interval as a number carries an interaction that levels here and there cannot.
 */
export function proposeTerms(
  conditions: readonly FactorLevels[],
  factors: readonly Factor[],
  spare = 1,
  more: readonly Term[] = [],
): Term[] {
  const [first] = conditions;
  if (!first) return [];
  const withoutMain = new Set(more.map((term) => term.at(-1)));
  const varying = factors.filter(
    (factor) =>
      !withoutMain.has(factor.id) && conditions.some((condition) => condition[factor.id] !== first[factor.id]),
  );
  const terms: Term[] = varying.map((factor) => [factor.id]);
  const judge = (candidate: readonly Term[]): { columns: number; aliased: number; left: number } => {
    const { columns } = buildDesign(conditions, factors, candidate);
    const { aliased, residualDegreesOfFreedom } = fitLeastSquares(
      columns,
      conditions.map(() => 0),
    );
    return { columns: columns.length, aliased: aliased.length, left: residualDegreesOfFreedom };
  };
  const before = judge(terms);
  const pairs = [...varying.flatMap((a, i) => varying.slice(i + 1).map((b): Term => [a.id, b.id])), ...more]
    .map((term) => ({ term, columns: judge([...terms, term]).columns }))
    .sort((a, b) => a.columns - b.columns);
  for (const { term } of pairs) {
    const { aliased, left } = judge([...terms, term]);
    if (aliased === before.aliased && left >= spare) terms.push(term);
  }
  return terms;
}
