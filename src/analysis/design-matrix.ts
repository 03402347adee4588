/** A setting as the model sees it. */
export interface Factor {
  readonly id: string;
  readonly kind: 'unordered' | 'ordered' | 'numeric';
  /** In declared order; the first one that occurs is the level the others are held against. */
  readonly levels: readonly string[];
  /** The number each level stands for, where the kind is numeric. */
  readonly numbers?: readonly number[];
}

/** Level by factor id: one condition. */
export type FactorLevels = Readonly<Record<string, string>>;

/** The factors whose product a term is: `['stabiliser']`, or `['stabiliser', 'output']` for their interaction. */
export type Term = readonly string[];

export interface Design {
  /** Column 0 is the constant 1. */
  readonly columns: readonly (readonly number[])[];
  /** The term each column belongs to; empty for the constant. */
  readonly termOf: readonly Term[];
  /** Factors with the levels that occur, in declared order. */
  readonly factors: readonly Factor[];
  /** Ids of factors that never vary, and so have no column. */
  readonly constant: readonly string[];
  /** The row of a condition. */
  readonly rowOf: (condition: FactorLevels) => number[];
  /**
   * The row at the levels given, averaged with equal weight over every combination of the other factors' levels: all that
   * occur, or those named in `over`.
   */
  readonly averageRowOf: (levels: FactorLevels, over?: Readonly<Record<string, readonly string[]>>) => number[];
}

/**
 * Treatment coding: a factor of k levels that occur has k − 1 columns, each 1 at its level and 0 elsewhere, against the
 * first level; a numeric factor has one column, its number. An interaction has the products of its factors' columns.
 * Ordered factors are coded like unordered ones; what their order changes is which effects are reported.
 *
 * Throws a RangeError for a condition that lacks a factor or has an undeclared level, and for a term of an unknown factor.
 * Source: R, model.matrix with contr.treatment.
 */
export function buildDesign(
  conditions: readonly FactorLevels[],
  declared: readonly Factor[],
  terms: readonly Term[],
): Design {
  const used = new Set(terms.flat());
  for (const id of used) {
    if (!declared.some((factor) => factor.id === id))
      throw new RangeError(`a term names '${id}', which is no declared factor`);
  }
  const factors = declared.filter((factor) => used.has(factor.id)).map((factor) => occurring(factor, conditions));
  const byId = new Map(factors.map((factor) => [factor.id, factor]));
  const codesOf = (factor: Factor, level: string): number[] => {
    const index = factor.levels.indexOf(level);
    if (index < 0)
      throw new RangeError(`'${level}' is no level of '${factor.id}' that occurs: ${factor.levels.join(', ')}`);
    if (factor.kind === 'numeric') return factor.levels.length > 1 ? [numberOf(factor, index)] : [];
    return factor.levels.slice(1).map((other) => (other === level ? 1 : 0));
  };
  const averageCodes = (factor: Factor, levels: readonly string[]): number[] => {
    const all = levels.map((level) => codesOf(factor, level));
    return (all[0] ?? []).map((_, k) => all.reduce((sum, codes) => sum + (codes[k] ?? 0), 0) / all.length);
  };
  const rowFrom = (codes: (factor: Factor) => number[]): number[] => [
    1,
    ...terms.flatMap((term) =>
      term.reduce<number[]>(
        (products, id) => {
          const factor = byId.get(id);
          const own = factor ? codes(factor) : [];
          return products.flatMap((product) => own.map((code) => product * code));
        },
        [1],
      ),
    ),
  ];
  const rowOf = (condition: FactorLevels): number[] => rowFrom((factor) => codesOf(factor, condition[factor.id] ?? ''));
  const rows = conditions.map(rowOf);
  const widths = terms.map((term) => term.reduce((width, id) => width * widthOf(byId.get(id)), 1));
  return {
    columns: (rows[0] ?? []).map((_, j) => rows.map((row) => row[j] ?? 0)),
    termOf: [[], ...terms.flatMap((term, t) => new Array<Term>(widths[t] ?? 0).fill(term))],
    factors,
    constant: factors.filter((factor) => factor.levels.length < 2).map((factor) => factor.id),
    rowOf,
    averageRowOf: (levels, over = {}) =>
      rowFrom((factor) => {
        const level = levels[factor.id];
        return level === undefined ? averageCodes(factor, over[factor.id] ?? factor.levels) : codesOf(factor, level);
      }),
  };
}

/** The factor with the levels that occur. */
function occurring(factor: Factor, conditions: readonly FactorLevels[]): Factor {
  const seen = new Set<string>();
  for (const condition of conditions) {
    const level = condition[factor.id];
    if (level === undefined) throw new RangeError(`a condition says nothing of '${factor.id}'`);
    if (!factor.levels.includes(level))
      throw new RangeError(`'${level}' is no level of '${factor.id}': ${factor.levels.join(', ')}`);
    seen.add(level);
  }
  const keep = factor.levels.map((level, index) => ({ level, index })).filter(({ level }) => seen.has(level));
  return {
    id: factor.id,
    kind: factor.kind,
    levels: keep.map(({ level }) => level),
    ...(factor.kind === 'numeric' ? { numbers: keep.map(({ index }) => numberOf(factor, index)) } : {}),
  };
}

function numberOf(factor: Factor, index: number): number {
  const value = factor.numbers?.[index];
  if (value === undefined || !Number.isFinite(value)) {
    throw new RangeError(`level '${factor.levels[index] ?? ''}' of numeric factor '${factor.id}' has no number`);
  }
  return value;
}

/** Number of columns a factor has by itself. */
function widthOf(factor: Factor | undefined): number {
  const others = (factor?.levels.length ?? 1) - 1;
  return factor?.kind === 'numeric' ? Math.min(1, others) : others;
}
