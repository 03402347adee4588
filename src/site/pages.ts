/** Every page of the site by its route: which there are, and the view that each is printed from. */
import { hash } from 'node:crypto';
import { entryGroups } from '../register/entry-groups.ts';
import {
  bodyPath,
  displayPairPath,
  documentationPath,
  methodPath,
  PATHS,
  readAloudPath,
  reportPath,
  rigPath,
  sessionPath,
} from '../register/paths.ts';
import { pageHead, type PlacedFrame } from '../citation/page-head.ts';
import { bodyPage } from '../views/body-page.ts';
import { bodySectionPage, sectionsOfBody } from '../views/body-sections.ts';
import { bodiesPage } from '../views/body-rates.ts';
import { carriedPage } from '../views/carried-page.ts';
import { chainPage } from '../views/chain-page.ts';
import { comparisonPage, comparisonPartPage, comparisonParts } from '../views/comparison-page.ts';
import { correctionsPage } from '../views/corrections-page.ts';
import { coveragePage } from '../views/coverage-page.ts';
import { dataPage, filesPage, partsOfFiles } from '../views/data-page.ts';
import { displayPairPage } from '../views/display-pair-page.ts';
import { entriesPage } from '../views/entries-page.ts';
import { GLOSSARY } from '../views/glossary.ts';
import { homePage } from '../views/home-page.ts';
import { reportLines, rigLines } from '../views/lists.ts';
import { methodPage } from '../views/method-page.ts';
import { movedPages } from '../views/moved-pages.ts';
import { pageFrame } from '../views/page-frame.ts';
import { printView, type PageProps } from '../views/printed-page.ts';
import { rigPage } from '../views/rig-page.ts';
import { sessionPage } from '../views/session-page.ts';
import { sessionsIndex } from '../views/sessions-index.ts';
import { answeringAll } from '../write-ups/answering.ts';
import { guidePage } from '../write-ups/guide-page.ts';
import type { Answering } from '../write-ups/parts/definition.ts';
import type { PlacedWriteUp } from '../write-ups/write-up-kind.ts';
import { usesOfSessions } from '../write-ups/used-in.ts';
import { readAloudPage, writeUpPage } from '../write-ups/write-up-page.ts';
import { documentationPages } from './documentation.ts';
import { reportProgress } from './progress.ts';
import { searchPage } from './search-page.ts';
import { loadSite, type Site } from './site.ts';

interface Page<View> {
  readonly params: Readonly<Record<string, string | undefined>>;
  readonly view: () => View;
  /** Where it stands, if its route and its id do not say so. */
  readonly path?: string;
  /** Only where a write-up runs code of its own, so that nobody knows before what it asks for. */
  readonly answering?: Answering;
}

/** A route of one page. */
const one =
  <View>(view: (site: Site) => View) =>
  (site: Site): readonly Page<View>[] => [{ params: { index: undefined }, view: () => view(site) }];

/** A route of a page for each thing that has an id. */
const each =
  <View>(list: (site: Site) => readonly { readonly id: string }[], view: (site: Site, id: string) => View) =>
  (site: Site): readonly Page<View>[] =>
    list(site).map(({ id }) => ({ params: { id }, view: () => view(site, id) }));

const PAGES = {
  home: one(homePage),
  reports: one(({ bench }) => reportLines(bench)),
  report: writeUps('report', writeUpPage),
  readAloud: writeUps('report', readAloudPage),
  comparison: one(comparisonPage),
  comparisonPart: (site: Site) =>
    comparisonParts(site).map((part) => ({
      params: { part: part.part, chain: part.slug },
      path: part.path,
      view: () => comparisonPartPage(site, part),
    })),
  carried: one(carriedPage),
  bodies: one(bodiesPage),
  body: each(({ bench }) => bench.bodies, bodyPage),
  bodySection: (site: Site) =>
    site.bench.bodies.flatMap(({ id }) =>
      sectionsOfBody(site, id).map(({ slug, path }) => ({
        params: { id, section: slug },
        path,
        view: () => bodySectionPage(site, id, slug),
      })),
    ),
  rigs: one(rigLines),
  rig: each(
    ({ bench }) => bench.rigs,
    (site, id) => ({ ...rigPage(site, id), precision: site.precision.get(id) }),
  ),
  chain: one(chainPage),
  displayPair: each(({ bench }) => bench.displayPairs, displayPairPage),
  method: one(methodPage),
  methodNote: writeUps('method', writeUpPage),
  coverage: one(coveragePage),
  data: one((site) => ({ ...dataPage(site), analysis: site.register.analysis })),
  files: (site: Site) =>
    partsOfFiles(site).map((part) => ({
      params: { part: part.slug },
      path: part.path,
      view: () => filesPage(site, part),
    })),
  guide: one(guidePage),
  glossary: one(() => GLOSSARY),
  documentation: ({ bench }: Site) =>
    bench.site.documentation ? documentationPages().map((page) => ({ params: { id: page.id }, view: () => page })) : [],
  moved: (site: Site) =>
    movedPages(site).map((page) => ({ params: { moved: page.from.replace(/^\/|\/$/g, '') }, view: () => page })),
  recompute: one(({ register: { analysis } }) => ({ analysis })),
  search: one(searchPage),
  notFound: one(() => ({})),
  corrections: one(correctionsPage),
  sessions: one(sessionsIndex),
  session: each(
    ({ bench }) => bench.sessions,
    (site, id) => ({ ...sessionPage(site, id), usedIn: usesOfSessions(site).get(id) ?? [] }),
  ),
  entries: (site: Site) =>
    [...entryGroups(site.register.figures).keys()].map((group) => ({
      params: { group },
      view: () => entriesPage(site, group),
    })),
} as const satisfies Readonly<Record<string, (site: Site) => readonly Page<unknown>[]>>;

