/** Whether the readings scatter as the rates of the rig say that they must. */
import { chiSquareQuantile } from '../../analysis/distributions.ts';
import { describeSignificant } from '../text.ts';
import type { Rule } from './rule.ts';

/** How sure the estimate must be before a finding says so; JCGM 101 has no rule for it, so this one is ours. */
const SURE = 0.95;
/** Chance at which a scatter this small would come about on a rig as described. */
const RARE = 0.001;

export const scatterBeyondRig: Rule = ({ estimate: { diagnostics } }) => {
  const { jitterProbability, observedScatterMs, expectedScatterMs } = diagnostics;
  if (jitterProbability < SURE || observedScatterMs === undefined || observedScatterMs <= expectedScatterMs)
    return undefined;
  return {
    severity: 'caution',
    message: `Readings scatter by ${ms(observedScatterMs)} where the rates of the rig explain ${ms(expectedScatterMs)}: something else varies from reading to reading. The interval has been widened for it.`,
    hint: 'Look for a body or link that drops or repeats frames, misread digits, and rates that are not what the rig’s file says.',
  };
};

export const scatterTooSmall: Rule = ({ estimate: { diagnostics } }) => {
  const { observedScatterMs, expectedScatterMs, scatterDegreesOfFreedom: degrees, beats } = diagnostics;
  // Locked rates can make all readings of a clip alike; that has a finding of its own.
  if (observedScatterMs === undefined || beats.some(({ p, q }) => Math.max(p, q) <= 2)) return undefined;
  const statistic = (degrees * observedScatterMs ** 2) / expectedScatterMs ** 2;
  if (statistic > chiSquareQuantile(RARE, degrees)) return undefined;
  return {
    severity: 'caution',
    message: `Readings scatter by only ${ms(observedScatterMs)} where no rig with these rates gives less than about ${ms(expectedScatterMs)}.`,
    hint: 'Check that the readings come from different moments of the clip, and that refresh and frame rates in the rig’s file are true.',
  };
};

export const runsDisagree: Rule = ({ estimate: { diagnostics, speaksOf } }) =>
  diagnostics.betweenRunsProbability < SURE
    ? undefined
    : {
        severity: 'caution',
        message: `The clips differ by more than their phases explain: the delay itself changes from clip to clip. ${speaksOf === 'clips' ? 'The figure speaks of these clips; another clip may well lie outside its interval' : 'The interval allows for it, as far as the clips of this bench have shown how much'}.`,
        hint: 'Record more clips, and note what was done between them: restarts, menus, heat.',
      };

export const stampsAgainstRates: Rule = ({ session, estimate: { diagnostics } }) =>
  diagnostics.stampsAgreeWithRates || session.method !== 'two-timers'
    ? undefined
    : {
        severity: 'warning',
        message:
          'The stamps fit neither the rates that the rig and the session state nor one misread digit, so the interval takes every phase as unknown in every reading.',
        hint: 'Check the rate in the session’s file, source-timer refresh in the rig’s, and look for misread digits.',
      };

function ms(value: number): string {
  return describeSignificant(value, 2, 'ms');
}
