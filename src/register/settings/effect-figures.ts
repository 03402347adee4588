import type { SettingEffect, SettingInteraction, SettingStep, EffectSize } from '../../analysis/setting-effects.ts';
import type { SettingsFit } from '../../analysis/settings-model.ts';
import type { Compilation } from '../compilation.ts';
import { bodyGroup, bodyGroupTitle } from '../comparisons/family.ts';
import { describeP } from '../comparisons/verdict-text.ts';
import { groupEntry } from '../entry-groups.ts';
import { KINDS, type KindName } from '../kinds.ts';
import type { Lookup } from '../lookup.ts';
import type { Figure, Subject, Weight } from '../register.ts';
import { describeMeasured, roundTo } from '../text.ts';
import { describeEffect, describeInteraction } from './effect-text.ts';
import { describeOver } from './over-words.ts';
import { listWords } from '../comparisons/pair-words.ts';
import { describeAt, describeLevels } from '../level-words.ts';
import { lowerFirst } from '../traits.ts';
import { INTERVAL_FACTOR, OTHER_FACTORS, rateIntervalMs, type SettingsModel } from './settings-models.ts';

/** Effects of a body's settings on a rig, and how they depend on each other: each as a number, effects in words too. */
export function effectFigures(compilation: Compilation, model: SettingsModel): readonly Figure[] {
  const { fit } = model;
  if (fit.kind === 'not-estimable') return [];
  const ofSettings = ({ setting }: SettingStep): boolean => !(setting in OTHER_FACTORS);
  const effects = fit.effects.filter(ofSettings);
  const interactions = fit.interactions.filter((each) => ofSettings(each) && ofSettings(each.with));
  return [
    ...effects.flatMap((effect) => figuresOf(compilation, model, fit, effect)),
    ...interactions.flatMap((interaction) => figuresOf(compilation, model, fit, interaction)),
  ];
}

function figuresOf(
  compilation: Compilation,
  model: SettingsModel,
  fit: SettingsFit,
  effect: SettingEffect | SettingInteraction,
): readonly Figure[] {
  if (effect.kind === 'not-estimable') return [];
  const { find } = compilation;
  const other = 'with' in effect ? effect.with : undefined;
  const otherSetting = other?.setting === INTERVAL_FACTOR ? 'rate' : (other?.setting ?? '');
  // A numeric setting's effect is per unit; published is the whole step between the levels that occur.
  const units = unitsOf(find, effect) * (other === undefined ? 1 : unitsOf(find, other));
  const size = scale(effect, units);
  const halfWidth = (size.interval.high - size.interval.low) / 2;
  const kind: KindName = other === undefined ? 'effect' : 'interaction';
  const overWords = 'over' in effect ? describeOver(find, effect.over) : '';
  const of: Subject = {
    setting: effect.setting,
    from: effect.from,
    to: effect.to,
    body: model.body,
    rig: model.rig,
    ...(overWords === '' ? {} : { over: overWords }),
    ...(other === undefined ? {} : { with: otherSetting, withFrom: other.from, withTo: other.to }),
  };
  const name = [
    model.body,
    model.rig,
    effect.setting,
    effect.from,
    effect.to,
    ...(other === undefined ? [] : [otherSetting, other.from, other.to]),
  ].join('/');
  const what = [
    `${find.setting(effect.setting).label}, ${describeLevels(find, effect.setting, effect.from, effect.to)}`,
    other === undefined ? overWords : describeAt(find, otherSetting, other.to, other.from),
  ]
    .filter(Boolean)
    .join(', ');
  const basis = {
    ...basisOf(model),
    of,
    unit: KINDS[kind].unit,
    value: size.value,
    interval: size.interval,
    group: bodyGroupTitle(find.body(model.body).name),
  };
  const words = describeModel(compilation, model, fit);
  const figure = (as: KindName, rest: Pick<Figure, 'text' | 'inWords'> & Partial<Figure>): Figure => {
    const id = `${as}/${name}`;
    return {
      id,
      kind: as,
      ...basis,
      label: `${KINDS[as].label}: ${what}, on ${find.rig(model.rig).name}`,
      entry: groupEntry(bodyGroup(model.body), id, model.rig),
      ...rest,
    };
  };
  const sized = { value: size.value, halfWidth, pAdjusted: size.pAdjusted, atMost: size.atMost };
  const adjusted = `Adjusted by Holm’s method for all ${other === undefined ? 'effects' : 'interactions'} of the model, p of none is ${describeP(size.pAdjusted)}.`;
  return [
    figure(kind, {
      text: describeMeasured(size.value, halfWidth, 'ms'),
      inWords: `${other === undefined ? `The change of the total for this step${overWords === '' ? ', the same at every level of the other settings' : `, ${overWords}: the levels at which both of its ends were measured`}.` : 'How much more the step changes the total at the one level of the other setting than at the other.'} ${words}`,
      standardUncertainty: size.standardUncertainty,
      coverageFactor: halfWidth / size.standardUncertainty,
      errorTail: size.errorTail,
      weights: weightsOf(model, size),
      p: size.p,
    }),
    figure(other === undefined ? 'effect-verdict' : 'interaction-verdict', {
      text: other === undefined ? describeEffect(sized) : describeInteraction(sized),
      inWords: `${adjusted} Where none is seen, the largest that it could be is given, by two one-sided tests at 5 %. ${words}`,
    }),
  ];
}

