import { judgeConsistency, type Consistency } from './birge.ts';
import type { CombinedUncertainty } from './components.ts';
import { DEFAULT_LEVEL, tInterval, type Interval } from './interval.ts';
import { fitLeastSquares, type LeastSquaresFit } from './least-squares.ts';
import { estimateContrast, type FitScale } from './linear-contrast.ts';

/** One session: its total is the sum of the elements it went through. */
export interface ChainObservation extends CombinedUncertainty {
  readonly id: string;
  /** `body:orrin/uhd-24`, `link:wireless`, `display:hall`. One named twice counts twice. */
  readonly elements: readonly string[];
  readonly value: number;
}

/** A latency of one element that is known from elsewhere. */
export interface ChainAnchor extends CombinedUncertainty {
  readonly element: string;
  readonly value: number;
}

export interface ChainFit {
  readonly kind: 'chain';
  /** In order of first appearance. */
  readonly elements: readonly string[];
  readonly fit: LeastSquaresFit;
  readonly scale: FitScale;
  readonly observations: readonly CombinedUncertainty[];
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
 * An error shared by all sessions of a rig may be given as an element of its own, anchored at 0 with its uncertainty.
 *
 * Domain: uncertainties above 0. Widened by the Birge ratio where χ² says that the stated ones do not explain the scatter.
 */
export function fitChain(
  observations: readonly ChainObservation[],
  anchors: readonly ChainAnchor[] = [],
  level = DEFAULT_LEVEL,
): ChainFit | NoChainFit {
  if (observations.length === 0) return { kind: 'not-estimable', reason: 'no-sessions' };
  const rows = [...observations, ...anchors.map((anchor) => ({ ...anchor, elements: [anchor.element] }))];
  if (rows.some((row) => row.standardUncertainty === 0)) return { kind: 'not-estimable', reason: 'no-uncertainty' };
  const elements = [...new Set(observations.flatMap((observation) => observation.elements))];
  const known = rows.filter((row) => row.elements.every((element) => elements.includes(element)));
  const columns = elements.map((element) => known.map((row) => row.elements.filter((other) => other === element).length));
  const fit = fitLeastSquares(columns, known.map((row) => row.value), known.map((row) => row.standardUncertainty ** -2));
  const consistency = judgeConsistency(fit.residualSumOfSquares, fit.residualDegreesOfFreedom);
  return {
    kind: 'chain',
    elements,
    fit,
    scale: { kind: 'stated', birgeRatio: consistency?.inflation ?? 1, residualDegreesOfFreedom: fit.residualDegreesOfFreedom },
    observations: known,
    consistency,
    level,
  };
}

export type ChainEstimate =
  | (CombinedUncertainty & { readonly kind: 'estimate'; readonly value: number; readonly interval: Interval })
  /** `with`: the elements that it cannot be separated from. `unknown-element`: no session went through it. */
  | { readonly kind: 'not-estimable'; readonly reason: 'not-separable'; readonly with: readonly string[] }
  | { readonly kind: 'not-estimable'; readonly reason: 'unknown-element'; readonly with: readonly string[] };

/** An element's own latency, where something anchors it. */
export function estimateChainElement(chain: ChainFit, element: string): ChainEstimate {
  return estimateSum(chain, [element], []);
}

/** How much more latency one element has than another, from every path through the network. */
export function estimateChainDifference(chain: ChainFit, element: string, than: string): ChainEstimate {
  return estimateSum(chain, [element], [than]);
}

function estimateSum(chain: ChainFit, plus: readonly string[], minus: readonly string[]): ChainEstimate {
  const unknown = [...plus, ...minus].filter((element) => !chain.elements.includes(element));
  if (unknown.length > 0) return { kind: 'not-estimable', reason: 'unknown-element', with: unknown };
  const contrast = chain.elements.map(
    (element) => plus.filter((other) => other === element).length - minus.filter((other) => other === element).length,
  );
  const estimate = estimateContrast(chain.fit, contrast, chain.observations, chain.scale);
  if (!estimate) return { kind: 'not-estimable', reason: 'not-separable', with: mixedWith(chain, contrast) };
  const { value, standardUncertainty, degreesOfFreedom } = estimate;
  if (standardUncertainty === 0) return { kind: 'estimate', ...estimate, interval: { low: value, high: value, level: chain.level } };
  return { kind: 'estimate', ...estimate, interval: tInterval(value, standardUncertainty, degreesOfFreedom, chain.level) };
}

/** Elements other than the contrast's own that move along when an undetermined amount is shifted between elements. */
function mixedWith({ elements, fit }: ChainFit, contrast: readonly number[]): string[] {
  const mixed = new Set<number>();
  for (const { column, combination } of fit.aliased) {
    const implied = combination.reduce((sum, part) => sum + part.coefficient * (contrast[part.column] ?? 0), 0);
    if (Math.abs((contrast[column] ?? 0) - implied) <= 1e-7) continue;
    mixed.add(column);
    for (const part of combination) mixed.add(part.column);
  }
  return elements.filter((_, j) => mixed.has(j) && (contrast[j] ?? 0) === 0);
}
