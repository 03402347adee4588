/** What the page that searches knows of the publication, for its script. */

/** In the order in which what is found is shown. */
export const SECTIONS = ['Bodies', 'Reports', 'Sessions', 'Rigs', 'Figures', 'Words', 'More'] as const;

export interface SearchFacts {
  /** What figures are called: `Total latency`. Said once, since thousands of figures may share one. */
  readonly names: readonly string[];
  readonly pages: readonly SearchedPage[];
}

export interface SearchedPage {
  /** Where it is shown; its own figures are shown as figures. */
  readonly section: (typeof SECTIONS)[number];
  readonly title: string;
  /** Site path; with an anchor where it is a place on a page. */
  readonly path: string;
  /** What is shown under the title. */
  readonly says?: string;
  /** What else it is found by, and not shown. */
  readonly words?: string;
  readonly figures?: readonly SearchedFigure[];
}

/** Index of its name, what it is of or nothing, its text, and its anchor on the page. */
export type SearchedFigure = readonly [name: number, of: string, text: string, anchor: string];
