import { countedReadings } from '../../session-input.ts';
import type { Rule } from '../rule.ts';

const FEWEST = 4;

/** Every reading a run of its own: rare on a bench, and what a misunderstood column gives. */
export const runEach: Rule = ({ session }) => {
  const counted = countedReadings(session);
  if (counted.length < FEWEST || new Set(counted.map(({ run }) => run)).size < counted.length) return undefined;
  return {
    severity: 'caution',
    message: `Each of the ${counted.length} readings is a run of its own, so that all phases count as fresh.`,
    hint: 'A run is one clip: give readings from one clip the same number. Leave it if the recording was restarted for each.',
  };
};
