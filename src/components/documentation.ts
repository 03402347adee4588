import { DOCUMENTATION, documentationPath } from '../register/paths.ts';

export interface DocumentationPage {
  readonly id: string;
  readonly title: string;
  /** Its first paragraph. */
  readonly summary: string;
  /** The rest, as Markdown with links as the site has them. */
  readonly text: string;
}

const TEXTS = import.meta.glob<string>('../documentation/*.md', { query: '?raw', import: 'default', eager: true });

/** The pages of `src/documentation`, in the order in which they are to be read. */
export const documentation: readonly DocumentationPage[] = DOCUMENTATION.map((id) => {
  const [, title, summary, text] = /^# (.+)\n\n(.+)\n\n([^]*)$/.exec(TEXTS[`../documentation/${id}.md`] ?? '') ?? [];
  if (title === undefined || summary === undefined || text === undefined)
    throw new Error(`src/documentation/${id}.md does not begin with a heading and one paragraph`);
  // Among files one page leads to the other by its name; on the site, by its address.
  const linked = text.replace(/\]\(([a-z-]+)\.md\)/g, (_all, other: string) => `](${documentationPath(other)})`);
  return { id, title, summary, text: linked };
});
