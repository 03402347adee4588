import { plural } from '../provenance.ts';
import type { Rule } from './rule.ts';

const MOST = 0.25;

/** So many readings left out that the choice of what counts may matter more than the readings. */
export const manyExcluded: Rule = ({ session: { readings }, estimate: { diagnostics } }) => {
  const excluded = readings.length - diagnostics.readings;
  if (excluded / readings.length <= MOST) return undefined;
  return {
    severity: 'caution',
    message: `${plural(excluded, 'reading')} of ${readings.length} are excluded: choosing what counts may matter more here than the readings themselves.`,
    hint: 'Film again with a shorter exposure or larger digits, so that fewer readings are in doubt.',
  };
};
