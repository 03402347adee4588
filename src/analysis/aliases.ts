import type { FactorLevels, Design, Term } from './design-matrix.ts';
import type { AliasedColumn, LeastSquaresFit } from './least-squares.ts';

/** Terms that these conditions cannot tell apart. */
export interface Alias {
  /** `confounded`: settings that change together. `empty-cells`: combinations of one interaction that nobody measured. */
  readonly kind: 'confounded' | 'empty-cells';
  readonly terms: readonly Term[];
  /** Conditions nobody measured that would tell them apart: fewest changes from a measured one first, three at most. */
  readonly separatedBy: readonly FactorLevels[];
}

const MOST_SUGGESTIONS = 3;

/**
 * Names what a rank-deficient design mixes up, and the conditions that would separate it.
 *
 * Each aliased column equals a combination of kept ones; the terms of all of them are named together. A further
 * condition separates them if its row breaks that equation, so rows one change away from a measured condition are
 * tried first, then rows two changes away, within the factors concerned.
 */
export function nameAliases(fit: LeastSquaresFit, design: Design, conditions: readonly FactorLevels[]): Alias[] {
  const found = new Map<string, Alias>();
  for (const alias of fit.aliased) {
    const { column, combination } = alias;
    const kind = isEmptyCell(alias, design) ? 'empty-cells' : 'confounded';
    const columns = [...combination.map((part) => part.column), column].sort((a, b) => a - b);
    const terms = distinctTerms(columns.map((j) => design.termOf[j] ?? []));
    const breaksEquation = (condition: FactorLevels): boolean => {
      const row = design.rowOf(condition);
      const implied = combination.reduce((sum, part) => sum + part.coefficient * (row[part.column] ?? 0), 0);
      return Math.abs((row[column] ?? 0) - implied) > 1e-7 * Math.max(1, ...row.map(Math.abs));
    };
    const key = [kind, ...terms.map((term) => term.join(':'))].join(' ');
    if (!found.has(key))
      found.set(key, { kind, terms, separatedBy: suggest(conditions, design, terms, breaksEquation) });
  }
  return [...found.values()];
}

/**
 * Is a column undetermined only because cells of its own interaction were never measured? Then what it is confounded
 * with are the interaction itself and the settings it is made of, nothing else.
 */
function isEmptyCell({ column, combination }: AliasedColumn, { termOf }: Design): boolean {
  const term = termOf[column] ?? [];
  return term.length > 1 && combination.every((part) => (termOf[part.column] ?? []).every((id) => term.includes(id)));
}

function suggest(
  conditions: readonly FactorLevels[],
  design: Design,
  terms: readonly Term[],
  wanted: (c: FactorLevels) => boolean,
): FactorLevels[] {
  const factors = design.factors.filter((factor) => terms.some((term) => term.includes(factor.id)));
  const keyOf = (condition: FactorLevels): string =>
    JSON.stringify(design.factors.map((factor) => condition[factor.id]));
  const seen = new Set(conditions.map(keyOf));
  let frontier: FactorLevels[] = conditions.map((condition) =>
    Object.fromEntries(design.factors.map((factor) => [factor.id, condition[factor.id] ?? ''])),
  );
  for (let changes = 1; changes <= 2; changes += 1) {
    const next: FactorLevels[] = [];
    for (const condition of frontier) {
      for (const factor of factors) {
        for (const level of factor.levels) {
          const changed = { ...condition, [factor.id]: level };
          if (seen.has(keyOf(changed))) continue;
          seen.add(keyOf(changed));
          next.push(changed);
        }
      }
    }
    const good = next.filter(wanted);
    if (good.length > 0) return good.slice(0, MOST_SUGGESTIONS);
    frontier = next;
  }
  return [];
}

function distinctTerms(terms: readonly Term[]): Term[] {
  const byName = new Map(terms.filter((term) => term.length > 0).map((term) => [term.join(':'), term]));
  return [...byName.values()];
}
