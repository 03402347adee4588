/** Words under `exclude` that are no reason: an author who writes one most likely means that the reading counts. */
const NO_REASONS = new Set(
  `no none not false keep kept ok okay okey good fine use used valid include included count counts counted yes true
  exclude excluded nein non nej ja oui si sí nil null na n/a nan empty blank unknown tbd todo`.split(/\s+/),
);
const LETTER = /\p{L}/u;
/** A reason in Latin letters takes three of them at least; other scripts say it in one. */
const TOO_SHORT = /^[\p{Script=Latin}\P{L}]*$/u;

/** Whether a text says why a reading does not count. Numbers, marks and the words above do not. */
export function isReason(text: string): boolean {
  const word = text.normalize('NFKC').trim().toLowerCase();
  if (!LETTER.test(word) || NO_REASONS.has(word.replace(/[.!?]+$/, ''))) return false;
  return !TOO_SHORT.test(word) || (word.match(/\p{L}/gu)?.length ?? 0) >= 3;
}
