/** What the page that searches finds, and where else it says to look. */
import { describePage } from '../citation/describe-page.ts';
import { entryGroups, groupPath } from '../register/entry-groups.ts';
import { namesOfSessions } from '../register/labels.ts';
import { bodyPath, methodPath, PATHS, readAloudPath, reportPath, rigPath, sessionPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { inBenchOrder } from '../register/select.ts';
import type { SearchedFigure, SearchedPage, SearchFacts } from '../search/facts.ts';
import { badgesOf } from '../register/badges.ts';
import { sectionsOfBody } from '../views/body-sections.ts';
import { comparisonParts } from '../views/comparison-page.ts';
import { describeDay } from '../views/day.ts';
import { entriesTitle } from '../views/entries-page.ts';
import { GLOSSARY } from '../views/glossary.ts';
import type { Prose, WriteUp } from '../model/bench.ts';
import { documentationPages } from './documentation.ts';

export interface SearchPage {
  /** Figures that are not one session's, by what they are of. */
  readonly groups: readonly { readonly title: string; readonly path: string }[];
}

export function searchPage(site: Published): SearchPage {
  return {
    groups: [...entryGroups(site.register.figures)]
      .filter(([, { within }]) => within === undefined)
      .map(([name, { title }]) => ({ title, path: groupPath(name) })),
  };
}

/** All that can be found. */
export function searchFacts(site: Published): SearchFacts {
  const names = new Map<string, number>();
  const searched = ({ label, text, entry }: Figure): SearchedFigure => {
    const [, name = label, of = ''] = /^(.+?): (.+)$/s.exec(label) ?? [];
    if (!names.has(name)) names.set(name, names.size);
    return [names.get(name) ?? 0, of, text, entry.split('#')[1] ?? ''];
  };
  const figures = Map.groupBy(site.register.figures, ({ entry }) => entry.split('#')[0] ?? '');
  const pages = pagesOf(site).map((page): SearchedPage => {
    const own = figures.get(page.path);
    return own === undefined ? page : { ...page, figures: own.map(searched) };
  });
  return { names: [...names.keys()], pages };
}

function pagesOf(site: Published): readonly SearchedPage[] {
  const { bench, register } = site;
  return [
    ...bench.bodies.map(({ id, name, maker, model, prose }) => ({
      section: 'Bodies' as const,
      title: name,
      path: bodyPath(id),
      says: `${maker} ${model}`,
      words: [id, wordsOf(prose)].join(' '),
    })),
    ...bench.bodies.flatMap(({ id, name }) =>
      sectionsOfBody(site, id).map(({ title, path }) => ({
        section: 'More' as const,
        title: `${name}: ${title}`,
        path,
      })),
    ),
    ...comparisonParts(site).map(({ title, path }) => ({ section: 'More' as const, title, path })),
    ...bench.reports.map((report) => writeUp('Reports', reportPath(report.id), report)),
    ...bench.reports.map(({ id, title }) => ({
      section: 'More' as const,
      title: `${title}, for reading aloud`,
      path: readAloudPath(id),
    })),
    ...sessions(site),
    ...bench.rigs.map(({ id, name, prose }) => ({
      section: 'Rigs' as const,
      title: name,
      path: rigPath(id),
      words: [id, wordsOf(prose)].join(' '),
    })),
    ...[...entryGroups(register.figures)].map(([group]) => ({
      section: 'Figures' as const,
      title: entriesTitle(site, group),
      path: groupPath(group),
    })),
    ...GLOSSARY.map(({ id, term, means }) => ({
      section: 'Words' as const,
      title: term,
      path: `${PATHS.glossary}#${id}`,
      says: means,
    })),
    ...bench.methods.map((method) => writeUp('More', methodPath(method.id), method)),
    ...SINGLE.map(([title, path]) => ({
      section: 'More' as const,
      title,
      path,
      says: describePage(site, path).text,
    })),
    ...(bench.site.documentation ? documentationPages() : []).flatMap(({ id, title, summary, text }) =>
      id === undefined
        ? []
        : { section: 'More' as const, title, path: `${PATHS.documentation}${id}/`, says: summary, words: once(text) },
    ),
  ];
}

/** Pages that there is one of. */
const SINGLE = [
  ['Comparison', PATHS.comparison],
  ['Carried to another display', PATHS.carried],
  ['Chain', PATHS.chain],
  ['Method', PATHS.method],
  ['How often intervals hold', PATHS.coverage],
  ['Data', PATHS.data],
  ['Corrections', PATHS.corrections],
  ['Recompute a figure', PATHS.recompute],
  ['For authors', PATHS.guide],
] as const;

function sessions({ bench, find }: Published): readonly SearchedPage[] {
  const names = namesOfSessions(bench);
  return inBenchOrder(bench, bench.sessions).map(({ id, rig, date, firmware, settings, prose }) => ({
    section: 'Sessions',
    title: names.get(id) ?? id,
    path: sessionPath(id),
    says: [id, describeDay(date), ...badgesOf(bench)(id)].join(', '),
    words: once(
      [
        find.rig(rig).name,
        firmware ?? '',
        ...Object.entries(settings).map(([setting, level]) => find.level(setting, level)),
        wordsOf(prose),
      ].join(' '),
    ),
  }));
}

function writeUp(section: SearchedPage['section'], path: string, { title, summary, prose }: WriteUp): SearchedPage {
  return { section, title, path, says: summary, words: wordsOf(prose) };
}

function wordsOf(prose: readonly Prose[]): string {
  return once(prose.flatMap((pieces) => pieces.map(({ text }) => text)).join(' '));
}

/** Each word once. */
function once(text: string): string {
  return [...new Set(text.toLowerCase().match(/[\p{L}\p{N}]+/gu))].join(' ');
}
