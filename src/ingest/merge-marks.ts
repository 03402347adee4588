/**
 * Left by version control where two changes of the same lines met. A line of equals signs alone is a heading in
 * Markdown, so it counts only beside the others.
 */
const MARKS = /^(?:<{7}|>{7})(?: |\r?$)/m;

/** The first line, from 1, on which such a mark stands; undefined where none does. */
export function lineOfMergeMark(text: string): number | undefined {
  const at = text.search(MARKS);
  return at < 0 ? undefined : text.slice(0, at).split('\n').length;
}
