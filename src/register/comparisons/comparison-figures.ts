/** A family of comparisons → its figures: difference, ratio and verdict of each pair, and the size of the family. */
import type { BudgetedValue } from '../../analysis/components.ts';
import type { Difference, NoDifference } from '../../analysis/difference.ts';
import { compareFamily, type Comparison } from '../../analysis/family.ts';
import type { NoRatio, Ratio } from '../../analysis/ratio.ts';
import { intervalMs } from '../../model/rate.ts';
import type { Compilation } from '../compilation.ts';
import { groupEntry } from '../entry-groups.ts';
import { KINDS, type KindName } from '../kinds.ts';
import { finiteOrNull, type Component, type Figure } from '../register.ts';
import { describeMeasured, describeValue } from '../text.ts';
import { differenceId, ratioId, verdictId, type Family, type SessionPair } from './family.ts';
import { describePair } from './pair-words.ts';
import { labelPairs, type PairLabels } from './pair-labels.ts';
import { describeRatio } from './ratio-text.ts';
import { planRuns } from './run-plan.ts';
import { describeDecision, familySizeFigure, verdictData } from './verdict-data.ts';
import { describeReason, describeVerdict } from './verdict-text.ts';

const ALPHA = 0.05;

/** What a margin is where nobody states one: half a frame interval of the faster of the two rates. */
function defaultMarginMs({ session }: Compilation, { a, b }: SessionPair): number {
  return Math.min(...[a, b].map((id) => intervalMs(session(id).session.rate))) / 2;
}

/** @param alpha one less the coverage of every interval, and the probability of any false verdict of a kind */
export function comparisonFigures(compilation: Compilation, family: Family, alpha = ALPHA): readonly Figure[] {
  const labels = labelPairs(compilation.bench, family.pairs);
  const asked = family.pairs.map((pair) => ({
    pair,
    marginMs: pair.marginMs ?? defaultMarginMs(compilation, pair),
    a: comparedSession(compilation, pair.a),
    b: comparedSession(compilation, pair.b),
  }));
  const comparisons = compareFamily(
    asked.map(({ pair, a, b, marginMs }) => ({
      id: differenceId(pair),
      a: a.budget,
      b: b.budget,
      margin: marginMs,
      plan: planRuns(a, b),
    })),
    alpha,
    family.claimed,
  );
  const ratios = ratiosOf(compilation, asked, 1 - alpha);
  const figures = comparisons.flatMap((comparison, index): readonly Figure[] => {
    const [question, ratio] = [asked[index], ratios[index]];
    if (question === undefined || ratio === undefined) return [];
    const { pair, marginMs, a, b } = question;
    return [
      differenceFigure({ compilation, family, labels, pair, sides: [a, b], difference: comparison.difference }),
      ...ratioFigure(compilation, family, pair, ratio, labels),
      verdictFigure(compilation, family, pair, comparison, { marginMs, alpha }, labels),
    ];
  });
  return [...figures, familySizeFigure({ ...family, size: family.pairs.length }, figures)];
}

/** Of all pairs at once, so that each session is handed over once. */
function ratiosOf(
  { ratios }: Compilation,
  pairs: readonly { readonly a: ComparedSession; readonly b: ComparedSession }[],
  level: number,
): readonly (Ratio | NoRatio)[] {
  const sides = new Map(pairs.flatMap(({ a, b }) => [a, b]).map((side) => [side.id, side.budget]));
  const places = new Map([...sides.keys()].map((id, place) => [id, place]));
  const placeOf = ({ id }: ComparedSession): number => places.get(id) ?? 0;
  return ratios({ values: [...sides.values()], pairs: pairs.map(({ a, b }) => [placeOf(a), placeOf(b)]), level });
}

export interface DifferenceOf {
  readonly compilation: Compilation;
  readonly family: Family;
  readonly labels: PairLabels;
  readonly pair: SessionPair;
  readonly sides: readonly [ComparedSession, ComparedSession];
  readonly difference: Difference | NoDifference;
}

export function differenceFigure({ compilation, family, labels, pair, sides, difference }: DifferenceOf): Figure {
  const { value } = difference;
  const figure = ofPair(compilation, family, pair, 'difference', differenceId(pair), labels);
  const words = describePair(compilation, pair);
  if (difference.kind === 'not-estimable') {
    return {
      ...figure,
      value,
      reason: difference.reason,
      text: describeValue(value, 1, 'ms'),
      inWords: `${words} No interval: ${describeReason(difference.reason)}.`,
    };
  }
  const { interval, standardUncertainty, p, errorTail } = difference;
  return {
    ...figure,
    value,
    standardUncertainty,
    errorTail,
    interval,
    coverageFactor: (interval.high - interval.low) / 2 / standardUncertainty,
    p,
    components: componentsOf(compilation, sides, difference),
    text: describeMeasured(value, (interval.high - interval.low) / 2, 'ms'),
    inWords: words,
  };
}

