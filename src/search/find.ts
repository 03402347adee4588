/** Finds pages and figures by words: whole, begun, or with a slip of the finger. */
import MiniSearch from 'minisearch';
import { SECTIONS, type SearchFacts, type SearchedPage } from './facts.ts';

export interface Found {
  readonly title: string;
  /** Site path. */
  readonly path: string;
  readonly says: string;
}

export interface FoundSection {
  readonly title: SearchedPage['section'];
  /** The best first. */
  readonly found: readonly Found[];
}

interface Searched extends Found {
  readonly id: number;
  readonly section: SearchedPage['section'];
  readonly words: string;
}

/** A word that is long enough to be known again with a slip in it; in characters. */
const LONG = 5;

/** What answers questions about these facts; sections without anything found are left out. */
export function finderOf(facts: SearchFacts): (question: string) => readonly FoundSection[] {
  const all = facts.pages.flatMap((page) => searchedOf(facts, page)).map((one, id): Searched => ({ id, ...one }));
  const index = new MiniSearch<Searched>({
    fields: ['title', 'says', 'words'],
    searchOptions: {
      combineWith: 'AND',
      boost: { title: 3 },
      prefix: true,
      fuzzy: (word) => (word.length < LONG || /\d/.test(word) ? false : 0.2),
    },
  });
  index.addAll(all);
  return (question) => {
    const found = index.search(question).flatMap(({ id }) => all[Number(id)] ?? []);
    return SECTIONS.map((title) => ({ title, found: found.filter(({ section }) => section === title) })).filter(
      (section) => section.found.length > 0,
    );
  };
}

/** A page, and each figure that has its entry there. */
function searchedOf({ names }: SearchFacts, page: SearchedPage): readonly Omit<Searched, 'id'>[] {
  const { section, title, path, says = '', words = '', figures = [] } = page;
  return [
    { section, title, path, says, words },
    ...figures.map(([name, of, text, anchor]) => ({
      section: 'Figures' as const,
      title: [names[name], of === '' ? title : of].join(': '),
      path: `${path}#${anchor}`,
      says: of === '' ? text : `${text}; ${title}`,
      words: '',
    })),
  ];
}
