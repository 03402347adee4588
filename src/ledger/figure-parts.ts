/**
 * What a figure states besides its text, value and interval, in parts that can be told apart when one of them moves.
 */
import { inWordsOf } from '../register/kinds.ts';
import type { Component, Figure } from '../register/register.ts';
import { digestOfText } from './digest.ts';
import { joinParts } from './moves.ts';

const DIGITS = 6;

/**
 * `u 2.3; degrees of freedom 12; rig phases: u 2.1, type B, uniform, degrees of freedom ∞, share 0.83; words 1a2b3c4d`.
 */
export function statesBesides(figure: Figure): string {
  const { standardUncertainty, coverageFactor, p, reason, limits, verdict, uncorrected } = figure;
  const { readings, runs, excluded, interval, unit, components = [], corrections = [] } = figure;
  return joinParts([
    ...named('u', standardUncertainty),
    ...named('k', coverageFactor),
    ...named('level', interval?.level),
    ...named('p', p),
    ...named('at least', limits?.low),
    ...named('at most', limits?.high),
    ...named('before corrections', uncorrected),
    ...corrections.map((each) => `${each.name}: ${digits(each.value)}, u ${digits(each.standardUncertainty)}`),
    ...components.map(describeComponent),
    ...(verdict === undefined
      ? []
      : [
          `verdict ${verdict.word}`,
          ...named('margin', verdict.marginMs),
          `family ${verdict.family} of ${verdict.familySize}`,
          ...named('claimed', verdict.claimed),
          ...named('adjusted p', verdict.pAdjusted),
          ...named('adjusted p of the same', verdict.pSameAdjusted),
          ...named('further runs', verdict.furtherRuns),
          ...named('further sessions', verdict.furtherSessions),
        ]),
    ...(reason === undefined ? [] : [`no interval: ${reason}`]),
    `readings ${readings} in ${runs}, ${excluded} excluded`,
    `words ${digestOfText(JSON.stringify([unit, figure.label, inWordsOf(figure), figure.group ?? null]))}`,
  ]);
}

function describeComponent(component: Component): string {
  const { name, type, distribution, standardUncertainty, degreesOfFreedom, share, shared } = component;
  const parts = [
    `u ${digits(standardUncertainty)}`,
    `type ${type}`,
    distribution,
    `degrees of freedom ${digits(degreesOfFreedom)}`,
    `share ${digits(share)}`,
    ...(shared === null ? [] : [`shared ${shared}`]),
  ];
  return `${name}: ${parts.join(', ')}`;
}

function named(name: string, value: number | null | undefined): readonly string[] {
  return value === undefined ? [] : [`${name} ${digits(value)}`];
}

/** More digits than any page prints, and fewer than libraries differ in. */
function digits(value: number | null): string {
  return value === null || value === Infinity ? '∞' : String(Number(value.toPrecision(DIGITS)));
}
