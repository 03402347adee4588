/** Left by version control where two changes of the same lines met. */
const MARKS = /^(?:<{7}|>{7})(?: |\r?$)/m;
/** In a text, a line of equals signs may as well be the heading of a chapter. */
const MARKS_IN_TABLE = /^(?:<{7}|={7}|>{7})(?: |\r?$)/m;

/** The first line, from 1, on which such a mark stands; undefined where none does. */
export function lineOfMergeMark(text: string, { inTable = false } = {}): number | undefined {
  const at = text.search(inTable ? MARKS_IN_TABLE : MARKS);
  return at < 0 ? undefined : text.slice(0, at).split('\n').length;
}