export type Route = keyof typeof PAGES;

const PLACES: Readonly<Record<Route, string | ((id: string) => string) | undefined>> = {
  home: PATHS.home,
  reports: PATHS.reports,
  report: reportPath,
  readAloud: readAloudPath,
  comparison: PATHS.comparison,
  comparisonPart: undefined,
  carried: PATHS.carried,
  bodies: PATHS.bodies,
  body: bodyPath,
  bodySection: undefined,
  rigs: PATHS.rigs,
  rig: rigPath,
  chain: PATHS.chain,
  displayPair: displayPairPath,
  method: PATHS.method,
  methodNote: methodPath,
  coverage: PATHS.coverage,
  data: PATHS.data,
  files: undefined,
  guide: PATHS.guide,
  glossary: PATHS.glossary,
  documentation: (id) => (id === '' ? PATHS.documentation : documentationPath(id)),
  moved: undefined,
  recompute: PATHS.recompute,
  search: PATHS.search,
  notFound: undefined,
  corrections: PATHS.corrections,
  sessions: PATHS.sessions,
  session: sessionPath,
  entries: (group) => `/figures/${group}/`,
};

/** What a page of a route is printed from. */
export interface ViewOf<R extends Route> {
  readonly frame: PlacedFrame;
  readonly view: ReturnType<ReturnType<(typeof PAGES)[R]>[number]['view']>;
}

/** As Astro takes them. */
interface StaticPath {
  readonly params: Readonly<Record<string, string | undefined>>;
  readonly props: PageProps & { readonly answering?: Answering };
  /** Digest of the view: the page that was printed from it before still holds. */
  readonly cacheKey?: string;
}

/** How many pages there are, as far as they were asked for, and how many of them were printed. */
const counts = { all: 0, printed: 0 };

/** The pages of a route. Each view is worked out when its page, or its digest, is asked for. */
export async function pagesOf(route: Route): Promise<StaticPath[]> {
  const site = await loadSite();
  const frame = pageFrame(site);
  const pages: readonly Page<unknown>[] = PAGES[route](site);
  counts.all += pages.length;
  return pages.map((page) => {
    const { params, view, answering } = page;
    const placed = (): PlacedFrame => ({ ...frame, head: pageHead(site, pathOf(route, page)) });
    const text = remembered(() => printView({ frame: placed(), view: view() }));
    const print = (): string => {
      counts.printed += 1;
      reportProgress('Printing pages', counts.printed, counts.all);
      return text();
    };
    if (answering !== undefined) return { params, props: { text: print, answering } };
    const key = remembered(() => hash('sha256', text()));
    return {
      params,
      props: { text: print },
      get cacheKey() {
        return key();
      },
    };
  });
}

/** Site paths of all pages, without those that only lead on or say that there is none. */
export function pagePathsOf(site: Site): readonly string[] {
  return (Object.keys(PAGES) as Route[]).flatMap((route) =>
    PAGES[route](site).flatMap((page: Page<unknown>) => pathOf(route, page) ?? []),
  );
}

/** Where a page stands; undefined for one that only leads on, or says that there is none. */
function pathOf(route: Route, { params: { id, group }, path }: Page<unknown>): string | undefined {
  const place = PLACES[route];
  return path ?? (typeof place === 'function' ? place(id ?? group ?? '') : place);
}

function writeUps<View>(
  kind: PlacedWriteUp['kind'],
  view: (site: Site, placed: PlacedWriteUp, answering: Answering) => View,
) {
  return (site: Site): readonly Page<View>[] =>
    answeringAll(site)
      .filter((placed) => placed.kind === kind)
      .map(({ writeUp, answering }) => ({
        params: { id: writeUp.id },
        view: () => view(site, { kind, writeUp }, answering),
        ...(site.bench.site.writeUpsRunCode ? { answering } : {}),
      }));
}

function remembered(compute: () => string): () => string {
  let text: string | undefined;
  return () => (text ??= compute());
}
