/** A heading that can be linked to. */
export interface Heading {
  readonly id: string;
  /** Without markup; entities stay as they are. */
  readonly text: string;
}

const HEADING = /<h([23])\b((?:"[^"]*"|[^>"])*\bid="([^"]+)"(?:"[^"]*"|[^>"])*)>([\s\S]*?)<\/h\1>/g;

/** The HTML of a page with a visible anchor in each heading of the second and third level, and those of the second. */
export function anchorHeadings(html: string): { readonly html: string; readonly headings: readonly Heading[] } {
  const headings: Heading[] = [];
  const anchored = html.replace(HEADING, (_all, level: string, attributes: string, id: string, inside: string) => {
    const text = inside
      .replace(/<[^>]*>/g, '')
      .replace(/\s+/g, ' ')
      .trim();
    if (level === '2') headings.push({ id, text });
    const label = `Link to “${text.replaceAll('"', '&quot;')}”`;
    return `<h${level}${attributes}>${inside} <a class="anchor" href="#${id}" aria-label="${label}">#</a></h${level}>`;
  });
  return { html: anchored, headings };
}
