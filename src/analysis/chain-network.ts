import { fsum } from 'd3-array';
import { absorbElements, type AbsorbedElement } from './absorbed-elements.ts';
import { judgeConsistency, type Consistency } from './birge.ts';
import { intervalAt, type UncertainValue } from './error-tail.ts';
import { DEFAULT_LEVEL, type Interval } from './interval.ts';
import { fitLeastSquares, type LeastSquaresFit } from './least-squares.ts';
import { isEstimable, scaled, type StatedScale, type Weighed } from './linear-contrast.ts';
import { combineErrors } from './linear-error.ts';
import { propagate } from './propagate.ts';

/** One session: its total is the sum of the elements it went through. */
export interface ChainObservation extends Weighed {
  readonly id: string;
  /** `body:vennick/uhd-24`, `link:wireless`, `display:hall`. One named twice counts twice. */
  readonly elements: readonly string[];
  /** Elements whose latencies are taken off: of two displays side by side, the other. Not absorbed ones. */
  readonly minus?: readonly string[];
  readonly value: number;
}

/**
 * A latency of one element that is known from elsewhere. One that stands for an error that sessions share weighs with its
 * uncertainty and has no error of its own: that is in the sessions' errors already.
 */
export interface ChainAnchor extends Weighed {
  readonly element: string;
  readonly value: number;
}

export interface ChainFit {
  readonly kind: 'chain';
  /** In order of first appearance; those with a column of their own. */
  readonly elements: readonly string[];
  /** The others, that were taken out before the fit. */
  readonly absorbed: ReadonlyMap<string, AbsorbedElement>;
  readonly fit: Pick<LeastSquaresFit, 'kept' | 'aliased' | 'coefficients' | 'influence'>;
  readonly scale: StatedScale;
  /** Sessions and anchors, in the order of the fit's rows. */
  readonly observations: readonly (Weighed & { readonly id: string })[];
  /** Do all sessions agree with one latency per element? undefined where nothing is left over to tell. */
  readonly consistency: Consistency | undefined;
  readonly level: number;
}

export interface NoChainFit {
  readonly kind: 'not-estimable';
  readonly reason: 'no-sessions' | 'no-uncertainty';
}

/**
 * The chain, taken apart: weighted least squares of total = Σ element latencies over all sessions, with anchors as
 * further observations of one element each.
 *
 * Without an anchor a constant can move from every display to every body, so only differences (and links that some
 * sessions have and others lack) are estimable; ask `estimateChainElement` and `estimateChainDifference`, which say so.
 * An error shared by all sessions of a rig may be given as an element of its own, anchored at 0: it then counts in the
 * weights as it does in the errors.
 * Elements of which each session has one (a body in its condition) may be named as absorbed: the same estimates from
 * a much smaller fit (see absorbed-elements.ts).
 *
 * Domain: uncertainties above 0. Widened by the Birge ratio where χ² says that the stated ones do not explain the scatter.
 */
export function fitChain(
  observations: readonly ChainObservation[],
  anchors: readonly ChainAnchor[] = [],
  level = DEFAULT_LEVEL,
  isAbsorbed: (element: string) => boolean = () => false,
): ChainFit | NoChainFit {
  if (observations.length === 0) return { kind: 'not-estimable', reason: 'no-sessions' };
  const rows: readonly ChainObservation[] = [
    ...observations,
    ...anchors.map((anchor) => ({ ...anchor, id: anchor.element, elements: [anchor.element] })),
  ];
  if (rows.some((row) => row.standardUncertainty === 0)) return { kind: 'not-estimable', reason: 'no-uncertainty' };
  const named = new Set(observations.flatMap(({ elements: plus, minus = [] }) => [...plus, ...minus]));
  const elements = [...named].filter((element) => !isAbsorbed(element));
  const known = rows
    .filter((row) => row.elements.every((element) => named.has(element)))
    .map((row) => ({ ...row, weight: row.standardUncertainty ** -2 }));
  const counts = elements.map((element) =>
    known.map((row) => timesIn(row.elements, element) - timesIn(row.minus ?? [], element)),
  );
  const { columns, values, absorbed } = absorbElements(known, counts, isAbsorbed);
  const fit = fitColumns(
    columns,
    values,
    known.map(({ weight }) => weight),
  );
  const residualDegreesOfFreedom = fit.residualDegreesOfFreedom - absorbed.size;
  const consistency = judgeConsistency(fit.residualSumOfSquares, residualDegreesOfFreedom);
  return {
    kind: 'chain',
    elements,
    absorbed,
    fit,
    scale: { kind: 'stated', birgeRatio: consistency?.inflation ?? 1, residualDegreesOfFreedom },
    observations: known,
    consistency,
    level,
  };
}

function timesIn(elements: readonly string[], element: string): number {
  return elements.filter((other) => other === element).length;
}

type ColumnFit = ChainFit['fit'] & Pick<LeastSquaresFit, 'residualSumOfSquares' | 'residualDegreesOfFreedom'>;

