/** What of HTML a write-up may write by itself: what text is made of. Markdown and the parts make everything else. */

/**
 * A tooltip and a language, on any element; no direction, which can put words in another order than they are read in.
 */
const EVERYWHERE = ['title', 'lang'] as const;

/** Attributes by element, besides those that any element may have. */
const OWN: Readonly<Record<string, readonly string[]>> = {
  a: ['href'],
  li: ['value'],
  ol: ['start'],
  td: ['colspan', 'rowspan'],
  th: ['colspan', 'rowspan', 'scope'],
  time: ['datetime'],
};

const PLAIN =
  'abbr b blockquote br caption cite code dd del details dfn div dl dt em h2 h3 h4 h5 h6 hr i ins kbd mark p pre q s samp small span strong sub summary sup table tbody tfoot thead tr u ul var';

export const ELEMENTS: ReadonlySet<string> = new Set([...Object.keys(OWN), ...PLAIN.split(' ')]);

/** In the order in which they are best read. */
export function attributesOf(element: string): readonly string[] {
  return [...(Object.hasOwn(OWN, element) ? (OWN[element] ?? []) : []), ...EVERYWHERE];
}