function ratioFigure(
  compilation: Compilation,
  family: Family,
  pair: SessionPair,
  ratio: Ratio | NoRatio,
  labels: PairLabels,
): readonly Figure[] {
  // Over zero there is no ratio to publish; without scatter the difference says why.
  if (ratio.kind === 'not-estimable') return [];
  const { value, set } = ratio;
  return [
    {
      ...ofPair(compilation, family, pair, 'ratio', ratioId(pair), labels),
      value,
      ...(set.kind === 'bounded'
        ? { interval: { low: set.low, high: set.high, level: set.level } }
        : { reason: 'unbounded' }),
      text: describeRatio(ratio),
      inWords: `${KINDS.ratio.inWords} ${describePair(compilation, pair)}`,
    },
  ];
}

function verdictFigure(
  compilation: Compilation,
  family: Family,
  pair: SessionPair,
  comparison: Comparison,
  { marginMs, alpha }: { readonly marginMs: number; readonly alpha: number },
  labels: PairLabels,
): Figure {
  const { difference } = comparison;
  const data = verdictData(comparison, {
    family: family.id,
    familySize: family.pairs.length,
    ...(family.claimed ? { claimed: family.claimed } : {}),
    marginMs,
  });
  return {
    ...ofPair(compilation, family, pair, 'verdict', verdictId(family.id, pair), labels),
    value: difference.value,
    ...(difference.kind === 'difference' ? { interval: difference.interval } : {}),
    verdict: data,
    text: describeVerdict(comparison, marginMs),
    inWords: [
      describePair(compilation, pair),
      ...describeDecision(data, { inWords: family.inWords, isMarginStated: pair.marginMs !== undefined, alpha }),
    ].join(' '),
  };
}

/** What every figure of a pair has in common. */
export function ofPair(
  { session }: Compilation,
  family: Family,
  pair: SessionPair,
  kind: KindName,
  id: string,
  labels: PairLabels,
): Omit<Figure, 'value' | 'text'> {
  const totals = [pair.a, pair.b].map((each) => session(each).figures.find((figure) => figure.kind === 'total'));
  const sum = (of: 'readings' | 'runs' | 'excluded'): number =>
    totals.reduce((total, figure) => total + (figure?.[of] ?? 0), 0);
  const sources = new Map(totals.flatMap((figure) => figure?.sources ?? []).map((source) => [source.file, source]));
  const { group, row } = labels.of(pair);
  const { speaksOf } = session(pair.a).total;
  return {
    id,
    kind,
    of: { session: pair.a, than: pair.b },
    unit: KINDS[kind].unit,
    readings: sum('readings'),
    runs: sum('runs'),
    excluded: sum('excluded'),
    ...(speaksOf === undefined ? {} : { speaksOf }),
    sources: [...sources.values()],
    label: `${KINDS[kind].label}: ${[group, row].filter(Boolean).join(', ')}`,
    entry: groupEntry(family.group, id, pair.a),
    group: family.groupTitle,
  };
}

/** One session as a side of a comparison. */
export interface ComparedSession {
  readonly id: string;
  readonly budget: BudgetedValue;
  readonly runs: number;
}

export function comparedSession({ session, budgetOf }: Compilation, id: string): ComparedSession {
  const runs = session(id).figures.find(({ kind }) => kind === 'total')?.runs ?? 1;
  return { id, budget: budgetOf(id), runs };
}

/**
 * Each session's own components under its name; of a shared one, what is left where the two have it in different sizes.
 */
function componentsOf(
  { session }: Compilation,
  sides: readonly ComparedSession[],
  { components, standardUncertainty }: Difference,
): readonly Component[] {
  return components
    .filter((component) => component.standardUncertainty > 0)
    .map((component): Component => {
      const owner = sides.find(({ budget }) => budget.components.includes(component));
      const described = sides
        .flatMap(({ id }) => session(id).estimate.components)
        .find(({ name }) => name === component.name);
      return {
        name: owner === undefined ? `${component.name}, as far as it differs` : `${component.name}, ${owner.id}`,
        type: described?.type ?? 'B',
        distribution: described?.distribution ?? 'rectangular',
        standardUncertainty: component.standardUncertainty,
        degreesOfFreedom: finiteOrNull(component.degreesOfFreedom),
        share: (component.standardUncertainty / standardUncertainty) ** 2,
        shared: component.sharedKey,
      };
    });
}
