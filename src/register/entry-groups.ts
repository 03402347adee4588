/** Figures that are not one session's have their entries on pages of their own, grouped: `/figures/GROUP/#ANCHOR`. */
import type { Figure } from './register.ts';

export interface EntryGroup {
  readonly title: string;
  readonly figures: readonly Figure[];
}

const GROUP_PATH = /^\/figures\/([^/]+)\//;

/** The address of an entry on a group's page; the anchor is the figure's id, fit for an address. */
export function groupEntry(group: string, id: string): string {
  return `/figures/${group}/#${anchorOf(id)}`;
}

/** The anchor of an entry on its page: `difference/a/b` → `difference-a-b`. */
export function anchorOf(id: string): string {
  return id.replace(/[^a-z0-9]+/gi, '-').toLowerCase();
}

/** Every group of entries, by the name in its address. */
export function entryGroups(figures: readonly Figure[]): ReadonlyMap<string, EntryGroup> {
  const groups = new Map<string, { title: string; figures: Figure[] }>();
  for (const figure of figures) {
    const [, name] = GROUP_PATH.exec(figure.entry) ?? [];
    if (name === undefined) continue;
    const group = groups.get(name) ?? { title: figure.group ?? figure.label, figures: [] };
    group.figures.push(figure);
    groups.set(name, group);
  }
  return groups;
}
