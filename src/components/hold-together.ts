/** Dates as files write them, sizes, percentages and half-widths: browsers would break each over two lines. */
const ONE_WORD =
  /\b\d{4}-\d{2}-\d{2}\b|\b\d+ × \d+\b|[−+]?\b\d+(?:\.\d+)? %|(?:[−+]?\b\d+(?:\.\d+)? )?± \d+(?:\.\d+)?(?: ms)?/g;

/** In these, text is drawn, run, or printed as it stands; a figure in running text holds together by itself. */
const LEFT_ALONE = /^<(?:(?:svg|script|style|title|code|pre|option|textarea)\b|a class="figure")/;
const PIECE = /<(\/?)([a-z][a-z0-9]*)\b(?:"[^"]*"|[^>"])*>|[^<]+/g;

/** The HTML of a page in which nothing that is read as one word breaks over two lines. */
export function holdTogether(html: string): string {
  let within: string | undefined;
  return html.replace(PIECE, (piece, closes: string | undefined, name: string | undefined) => {
    if (name !== undefined) {
      if (within === undefined && closes === '' && LEFT_ALONE.test(piece)) within = name;
      else if (closes === '/' && name === within) within = undefined;
      return piece;
    }
    return within === undefined ? piece.replace(ONE_WORD, '<span class="whole">$&</span>') : piece;
  });
}
