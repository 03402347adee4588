import { max, median } from 'd3-array';
import type { Session } from '../../../model/bench.ts';
import { describeSignificant } from '../../text.ts';
import type { Rule } from '../rule.ts';

/** Share of a reading from which on its instrument says hardly anything. */
const COARSE = 0.25;

/**
 * An instrument cannot be better than the digits that it shows: rounding to a step leaves an expanded uncertainty of
 * more than half of it (JCGM 100, F.2.2.1: step/√12, doubled). One that is stated as finer was written in another unit,
 * or digits were lost.
 */
export const fineInstrument: Rule = ({ session, find }) => {
  const { instrument, file } = find.rig(session.rig);
  if (session.method !== 'instrument' || instrument === undefined) return undefined;
  const stepMs = instrumentStepMs(session);
  const { expandedUncertaintyMs } = instrument;
  const middleMs = median(session.readings, ({ latencyMs }) => latencyMs) ?? 0;
  if (expandedUncertaintyMs > COARSE * middleMs)
    return {
      severity: 'caution',
      message: `${file.path} states an instrument.expanded-uncertainty of ${describeSignificant(expandedUncertaintyMs, 2, 'ms')}, and the readings are about ${describeSignificant(middleMs, 3, 'ms')}: it decides nearly all of the interval.`,
      hint: 'Check the unit of the uncertainty, and that it is the one of a single reading.',
    };
  if (expandedUncertaintyMs >= stepMs / 2) return undefined;
  return {
    severity: 'warning',
    message: `The readings are written in steps of ${describeSignificant(stepMs, 1, 'ms')}, and ${file.path} states an instrument.expanded-uncertainty of ${describeSignificant(expandedUncertaintyMs, 2, 'ms')}, finer than that allows.`,
    hint: 'Check the unit of the uncertainty, and whether the readings have all digits that the instrument shows.',
  };
};

/** Step of the last digit that any reading of an instrument is written with. */
export function instrumentStepMs({ readings }: Pick<Session, 'readings'>): number {
  return 10 ** -(max(readings, ({ cells }) => cells['latency']?.split('.')[1]?.length ?? 0) ?? 0);
}
