/** The documentation of the tool as pages. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DOCUMENTATION, documentationPath } from '../register/paths.ts';
import { TOOL } from './publication.ts';

interface Described {
  readonly title: string;
  /** Its first paragraph. */
  readonly summary: string;
}

/** One page, or the list of all where it has no id. */
export interface DocumentationPage extends Described {
  readonly id: string | undefined;
  /** What follows the first paragraph, as Markdown with links as the site has them. */
  readonly text: string;
  /** The other pages, in the order in which they are to be read. */
  readonly others: readonly (Described & { readonly path: string })[];
}

/** The list of all, and each page of `src/documentation`. */
export function documentationPages(): readonly DocumentationPage[] {
  const pages = DOCUMENTATION.map(readPage);
  const others = pages.map(({ id, title, summary }) => ({ path: documentationPath(id), title, summary }));
  const list = { id: undefined, title: 'Documentation', summary: 'How to make a publication, for authors.', text: '' };
  return [
    { ...list, others },
    ...pages.map((page) => ({ ...page, others: others.filter(({ path }) => path !== documentationPath(page.id)) })),
  ];
}

function readPage(id: string): Described & { readonly id: string; readonly text: string } {
  const file = readFileSync(join(TOOL, 'src/documentation', `${id}.md`), 'utf8');
  const [, title, summary, text] = /^# (.+)\n\n(.+)\n\n([^]*)$/.exec(file) ?? [];
  if (title === undefined || summary === undefined || text === undefined)
    throw new Error(`src/documentation/${id}.md does not begin with a heading and one paragraph`);
  // Among files one page leads to the other by its name; on the site, by its address.
  const linked = text.replace(/\]\(([a-z-]+)\.md\)/g, (_all, other: string) => `](${documentationPath(other)})`);
  return { id, title, summary, text: linked };
}
