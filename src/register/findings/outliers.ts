import { testGrubbs } from '../../analysis/outliers.ts';
import { meanOf } from '../../analysis/summary.ts';
import { countedReadings } from '../session-input.ts';
import { roundTo } from '../text.ts';
import type { Rule } from './rule.ts';

const ALPHA = 0.01;

/** The reading that lies furthest from its clip's mean, where Grubbs' test (NIST/SEMATECH e-Handbook, 1.3.5.17.1) flags it. Nothing is removed. */
export const outliers: Rule = ({ session }) => {
  const counted = countedReadings(session);
  const means = new Map(
    [...Map.groupBy(counted, ({ run }) => run)].map(([run, readings]) => [
      run,
      meanOf(readings.map(({ latencyMs }) => latencyMs)),
    ]),
  );
  const test = testGrubbs(
    counted.map(({ run, latencyMs }) => latencyMs - (means.get(run) ?? 0)),
    ALPHA,
  );
  const reading = test?.flagged ? counted[test.index] : undefined;
  if (test === undefined || reading === undefined) return undefined;
  return {
    severity: 'caution',
    message: `Reading ${session.readings.indexOf(reading) + 1} (line ${reading.line} of the file, ${roundTo(reading.latencyMs, 0)} ms) is an outlier by Grubbs’ test: G = ${roundTo(test.g, 2)}, critical value ${roundTo(test.criticalValue, 2)} at 1 %. It still counts.`,
    hint: 'Look at the frame again. If it was misread, say so under exclude; if not, leave it.',
  };
};
