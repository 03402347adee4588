import { plural } from '../provenance.ts';
import type { Rule } from './rule.ts';

/** All readings from one clip: nothing in the session tells how much clips differ. */
export const oneRunOnly: Rule = ({ estimate: { diagnostics } }) =>
  diagnostics.runs > 1
    ? undefined
    : {
        severity: 'note',
        message: `All ${plural(diagnostics.readings, 'reading')} come from one clip, so nothing here tells how much clips differ.`,
        hint: 'Stop and start the recording between readings: every clip begins with phases of its own.',
      };