type Sized = Extract<EffectSize, { kind: 'effect' }>;

function scale(effect: Sized, units: number): Sized {
  const { low, high, level } = effect.interval;
  return {
    ...effect,
    value: effect.value * units,
    standardUncertainty: effect.standardUncertainty * Math.abs(units),
    interval: { low: Math.min(low * units, high * units), high: Math.max(low * units, high * units), level },
    errorTail: (x) => (units > 0 ? effect.errorTail(x / units) : 1 - effect.errorTail(x / units)),
    atMost: effect.atMost * Math.abs(units),
    weights: effect.weights.map((weight) => weight * units),
  };
}

/** Of the sessions with a say in it, each with the weight of its total; the rest are rounding of binary64. */
function weightsOf({ sessions }: SettingsModel, { weights }: Sized): readonly Weight[] {
  const least = 1e-12 * Math.max(...weights.map(Math.abs));
  return sessions.flatMap(({ session }, row) => {
    const weight = weights[row] ?? 0;
    return Math.abs(weight) > least ? [{ figure: `total/${session.id}`, weight }] : [];
  });
}

/** How many units of its number a step takes, with its sign; 1 for levels that are no numbers. */
function unitsOf(find: Lookup, { setting, from, to }: SettingStep): number {
  if (setting === INTERVAL_FACTOR) return rateIntervalMs(to) - rateIntervalMs(from);
  return find.setting(setting).kind === 'numeric' ? Number(to) - Number(from) : 1;
}

function basisOf({ sessions }: SettingsModel): Pick<Figure, 'readings' | 'runs' | 'excluded' | 'sources'> {
  const totals = sessions.flatMap(({ figures }) => figures.find(({ kind }) => kind === 'total') ?? []);
  const sum = (of: 'readings' | 'runs' | 'excluded'): number => totals.reduce((total, figure) => total + figure[of], 0);
  const sources = new Map(totals.flatMap((figure) => figure.sources).map((source) => [source.file, source]));
  return { readings: sum('readings'), runs: sum('runs'), excluded: sum('excluded'), sources: [...sources.values()] };
}

function describeModel(
  { find }: Compilation,
  { body, rig, sessions }: SettingsModel,
  { consistency, residual, design }: SettingsFit,
): string {
  const scatter =
    consistency === undefined || consistency.inflation === 1
      ? ''
      : ` The settings do not simply add up within the sessions’ uncertainties (p ${describeP(consistency.p)}), so all uncertainties are widened by ${roundTo(consistency.inflation, 2)}.`;
  const terms = [...new Set(design.termOf)].filter((term) => term.length > 0);
  const coefficients = listWords(terms.map((term) => term.map((factor) => factorWords(find, factor)).join(' × ')));
  return [
    `Weighted linear model of the totals of all ${sessions.length} sessions of ${find.body(body).name} on`,
    `${find.rig(rig).name} on their settings, weights one over the squared uncertainty: a sum of the totals at fixed`,
    `weights, whose error is the same sum of theirs. Coefficients: ${coefficients}.`,
    `${residual.degreesOfFreedom} sessions more than coefficients.${scatter}`,
  ].join(' ');
}

function factorWords(find: Lookup, factor: string): string {
  if (factor === INTERVAL_FACTOR) return 'frame interval';
  return OTHER_FACTORS[factor] ?? lowerFirst(find.setting(factor).label);
}
