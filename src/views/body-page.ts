/** What the page of one body prints. */
import type { Bench, Body, Session } from '../model/bench.ts';
import { chainKey } from '../register/comparisons/conditions.ts';
import { standingConditions } from '../register/comparisons/standing.ts';
import { rigPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { selectFigures } from '../register/select.ts';
import type { Sentence } from '../register/sentence.ts';
import { capitalize } from '../register/text.ts';
import { bodyHistory, type BodyHistory } from './body-history.ts';
import { sectionsOfBody, type BodySection } from './body-sections.ts';
import { figureRows, type FigureRows } from './figure-rows.ts';
import { lawPlate, type LawPlate } from './law-plate.ts';
import { noteOf, type Note } from './note.ts';
import { describeLaw } from './rate-law-words.ts';
import { selectLaws } from './select-laws.ts';
import { inPractice, type InPractice } from './in-practice.ts';
import { settingsOfBody, type SettingsOfBody } from './settings-of-body.ts';

/** A rate law under the heading of its configuration, where the body has several. */
export interface BodyLaw {
  readonly heading: string | undefined;
  readonly plate: LawPlate;
  readonly caption: string;
}

export interface BodyPage {
  readonly body: Pick<Body, 'id' | 'name' | 'maker' | 'model' | 'readoutMs' | 'file'>;
  readonly note: Note;
  readonly measured: { readonly sessions: Figure; readonly readings: Figure } | undefined;
  /** The one with the most sessions first. */
  readonly rigs: readonly {
    readonly id: string;
    readonly name: string;
    readonly path: string;
    readonly totals: FigureRows;
    /** Whether one session speaks for each condition. */
    readonly speaking: boolean;
  }[];
  /** undefined for a body without a session. */
  readonly settings: SettingsOfBody | undefined;
  /** None where they have pages of their own. */
  readonly laws: readonly BodyLaw[];
  readonly practice: InPractice | undefined;
  /** undefined where it has a page of its own. */
  readonly history: BodyHistory | undefined;
  readonly pages: BodyPages;
}

/** Of the parts that are too long for the page; none where it holds them all. */
interface BodyPages {
  readonly settings: readonly BodySection[];
  readonly laws: readonly (BodySection & { readonly says: Sentence })[];
  readonly history: BodySection | undefined;
}

export function bodyPage(site: Published, of: string): BodyPage {
  const { bench, register, find, figure } = site;
  const { id, name, maker, model, readoutMs, description, file } = find.body(of);
  const [sessions, readings] = ['sessions', 'readings'].map((count) => figure(`count/${count}/${id}`));
  const pages = pagesOf(site, id);
  const isWhole = pages.history === undefined;
  const settings = bench.sessions.some(({ body }) => body === id) ? settingsOfBody(site, id) : undefined;
  return {
    body: { id, name, maker, model, ...(readoutMs === undefined ? {} : { readoutMs }), file },
    note: noteOf(bench, description, file),
    measured: sessions && readings && { sessions, readings },
    rigs: bench.rigs
      .flatMap((rig) => {
        const all = selectFigures(bench, register.figures, { kind: 'total', body: id, rig: rig.id });
        const sessionOf = (total: Figure): Session => find.session(total.of['session'] ?? '');
        const shown = new Set(isWhole ? all.map(sessionOf) : speakingSessions(bench, all.map(sessionOf)));
        const figures = all.filter((total) => shown.has(sessionOf(total)));
        if (figures.length === 0) return [];
        const totals = figureRows(bench, figures, figures.map(sessionOf));
        return [{ id: rig.id, name: rig.name, path: rigPath(rig.id), totals, speaking: figures.length < all.length }];
      })
      .sort((x, y) => y.totals.rows.length - x.totals.rows.length),
    settings: settings && (isWhole ? settings : { ...settings, pairs: [] }),
    laws: pages.laws.length === 0 ? lawsOf(site, id) : [],
    practice: inPractice(site, id),
    history: isWhole ? bodyHistory(site, id) : undefined,
    pages,
  };
}

function pagesOf(site: Published, body: string): BodyPages {
  const sections = sectionsOfBody(site, body);
  const { figure, find } = site;
  const laws = selectLaws(site, { body }).filter(({ law }) => law.kind === 'rate-law');
  return {
    settings: sections.filter(({ part }) => part === 'settings'),
    laws: sections
      .filter(({ part }) => part === 'frame-rate')
      .flatMap((section, index) => {
        const law = laws[index];
        return law === undefined ? [] : [{ ...section, says: describeLaw(law, figure, find).says }];
      }),
    history: sections.find(({ part }) => part === 'history'),
  };
}

/** One session for each condition, chain by chain. */
function speakingSessions(bench: Bench, sessions: readonly Session[]): readonly Session[] {
  return [...Map.groupBy(sessions, chainKey).values()].flatMap((ofChain) => standingConditions(bench, ofChain));
}

/** Every rate law of a body; where no configuration was measured at two rates, what would give one. */
function lawsOf(site: Published, body: string): readonly BodyLaw[] {
  const laws = selectLaws(site, { body });
  const { name } = site.find.body(body);
  const found = laws.filter(({ law }) => law.kind === 'rate-law');
  if (found.length === 0)
    return laws.slice(0, 1).map((law) => ({ heading: undefined, plate: lawPlate(site, law), caption: '' }));
  const several = found.length > 1;
  return found.map((law) => ({
    heading: several ? capitalize(law.subject) : undefined,
    plate: lawPlate(site, law),
    caption: `Total latency of ${name} against frame interval${several ? `, ${law.subject}` : ''}`,
  }));
}