/** Where centring leaves nothing of any column (one display, no anchor), there is nothing to solve: all columns are undetermined. */
function fitColumns(
  columns: readonly (readonly number[])[],
  values: readonly number[],
  weights: readonly number[],
): ColumnFit {
  if (columns.some((column) => column.some((value) => value !== 0))) return fitLeastSquares(columns, values, weights);
  return {
    kept: [],
    aliased: columns.map((_, column) => ({ column, combination: [] })),
    coefficients: [],
    influence: [],
    residualSumOfSquares: fsum(values.map((value, row) => (weights[row] ?? 0) * value ** 2)),
    residualDegreesOfFreedom: values.length,
  };
}

export type ChainEstimate =
  /** `from`: ids of the sessions, and elements of the anchors, that it rests on. */
  | (UncertainValue & {
      readonly kind: 'estimate';
      readonly interval: Interval;
      readonly from: readonly string[];
      /** What each of them counts for: the estimate is the sum of their values, each times its share. */
      readonly shares: ReadonlyMap<string, number>;
    })
  /** `with`: the elements that it cannot be separated from. `unknown-element`: no session went through it. */
  | { readonly kind: 'not-estimable'; readonly reason: 'not-separable'; readonly with: readonly string[] }
  | { readonly kind: 'not-estimable'; readonly reason: 'unknown-element'; readonly with: readonly string[] };

/** An element's own latency, where something anchors it. */
export function estimateChainElement(chain: ChainFit, element: string): ChainEstimate {
  return estimateChainSum(chain, [element]);
}

/** How much more latency one element has than another, from every path through the network. */
export function estimateChainDifference(chain: ChainFit, element: string, than: string): ChainEstimate {
  return estimateChainSum(chain, [element], [than]);
}

/** Shares of an observation in an estimate below this are rounding. */
const NO_SHARE = 1e-9;

/** What several elements take together, less what others take: errors that they share count once. */
export function estimateChainSum(
  chain: ChainFit,
  plus: readonly string[],
  minus: readonly string[] = [],
): ChainEstimate {
  const { elements, absorbed, fit, observations, scale } = chain;
  const unknown = [...plus, ...minus].filter((element) => !elements.includes(element) && !absorbed.has(element));
  if (unknown.length > 0) return { kind: 'not-estimable', reason: 'unknown-element', with: unknown };
  const times = (element: string): number =>
    plus.filter((other) => other === element).length - minus.filter((other) => other === element).length;
  const taken = [...new Set([...plus, ...minus])].flatMap((element) => {
    const own = absorbed.get(element);
    return own ? [{ own, times: times(element) }] : [];
  });
  const contrast = elements.map(
    (element, k) => times(element) - fsum(taken.map((part) => part.times * (part.own.columnMeans[k] ?? 0))),
  );
  if (!isEstimable(fit, contrast))
    return { kind: 'not-estimable', reason: 'not-separable', with: mixedWith(chain, contrast, [...plus, ...minus]) };

  const parts = fit.kept.map((column) => contrast[column] ?? 0);
  const value = fsum([
    ...parts.map((part, k) => part * (fit.coefficients[k] ?? 0)),
    ...taken.map((part) => part.times * part.own.mean),
  ]);
  const shares = observations.map((_, row) => {
    const share = fsum([
      ...parts.map((part, k) => part * (fit.influence[k]?.[row] ?? 0)),
      ...taken.map((part) => part.times * (part.own.shares.get(row) ?? 0)),
    ]);
    return Math.abs(share) > NO_SHARE ? share : 0;
  });
  const error = combineErrors(observations.map((observation, row) => [shares[row] ?? 0, observation.error]));
  const estimate = scaled(propagate(value, error), scale);
  const counting = observations.flatMap(({ id }, row) => {
    const share = shares[row] ?? 0;
    return share === 0 ? [] : [[id, share] as const];
  });
  return {
    kind: 'estimate',
    ...estimate,
    interval: intervalAt(estimate, chain.level),
    from: counting.map(([id]) => id),
    shares: new Map(counting),
  };
}

/** Elements other than those asked for that move along when an undetermined amount is shifted between elements. */
function mixedWith(
  { elements, absorbed, fit }: ChainFit,
  contrast: readonly number[],
  asked: readonly string[],
): string[] {
  const mixed = new Set<number>();
  for (const { column, combination } of fit.aliased) {
    const implied = fsum(combination.map((part) => part.coefficient * (contrast[part.column] ?? 0)));
    if (Math.abs((contrast[column] ?? 0) - implied) <= 1e-7) continue;
    mixed.add(column);
    for (const part of combination) mixed.add(part.column);
  }
  return [
    ...elements.filter((_, j) => mixed.has(j)),
    ...[...absorbed]
      .filter(([, { columnMeans }]) => [...mixed].some((j) => columnMeans[j] !== 0))
      .map(([element]) => element),
  ].filter((element) => !asked.includes(element));
}
