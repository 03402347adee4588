/** What each page is, in a sentence or two: for search engines, previews and feeds. */
import type { Body } from '../model/bench.ts';
import { entryGroups } from '../register/entry-groups.ts';
import { namesOfSessions } from '../register/labels.ts';
import { listWords } from '../register/comparisons/pair-words.ts';
import { DISPLAY_PAIRS, PATHS, readAloudPath } from '../register/paths.ts';
import { describeBasis } from '../register/provenance.ts';
import type { Published } from '../register/published.ts';
import { plainSentence } from '../register/sentence.ts';
import { answerOf } from '../views/answer.ts';
import { sectionsOfBody } from '../views/body-sections.ts';
import { comparisonParts } from '../views/comparison-page.ts';
import { partsOfFiles } from '../views/data-page.ts';
import { entriesTitle } from '../views/entries-page.ts';

export interface PageDescription {
  readonly text: string;
  /** Ids of the figures whose texts it holds. */
  readonly figures: readonly string[];
}

type Site = Published;

const says = (text: string, figures: readonly string[] = []): PageDescription => ({ text, figures });

/** Pages that there is one of. */
const SINGLE: Readonly<Record<string, (site: Site) => PageDescription>> = {
  [PATHS.home]: describeHome,
  [PATHS.reports]: ({ bench }) =>
    says(
      bench.reports.length === 0
        ? 'Reports of how far pictures lag behind the world; none is out yet.'
        : `Reports: ${listWords(bench.reports.map(({ title }) => `“${title}”`))}.`,
    ),
  [PATHS.comparison]: () =>
    says('Every body in every condition, rig by rig, with what can and what cannot be told apart.'),
  [PATHS.carried]: () =>
    says(
      'What each body would show on other displays, and how bodies compare that never stood in front of the same one.',
    ),
  [PATHS.bodies]: ({ bench }) =>
    says(`Total latency at a glance of ${listWords(bench.bodies.map(({ name }) => name)) || 'every body'}.`),
  [PATHS.sessions]: () => says('Every session, by body, rig and frame rate.'),
  [PATHS.rigs]: ({ bench }) =>
    says(`The rigs that readings were taken on: ${listWords(bench.rigs.map(({ name }) => name))}.`),
  [PATHS.chain]: () =>
    says(
      'What a total is made of: how much of it belongs to the body, to each link and to the display, and what these sessions cannot tell.',
    ),
  [PATHS.method]: () =>
    says('How readings are taken and become figures, where each uncertainty comes from, and what to take care of.'),
  [PATHS.coverage]: () => says('How often the intervals of this method hold the truth, on simulated benches.'),
  [PATHS.glossary]: () => says('The words these pages use, in plain sentences.'),
  [PATHS.data]: () => says('Every raw file with its checksum, and every figure in one machine-readable list.'),
  [PATHS.guide]: () =>
    says(
      'Every part that a report or method note can use: its properties, an example, and what the build says when it is misused.',
    ),
  [PATHS.documentation]: () => says('How to make a publication of your own.'),
  [PATHS.search]: () => says('Finds reports, bodies, sessions, figures and words of this site.'),
  [PATHS.corrections]: () => says('Every published number that moved: when, why, and what it was before.'),
};

/** Pages that there are several of, by where they stand; undefined where there is no such page. */
const SEVERAL: Readonly<Record<string, (site: Site, id: string) => PageDescription | undefined>> = {
  [PATHS.reports]: ({ bench }, id) => {
    const spoken = bench.reports.find((report) => readAloudPath(report.id) === `${PATHS.reports}${id}/`);
    return spoken
      ? says(`Every number of the report “${spoken.title}”, in words that can be spoken.`)
      : summaryOf(bench.reports, id);
  },
  [PATHS.method]: ({ bench }, id) => summaryOf(bench.methods, id),
  [PATHS.bodies]: (site, place) => {
    const [id = '', ...section] = place.split('/');
    const body = site.bench.bodies.find((each) => each.id === id);
    if (body !== undefined && section.length > 0) return describeBodySection(site, body, section.join('/'));
    return (
      body &&
      says(
        `Total latency of ${body.name} (${body.maker}) in every condition that it was measured in, what each setting changes, and what to set.`,
      )
    );
  },
  [PATHS.rigs]: ({ bench }, id) => {
    const rig = bench.rigs.find((each) => each.id === id);
    return rig && says(`The rig ${rig.name}: timer, observer, links and display, and how well its sessions can tell.`);
  },
  [PATHS.sessions]: describeSession,
  [DISPLAY_PAIRS]: ({ bench, find, figure }, id) => {
    const pair = bench.displayPairs.find((each) => each.id === id);
    const difference = figure(`display-difference/${id}`);
    if (pair === undefined || difference === undefined) return undefined;
    const [shown, against] = [find.display(pair.display).name, find.display(pair.against).name];
    return says(`${shown} against ${against} (${id}): ${difference.text}, from ${describeBasis(difference)}.`, [
      difference.id,
    ]);
  },
  [PATHS.comparison]: (site, id) => {
    const part = comparisonParts(site).find(({ path }) => path === `${PATHS.comparison}${id}/`);
    return part && says(`${part.title}, in every condition.`);
  },
  [PATHS.data]: (site, id) => {
    const part = partsOfFiles(site).find(({ path }) => path === `${PATHS.data}${id}/`);
    return part && says(`${part.title}, each with its checksum.`);
  },
  [PATHS.documentation]: (_site, id) => says(`For authors of publications: ${id.replaceAll('-', ' ')}.`),
  '/figures/': (site, id) => {
    if (!entryGroups(site.register.figures).has(id)) return undefined;
    return says(`Where the figures of “${entriesTitle(site, id)}” come from: values, intervals, sessions and files.`);
  },
};

export function describePage(site: Site, path: string): PageDescription {
  const [, start = '', id = ''] = /^(\/[^/]+\/)(.+)\/$/.exec(path) ?? [];
  const { title, tagline } = site.bench.site;
  return SINGLE[path]?.(site) ?? SEVERAL[start]?.(site, id) ?? says([title, tagline].filter(Boolean).join('. '));
}

function describeHome(site: Site): PageDescription {
  const { sentence } = answerOf(site);
  const { tagline } = site.bench.site;
  return says(
    [tagline.replace(/(?<=[^.])$/, '.'), plainSentence(sentence)].filter(Boolean).join(' '),
    sentence.flatMap((part) => (typeof part === 'string' ? [] : [part.id])),
  );
}

function describeBodySection(site: Site, { id, name }: Body, slug: string): PageDescription | undefined {
  const section = sectionsOfBody(site, id).find((each) => each.slug === slug);
  return section && says(`${name}: ${section.title}.`);
}

function describeSession({ bench, figure }: Site, id: string): PageDescription | undefined {
  const session = bench.sessions.find((each) => each.id === id);
  if (session === undefined) return undefined;
  const total = figure(`total/${id}`);
  const name = namesOfSessions(bench).get(id) ?? id;
  return total === undefined
    ? says(`${name}: every reading.`)
    : says(`${name}: total latency ${total.text}, from ${describeBasis(total)}. Every reading, and the budget.`, [
        total.id,
      ]);
}

function summaryOf(
  writeUps: readonly { readonly id: string; readonly summary: string }[],
  id: string,
): PageDescription | undefined {
  const found = writeUps.find((each) => each.id === id);
  return found && says(found.summary);
}
