/** Whether the sentence around a claim turns it round: the data support the words of the claim, not their opposite. */
import type { Part } from '../../model/bench.ts';
import type { Problem } from '../../model/problem.ts';

/** Not `not only`, `not just`, which go on to say more. */
const NOT =
  "(?:not(?!\\s(?:only|just|merely)\\b)|\\w+n['’]t|cannot|never|no longer|neither|nor|hardly|scarcely|barely|nowhere near|far from|anything but)";
/** In the clause that leads to the claim. */
const DENIED_BEFORE = new RegExp(`\\b${NOT}\\b[^,;:—–]*$`, 'iu');
/** Anywhere before it in the sentence: what is said so is not said by the author. */
const DOUBTED_BEFORE =
  /\b(?:(?:un|not )true|false(?:ly)?|wrong(?:ly)?|incorrect(?:ly)?|mistaken(?:ly)?|myth|nonsense|(?:no one|nobody) (?:can|could|should|would|will)|den(?:y|ies|ied)|(?<!\b(?:no|without|beyond)\s(?:a\s|any\s)?)doubt(?:s|ed|ful)?|refut(?:e|es|ed)|disprov(?:e|es|ed|en)|unlikely|as if|pretend(?:s|ed)?)\b/iu;
/** What is said of it right after it. */
const DENIED_AFTER = new RegExp(
  `^,?\\s*(?:which\\s)?(?:is|are|was|were|proved|proves|turned out|turns out)\\s(?:to be\\s)?(?:${NOT}\\b|untrue|false|wrong|incorrect|mistaken|a myth|nonsense|refuted|disproved)`,
  'iu',
);
const ASKED = /\?["”’»)\]]*\s*$/u;

/** Nothing where the sentence leaves the claim as it is. */
export function checkSentence({
  sentence: { before, after } = { before: '', after: '' },
  words = '',
}: Part): readonly Omit<Problem, 'file' | 'line' | 'column'>[] {
  const turning =
    DENIED_BEFORE.exec(before)?.[0].split(' ')[0] ??
    DOUBTED_BEFORE.exec(before)?.[0] ??
    DENIED_AFTER.exec(after)?.[0] ??
    ASKED.exec(after)?.[0];
  return turning === undefined ? [] : [{ code: 'claim-turned', key: 'Claim', found: turning.trim(), expected: words }];
}
