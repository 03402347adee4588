import { fsum } from 'd3-array';

/** A row of a least-squares problem before its absorbed element is taken out. */
export interface AbsorbableRow {
  readonly elements: readonly string[];
  readonly value: number;
  readonly weight: number;
}

/** An element that was taken out of the problem by centring its rows: its own latency is mean − Σ columnMeans·coefficients. */
export interface AbsorbedElement {
  /** Weighted mean of its rows' values. */
  readonly mean: number;
  /** Weighted mean of each column over its rows. */
  readonly columnMeans: readonly number[];
  /** Each of its rows' share of those means, by row. */
  readonly shares: ReadonlyMap<number, number>;
}

export interface Centred {
  readonly columns: readonly (readonly number[])[];
  readonly values: readonly number[];
  readonly absorbed: ReadonlyMap<string, AbsorbedElement>;
}

/** Below this a centred count is rounding: the counts themselves are 0, 1, 2. */
const ROUNDING = 1e-9;

/**
 * Takes many elements out of a weighted least-squares problem before it is solved: where each row has at most one of
 * them, their columns are indicators of disjoint groups, and centring values and columns on each group's weighted mean
 * leaves a problem with the other columns alone, with the same coefficients, residuals and influence of each value.
 *
 * Five hundred sessions of two hundred conditions over four displays become a problem of four columns.
 *
 * Domain: weights above 0; a RangeError for a row with two absorbed elements.
 * Source: R. Frisch and F. V. Waugh, Econometrica 1 (1933), 387 (from memory): partialling out; with indicators, the
 * within-group transformation.
 */
export function absorbElements(
  rows: readonly AbsorbableRow[],
  columns: readonly (readonly number[])[],
  isAbsorbed: (element: string) => boolean,
): Centred {
  const groups = new Map<string, number[]>();
  rows.forEach(({ elements }, row) => {
    const [own, ...more] = elements.filter(isAbsorbed);
    if (more.length > 0) throw new RangeError(`a session has one absorbed element at most, not ${elements.join(', ')}`);
    if (own !== undefined) groups.set(own, [...(groups.get(own) ?? []), row]);
  });
  const absorbed = new Map([...groups].map(([element, members]) => [element, meansOf(members, rows, columns)]));
  const values = rows.map(({ value }) => value);
  const centred = columns.map((column) => [...column]);
  for (const { mean, columnMeans, shares } of absorbed.values()) {
    for (const row of shares.keys()) {
      values[row] = (values[row] ?? 0) - mean;
      centred.forEach((column, k) => {
        const rest = (column[row] ?? 0) - (columnMeans[k] ?? 0);
        column[row] = Math.abs(rest) < ROUNDING ? 0 : rest;
      });
    }
  }
  return { columns: centred, values, absorbed };
}

function meansOf(
  members: readonly number[],
  rows: readonly AbsorbableRow[],
  columns: readonly (readonly number[])[],
): AbsorbedElement {
  const weight = (row: number): number => rows[row]?.weight ?? 0;
  const total = fsum(members.map(weight));
  const mean = (of: (row: number) => number): number => fsum(members.map((row) => weight(row) * of(row))) / total;
  return {
    mean: mean((row) => rows[row]?.value ?? 0),
    columnMeans: columns.map((column) => mean((row) => column[row] ?? 0)),
    shares: new Map(members.map((row) => [row, weight(row) / total])),
  };
}
