import { countedReadings } from '../../session-input.ts';
import type { Rule } from '../rule.ts';

/** What one writes of a reading that is not to count. */
const MEANT_OUT = new RegExp(
  [
    '\\b(?:exclu|discard|disregard|ignor|omit|reject|invalid|unusable)',
    '\\b(?:delete|skip|void|strike|struck)(?:ped|d)?\\b',
    '\\bdrop(?:ped)?\\b(?!\\s(?:frames?|pictures?|out)\\b)',
    '\\bremove (?:this|it)\\b|\\bto be removed\\b',
    "\\b(?:do|does|did|must|should|to)(?: not|n'?t) (?:be )?(?:count|use)",
    '\\bnot (?:to be )?(?:counted|used|usable|valid)\\b',
    '\\b(?:leave|left|take|taken) out\\b',
    '^\\W*(?:bad|wrong|out)\\W*$',
  ].join('|'),
  'i',
);
const MEANT_IN = /\b(?:not|never|no need to)\s+(?:to be\s+)?(?:exclud|discard|ignor|omit|drop|reject|remov|skip)/i;
/** Of a whole reading, as if there were none; of some digits only, it is a remark on one that could be read. */
const UNREAD = /\b(?:unreadable|illegible|misread|mistyped|not (?:readable|legible))\b/i;
const OF_DIGITS = /\b(?:digits?|tens|units|hundredths|tenths|thousandths)\b/i;

/** A reading counts unless its reason stands under `exclude`; a remark that says so under `note` leaves it in. */
export const noteExcludes: Rule = ({ session }) => {
  const lines = countedReadings(session)
    .filter(({ note = '' }) => isMeantOut(note))
    .map(({ line, note = '' }) => `line ${line} (${note})`);
  if (lines.length === 0) return undefined;
  return {
    severity: 'caution',
    message: `Counted, though the note reads as if it were not to be: ${lines.slice(0, 10).join(', ')}.`,
    hint: 'If it does not count, write the reason under exclude; if it does, say so in other words.',
  };
};

function isMeantOut(note: string): boolean {
  return (MEANT_OUT.test(note) && !MEANT_IN.test(note)) || (UNREAD.test(note) && !OF_DIGITS.test(note));
}
