import { buildDesign, type Condition, type Design, type Factor, type Term } from './design-matrix.ts';
import { fitLeastSquares, type AliasedColumn } from './least-squares.ts';

/**
 * The terms that a set of conditions can support: every setting that varies, then interactions of two of them that can
 * be told from everything else, those with the fewest columns first, then in declared order.
 *
 * Settings that cannot be separated from each other are all kept, so that the fit names them. An interaction may have
 * cells nobody measured, as long as some of it is measured and none of it is confounded with other settings; it is taken
 * only while `spare` conditions more than parameters are left.
 */
export function proposeTerms(conditions: readonly Condition[], factors: readonly Factor[], spare = 1): Term[] {
  const [first] = conditions;
  if (!first) return [];
  const varying = factors.filter((factor) => conditions.some((condition) => condition[factor.id] !== first[factor.id]));
  const terms: Term[] = varying.map((factor) => [factor.id]);
  const pairs = varying
    .flatMap((a, i) => varying.slice(i + 1).map((b): Term => [a.id, b.id]))
    .map((term) => ({ term, columns: buildDesign(conditions, factors, [...terms, term]).columns.length }))
    .sort((a, b) => a.columns - b.columns);
  for (const { term } of pairs) {
    const wider = [...terms, term];
    const design = buildDesign(conditions, factors, wider);
    const { aliased, kept, residualDegreesOfFreedom } = fitLeastSquares(design.columns, conditions.map(() => 0));
    const own = aliased.filter(({ column }) => design.termOf[column] === term);
    const measured = kept.some((column) => design.termOf[column] === term);
    if (measured && own.every((alias) => isEmptyCell(alias, design)) && residualDegreesOfFreedom >= spare) terms.push(term);
  }
  return terms;
}

/**
 * Is a column undetermined only because cells of its own interaction were never measured? Then what it is confounded
 * with are the interaction itself and the settings it is made of, nothing else.
 */
export function isEmptyCell({ column, combination }: AliasedColumn, { termOf }: Design): boolean {
  const term = termOf[column] ?? [];
  return term.length > 1 && combination.every((part) => (termOf[part.column] ?? []).every((id) => term.includes(id)));
}
