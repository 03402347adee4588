import { countedReadings } from '../session-input.ts';
import { describeSignificant } from '../text.ts';
import type { Rule } from './rule.ts';

const STEPS = [100, 50, 20, 10, 5, 2];
const FEWEST_STAMPS = 16;
const SHARE = 0.9;

/**
 * Stamps that are nearly all multiples of more than one step: a timer that counts more coarsely than it writes, or
 * digits that were rounded.
 */
export const coarseDigits: Rule = ({ session }) => {
  const { resolutionMs } = session;
  const stamps = countedReadings(session).flatMap(({ sourceMs, shownMs }) =>
    [sourceMs, shownMs].filter((ms) => ms !== undefined),
  );
  if (resolutionMs === undefined || stamps.length < FEWEST_STAMPS) return undefined;
  const steps = STEPS.find(
    (step) => stamps.filter((ms) => Math.round(ms / resolutionMs) % step === 0).length >= SHARE * stamps.length,
  );
  if (steps === undefined) return undefined;
  const written = describeSignificant(resolutionMs, 2, 'ms');
  const real = describeSignificant(resolutionMs * steps, 2, 'ms');
  return {
    severity: 'caution',
    message: `Nearly all stamps are multiples of ${real}, though they are written in steps of ${written}.`,
    hint: `If the timer counts in steps of ${real}, state resolution: ${real} in the rig’s source-timer; if not, read the last digit too.`,
  };
};
