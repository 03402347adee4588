/**
 * What of a body's page stands on pages of its own, where the body has more of it than one page holds: the pairs of one
 * setting on one rig, one rate law, the history. How large each is depends on conditions, not on how many sessions there are.
 */
import type { Bench } from '../model/bench.ts';
import { once } from '../model/once.ts';
import type { SessionPair } from '../register/comparisons/family.ts';
import { settingFamilies } from '../register/comparisons/setting-families.ts';
import { anchorOf } from '../register/entry-groups.ts';
import { describeLevels } from '../register/level-words.ts';
import { lookup } from '../register/lookup.ts';
import { bodyPath, bodySectionPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import { capitalize } from '../register/text.ts';
import { bodyHistory, type BodyHistory } from './body-history.ts';
import { comparedRows, type ComparedRows } from './compared-rows.ts';
import { lawPlate, type LawPlate } from './law-plate.ts';
import { MOST_ROWS } from './most-rows.ts';
import { selectLaws } from './select-laws.ts';

export interface BodySectionPage {
  readonly title: string;
  readonly body: { readonly name: string; readonly path: string };
  readonly pairs: ComparedRows | undefined;
  readonly law: LawPlate | undefined;
  readonly history: BodyHistory | undefined;
}

export interface BodySection {
  /** `settings/balcony/rate`, `frame-rate/1-40-balcony-uhd`, `history` */
  readonly slug: string;
  readonly part: 'settings' | 'frame-rate' | 'history';
  /** `Frame rate, on Balcony` */
  readonly title: string;
  readonly path: string;
}

interface Written extends BodySection {
  readonly print: () => Partial<Pick<BodySectionPage, 'pairs' | 'law' | 'history'>>;
}

/** Empty where one page holds all of it. */
export function sectionsOfBody(site: Published, body: string): readonly BodySection[] {
  return writtenSections(site, body).map(({ slug, part, title, path }) => ({ slug, part, title, path }));
}

export function bodySectionPage(site: Published, body: string, slug: string): BodySectionPage {
  const section = writtenSections(site, body).find((each) => each.slug === slug);
  if (section === undefined) throw new Error(`body '${body}' has no section '${slug}'`);
  const { name } = site.find.body(body);
  return {
    title: section.title,
    body: { name, path: bodyPath(body) },
    pairs: undefined,
    law: undefined,
    history: undefined,
    ...section.print(),
  };
}

function writtenSections(site: Published, body: string): readonly Written[] {
  const { bench, find } = site;
  if (!isLong(bench, body)) return [];
  const placed = (section: Omit<Written, 'path'>): Written => ({
    ...section,
    path: bodySectionPath(body, section.slug),
  });
  return [
    ...settingParts(bench).flatMap(({ family, rig, slug, words, pairs }) =>
      family.of['body'] === body
        ? [
            placed({
              slug: ['settings', rig, ...slug].join('/'),
              part: 'settings',
              title: `${capitalize(words.join(', '))}, on ${find.rig(rig).name}`,
              print: () => ({ pairs: comparedRows(site, family.id, pairs) }),
            }),
          ]
        : [],
    ),
    ...selectLaws(site, { body })
      .filter(({ law }) => law.kind === 'rate-law')
      .map((law) =>
        placed({
          slug: `frame-rate/${anchorOf(law.name.split('/').slice(1).join('/'))}`,
          part: 'frame-rate',
          title: capitalize(law.subject),
          print: () => ({ law: lawPlate(site, law) }),
        }),
      ),
    placed({
      slug: 'history',
      part: 'history',
      title: 'History',
      print: () => ({ history: bodyHistory(site, body) }),
    }),
  ];
}

function isLong(bench: Bench, body: string): boolean {
  const sessions = bench.sessions.filter((session) => session.body === body).length;
  const pairs = settingFamilies(bench).flatMap((family) => (family.of['body'] === body ? family.pairs : [])).length;
  return sessions + pairs > MOST_ROWS;
}

interface Part {
  readonly slug: readonly string[];
  readonly words: readonly string[];
  readonly pairs: readonly SessionPair[];
}

/** Pairs by rig and setting; where those are still too many, by step, and by what the two sessions share. */
const settingParts = once((bench: Bench) => {
  const find = lookup(bench);
  const settingsOf = new Map(bench.sessions.map(({ id, settings }) => [id, settings]));
  const bySetting = ({ step }: SessionPair): Division => ({
    slug: step?.setting ?? '',
    words: find.setting(step?.setting ?? '').label,
  });
  const byStep = ({ step }: SessionPair): Division =>
    step === undefined
      ? { slug: '', words: '' }
      : { slug: `${step.from}-to-${step.to}`, words: describeLevels(find, step.setting, step.from, step.to) };
  const byLevel =
    (setting: string) =>
    ({ b, step }: SessionPair): Division => {
      const level = settingsOf.get(b)?.[setting];
      return level === undefined || step?.setting === setting
        ? { slug: '', words: '' }
        : { slug: `${setting}-${level}`, words: `${find.setting(setting).label} ${find.level(setting, level)}` };
    };
  const further = [byStep, ...bench.settings.map(({ id }) => byLevel(id))];
  return settingFamilies(bench).flatMap((family) =>
    divide({ slug: [], words: [], pairs: family.pairs }, [bySetting])
      .flatMap((part) => (part.pairs.length > MOST_ROWS ? divide(part, further) : [part]))
      .map((part) => ({ ...part, family, rig: family.of['rig'] ?? '' })),
  );
});

interface Division {
  /** Empty where it does not tell pairs apart. */
  readonly slug: string;
  readonly words: string;
}

/** Divides what is too long by the first of these, and what then still is by the next. */
function divide(part: Part, [by, ...others]: readonly ((pair: SessionPair) => Division)[]): readonly Part[] {
  if (by === undefined) return [part];
  const groups = [...Map.groupBy(part.pairs, (pair) => by(pair).slug).values()];
  return groups.flatMap((pairs): readonly Part[] => {
    const [first] = pairs;
    const { slug, words } = first === undefined ? { slug: '', words: '' } : by(first);
    const own: Part =
      slug === '' ? { ...part, pairs } : { slug: [...part.slug, anchorOf(slug)], words: [...part.words, words], pairs };
    return own.pairs.length > MOST_ROWS ? divide(own, others) : [own];
  });
}
