import { commonLevels } from './common-levels.ts';
import type { FactorLevels, Design, Factor, Term } from './design-matrix.ts';
import { testEquivalence } from './equivalence.ts';
import { intervalAt, probabilityOfZero } from './error-tail.ts';
import { adjustHolm } from './holm.ts';
import type { Interval } from './interval.ts';
import type { LeastSquaresFit } from './least-squares.ts';
import { estimateContrast, sharesOf, type FitScale, type Weighed } from './linear-contrast.ts';

/** A step from one level of a setting to another. */
export interface SettingStep {
  readonly setting: string;
  /** A numeric setting has its lowest and highest level here, and its effect per unit of its number. */
  readonly from: string;
  readonly to: string;
}

export type EffectSize =
  | {
      readonly kind: 'effect';
      readonly value: number;
      readonly standardUncertainty: number;
      readonly interval: Interval;
      /** P(value − truth ≥ x). */
      readonly errorTail: (x: number) => number;
      /** Two-sided p of no effect. */
      readonly p: number;
      /** Holm-adjusted over all effects (or all interactions) of the model. */
      readonly pAdjusted: number;
      /** With probability 1 − alpha it is no larger than this in either direction (two one-sided tests). */
      readonly atMost: number;
      /** By observation: the value is the sum of the observations at these weights. */
      readonly weights: readonly number[];
    }
  | { readonly kind: 'not-estimable'; readonly reason: 'not-separable' };

/** Change of the value from → to, averaged with equal weight over those levels of other settings on which it depends. */
export type SettingEffect = SettingStep & {
  /** By factor: the levels averaged over (see common-levels.ts). */
  readonly over: Readonly<Record<string, readonly string[]>>;
} & EffectSize;

/** By how much the effect of one step is larger at `with.to` than at `with.from`: a difference of differences. */
export type SettingInteraction = SettingStep & { readonly with: SettingStep } & EffectSize;

/** Effects of the main terms: ordered settings step by step, unordered ones against their first level, numeric ones per unit. */
export function estimateEffects(
  fit: LeastSquaresFit,
  design: Design,
  terms: readonly Term[],
  observations: readonly (Weighed & { readonly condition: FactorLevels })[],
  scale: FitScale,
  level: number,
): SettingEffect[] {
  const conditions = observations.map(({ condition }) => condition);
  const steps = termsOfOrder(1, terms).flatMap(([id]) =>
    stepsOf(design, id).map((step) => ({ ...step, over: commonLevels(conditions, design.factors, terms, step) })),
  );
  const sizes = sizesOf(
    steps.map(({ setting, from, to, units, over }) =>
      combine([
        [1 / units, design.averageRowOf({ [setting]: to }, over)],
        [-1 / units, design.averageRowOf({ [setting]: from }, over)],
      ]),
    ),
    fit,
    observations,
    scale,
    level,
  );
  return steps.map(({ setting, from, to, over }, i) => ({ setting, from, to, over, ...(sizes[i] ?? NOT_SEPARABLE) }));
}

/** Differences of differences for the terms of two settings, each level of both against its first one (numeric: per unit). */
export function estimateInteractions(
  fit: LeastSquaresFit,
  design: Design,
  terms: readonly Term[],
  observations: readonly Weighed[],
  scale: FitScale,
  level: number,
): SettingInteraction[] {
  const pairs = termsOfOrder(2, terms).flatMap(([first, second]) =>
    stepsOf(design, first, 'first').flatMap((a) => stepsOf(design, second, 'first').map((b) => ({ a, b }))),
  );
  const sizes = sizesOf(
    pairs.map(({ a, b }) => {
      const unit = 1 / (a.units * b.units);
      const at = (levelA: string, levelB: string): number[] =>
        design.averageRowOf({ [a.setting]: levelA, [b.setting]: levelB });
      return combine([
        [unit, at(a.to, b.to)],
        [-unit, at(a.from, b.to)],
        [-unit, at(a.to, b.from)],
        [unit, at(a.from, b.from)],
      ]);
    }),
    fit,
    observations,
    scale,
    level,
  );
  return pairs.map(({ a, b }, i) => ({
    setting: a.setting,
    from: a.from,
    to: a.to,
    with: { setting: b.setting, from: b.from, to: b.to },
    ...(sizes[i] ?? NOT_SEPARABLE),
  }));
}

const NOT_SEPARABLE: EffectSize = { kind: 'not-estimable', reason: 'not-separable' };

function sizesOf(
  contrasts: readonly (readonly number[])[],
  fit: LeastSquaresFit,
  observations: readonly Weighed[],
  scale: FitScale,
  level: number,
): EffectSize[] {
  // A factor that enters interactions only has no column of its own, and so no effect of which anything could be said.
  const estimates = contrasts.map((contrast) => {
    if (contrast.every((part) => part === 0)) return undefined;
    const estimate = estimateContrast(fit, contrast, observations, scale);
    return estimate && { estimate, weights: sharesOf(fit, contrast) };
  });
  const adjusted = adjustHolm(estimates.flatMap((each) => (each ? [probabilityOfZero(each.estimate)] : [])));
  let next = 0;
  return estimates.map((each): EffectSize => {
    if (!each) return NOT_SEPARABLE;
    const { estimate, weights } = each;
    const { value, standardUncertainty } = estimate;
    return {
      kind: 'effect',
      value,
      standardUncertainty,
      interval: intervalAt(estimate, level),
      errorTail: estimate.errorTail,
      p: probabilityOfZero(estimate),
      pAdjusted: adjusted[next++] ?? 1,
      // any margin will do: the smallest one that would show sameness does not depend on it
      atMost: testEquivalence(estimate, 1, 1 - level).smallestMargin,
      weights,
    };
  });
}

/** The steps of a setting that varies; none for one that does not. `neighbours`: an ordered setting goes level by level. */
function stepsOf(
  design: Design,
  id: string | undefined,
  from: 'first' | 'neighbours' = 'neighbours',
): (SettingStep & { readonly units: number })[] {
  const factor: Factor | undefined = design.factors.find((candidate) => candidate.id === id);
  if (!factor || factor.levels.length < 2) return [];
  const { kind, levels, numbers = [] } = factor;
  const [first = '', ...others] = levels;
  if (kind === 'numeric') {
    return [
      { setting: factor.id, from: first, to: others.at(-1) ?? first, units: (numbers.at(-1) ?? 0) - (numbers[0] ?? 0) },
    ];
  }
  return others.map((to, k) => ({
    setting: factor.id,
    from: kind === 'ordered' && from === 'neighbours' ? (levels[k] ?? first) : first,
    to,
    units: 1,
  }));
}

function termsOfOrder(order: number, terms: readonly Term[]): Term[] {
  return terms.filter((term) => term.length === order);
}

function combine(parts: readonly (readonly [factor: number, row: readonly number[]])[]): number[] {
  const width = parts[0]?.[1].length ?? 0;
  return Array.from({ length: width }, (_, j) => parts.reduce((sum, [factor, row]) => sum + factor * (row[j] ?? 0), 0));
}
