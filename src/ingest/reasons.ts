/** Words under `exclude` that are no reason: an author who writes one most likely means that the reading counts. */
const NO_REASONS = new Set(
  `no none not false keep kept ok okay okey good fine use used valid include included count counts counted yes true
  exclude excluded nein non nej ja oui si sí nil null na n/a nan empty blank unknown tbd todo clear clean sharp correct
  right checked confirmed readable legible x xx xxx`.split(/\s+/),
);
/** Words that make none of them a reason: `keep this one`, `not excluded`, `do not use`. */
const FILLERS = new Set(
  `a an the this that it is was be to do don't doesn't does did all one row line reading readings value values here please
  for now still again very quite and so as well reason reasons problem problems issue issues remark comment perfectly`.split(
    /\s+/,
  ),
);
const LETTER = /\p{L}/u;
/** A reason in Latin letters takes three of them at least; other scripts say it in one. */
const TOO_SHORT = /^[\p{Script=Latin}\P{L}]*$/u;

/** Whether a text says why a reading does not count. Numbers, marks and the words above do not. */
export function isReason(text: string): boolean {
  const plain = text.normalize('NFKC').replaceAll('’', "'").trim().toLowerCase();
  if (!LETTER.test(plain)) return false;
  const words = plain.match(/[\p{L}\p{N}'/]+/gu) ?? [];
  if (words.every((word) => NO_REASONS.has(word) || FILLERS.has(word))) return false;
  return !TOO_SHORT.test(plain) || (plain.match(/\p{L}/gu)?.length ?? 0) >= 3;
}
