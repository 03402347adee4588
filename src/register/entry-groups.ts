/**
 * Figures that are not one session's have their entries on pages of their own, grouped: `/figures/GROUP/#ANCHOR`. A
 * group that grows with the number of sessions has sections, a page each: `/figures/GROUP/SECTION/#ANCHOR`.
 */
import { once } from '../model/once.ts';
import type { Figure } from './register.ts';

export interface EntryGroup {
  readonly title: string;
  /** Name of the group that it is a section of. */
  readonly within: string | undefined;
  /** Names of its own sections. */
  readonly sections: readonly string[];
  /** Without those of its sections. */
  readonly figures: readonly Figure[];
}

const GROUP_PATH = /^\/figures\/([^#]+)\/#/;

/**
 * The address of an entry on the page of its group, or of a section of it; the anchor is the figure's id, fit for an
 * address.
 */
export function groupEntry(group: string, id: string, section?: string): string {
  return `${groupPath(section === undefined ? group : `${group}/${section}`)}#${anchorOf(id)}`;
}

/** `rate-laws/alba-one-attic-uhd` → `/figures/rate-laws/alba-one-attic-uhd/`. */
export function groupPath(name: string): string {
  return `/figures/${name}/`;
}

/** The anchor of an entry on its page: `difference/a/b` → `difference-a-b`. */
export function anchorOf(id: string): string {
  return id.replace(/[^a-z0-9]+/gi, '-').toLowerCase();
}

/** Every page of entries, by its name in the address; a group that is all sections has a page that leads to them. */
export const entryGroups: (figures: readonly Figure[]) => ReadonlyMap<string, EntryGroup> = once((figures) => {
  const groups = new Map<
    string,
    { title: string; within: string | undefined; sections: string[]; figures: Figure[] }
  >();
  const add = (name: string, title: string): NonNullable<ReturnType<typeof groups.get>> => {
    const known = groups.get(name);
    if (known !== undefined) return known;
    const [, within] = /^(.+?)\//.exec(name) ?? [];
    if (within !== undefined) add(within, title).sections.push(name);
    const group = { title, within, sections: [], figures: [] };
    groups.set(name, group);
    return group;
  };
  for (const figure of figures) {
    const [, name] = GROUP_PATH.exec(figure.entry) ?? [];
    if (name !== undefined) add(name, figure.group ?? figure.label).figures.push(figure);
  }
  return groups;
});
