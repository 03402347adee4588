import { plural } from '../../provenance.ts';
import type { Rule } from '../rule.ts';

/** Rows that are soon forgotten; who takes fewer than that on purpose takes far fewer. */
const MOST_FORGOTTEN = 2;
const FEWEST = 3;

/**
 * One clip a row or two shorter than all others of its session, excluded rows counted: a row that was lost, or left out
 * where it should stand with its reason.
 */
export const unevenClips: Rule = ({ session }) => {
  if (session.cutShort !== undefined) return undefined;
  const clips = [...Map.groupBy(session.readings, ({ run }) => run)].map(([run, rows]) => ({ run, rows: rows.length }));
  const usual = Math.max(...clips.map(({ rows }) => rows));
  const short = clips.filter(({ rows }) => rows < usual);
  const [one] = short;
  if (one === undefined || short.length > 1 || one.rows < FEWEST || usual - one.rows > MOST_FORGOTTEN) return undefined;
  return {
    severity: 'note',
    message: `Clip ${one.run} has ${plural(one.rows, 'row')}, and ${clips.length === 2 ? 'the other' : 'each of the others'} ${usual}.`,
    hint: 'Look whether a row was lost. A reading that was taken and does not count stays in the file, with its reason under exclude.',
  };
};
