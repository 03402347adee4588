import { countedReadings } from '../../session-input.ts';
import type { Rule } from '../rule.ts';

/** What one writes of a reading that is not to count. */
const MEANT_OUT =
  /\b(?:exclu|discard|disregard|ignor|omit|drop(?:ped)?\b|leave(?:n)? out|left out|do(?:es)? not (?:count|use)|don'?t (?:count|use)|not counted|void\b|invalid)/i;
const MEANT_IN = /\b(?:not|never|no need to)\s+(?:to be\s+)?(?:exclud|discard|ignor|omit|drop)/i;

/** A reading counts unless its reason stands under `exclude`; a remark that says so under `note` leaves it in. */
export const noteExcludes: Rule = ({ session }) => {
  const lines = countedReadings(session)
    .filter(({ note = '' }) => MEANT_OUT.test(note) && !MEANT_IN.test(note))
    .map(({ line, note = '' }) => `line ${line} (${note})`);
  if (lines.length === 0) return undefined;
  return {
    severity: 'caution',
    message: `Counted, though the note reads as if it were not to be: ${lines.slice(0, 10).join(', ')}.`,
    hint: 'If it does not count, write the reason under exclude; if it does, say so in other words.',
  };
};
