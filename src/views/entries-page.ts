/** What a page of entries prints: each figure, and below, once each, the sessions and files that figures rest on. */
import type { Session } from '../model/bench.ts';
import { crossedConditions } from '../register/carried/crossed-conditions.ts';
import { entryGroups, groupPath } from '../register/entry-groups.ts';
import { sessionTitle } from '../register/labels.ts';
import { sessionPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import type { Figure, FigureSource } from '../register/register.ts';
import { capitalize, describeCount } from '../register/text.ts';
import { entryOf, type Entry } from './entry.ts';
import { inputsOf, type RedoInput } from './redo.ts';

export interface EntriesPage {
  readonly title: string;
  /** What the section is of: `Vennick Q4, 25 frames/s (vennick-uhd25-a)`; undefined for a group in one piece. */
  readonly section: string | undefined;
  /** The page of the group, for a section. */
  readonly up: string | undefined;
  readonly entries: readonly {
    readonly entry: Entry;
    /** Anchor of its sources. */
    readonly source: string;
  }[];
  readonly sources: readonly EntrySources[];
  readonly sections: readonly Titled[];
}

interface Titled {
  readonly title: string;
  readonly path: string;
}

/** What figures were computed from. */
export interface EntrySources {
  readonly anchor: string;
  readonly heading: string;
  /** Each to the last digit. */
  readonly inputs: readonly RedoInput[];
  readonly files: readonly FigureSource[];
  /** Said in place of lists that nobody reads to their end; undefined where they stand. */
  readonly instead: string | undefined;
}

/** Inputs that are listed at most: who redoes a figure of more takes them from a file. */
const MOST_LISTED = 100;

/** @param name of a group, or of a section of one */
export function entriesPage(site: Published, name: string): EntriesPage {
  const groups = entryGroups(site.register.figures);
  const { title = '', within, sections = [], figures = [] } = groups.get(name) ?? {};
  const lists = [
    ...Map.groupBy(figures, ({ sources }) =>
      sources
        .map(({ file }) => file)
        .sort()
        .join('\n'),
    ).values(),
  ];
  const sources = lists.map(([figure], index): EntrySources => {
    const files = figure?.sources ?? [];
    const inputs = figure === undefined ? [] : inputsOf(site, figure);
    return {
      anchor: `sources-${index + 1}`,
      heading: lists.length > 1 ? `Computed from (${index + 1})` : 'Computed from',
      ...(inputs.length > MOST_LISTED
        ? { inputs: [], files: [], instead: describeLists(inputs.length, files.length) }
        : { inputs, files, instead: undefined }),
    };
  });
  const anchors = new Map(
    lists.flatMap((list, index) => list.map((figure) => [figure, sources[index]?.anchor ?? ''] as const)),
  );
  return {
    title,
    section: within === undefined ? undefined : describeSection(site, figures),
    up: within && groupPath(within),
    entries: figures.map((figure) => ({
      entry: withoutInputs(entryOf(site, figure)),
      source: anchors.get(figure) ?? '',
    })),
    sources,
    sections: sections.map((section) => ({
      title: describeSection(site, groups.get(section)?.figures ?? []),
      path: groupPath(section),
    })),
  };
}

function describeLists(inputs: number, files: number): string {
  return `${describeCount(inputs)} figures of ${describeCount(files)} files. Each to the last digit stands on the page of its session; all of them, and the files with their SHA-256, in`;
}

/** They stand below, once for all entries that have the same. */
function withoutInputs({ redo, ...entry }: Entry): Entry {
  return { ...entry, redo: redo && { ...redo, inputs: [] } };
}

function named({ bench }: Published, session: Session): Titled {
  return { title: `${sessionTitle(bench, session)} (${session.id})`, path: sessionPath(session.id) };
}

/** What a group is of, and a section of one: `Rate laws: Vennick Q4`. */
export function entriesTitle(site: Published, name: string): string {
  const { title = '', within, figures = [] } = entryGroups(site.register.figures).get(name) ?? {};
  return [title, within === undefined ? '' : describeSection(site, figures)].filter(Boolean).join(': ');
}

/** By what the figures of a section have in common: a session, a rate law, a condition of several bodies, a rig or a body. */
function describeSection(site: Published, [figure]: readonly Figure[]): string {
  const { session, law, rig } = figure?.of ?? {};
  if (session !== undefined) return named(site, site.find.session(session)).title;
  const ofLaw = site.laws.find(({ name }) => name === law);
  if (ofLaw !== undefined) return capitalize(describeLaw(site, ofLaw));
  const crossed = crossedConditions(site.bench).find(({ id }) => figure?.id.includes(`/${id}/`));
  if (crossed !== undefined) return capitalize(crossed.words);
  if (rig !== undefined) return site.find.rig(rig).name;
  return figure?.of['body'] === undefined ? '' : site.find.body(figure.of['body']).name;
}

function describeLaw({ find }: Published, { body, subject }: Published['laws'][number]): string {
  return [...new Set([find.body(body).name, subject])].join(', ');
}
