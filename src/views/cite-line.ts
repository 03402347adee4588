/** One line by which a figure, a chart or a table is cited: what, value, interval, condition, rig, state of the record, address. */
import type { Bench } from '../model/bench.ts';
import { once } from '../model/once.ts';
import { describeCondition } from '../register/comparisons/describe-condition.ts';
import type { Published } from '../register/published.ts';
import { describeCoverage, describeCoverageLevel } from '../register/provenance.ts';
import type { Figure } from '../register/register.ts';
import { recordedOn } from './earlier-values.ts';

type Site = Pick<Published, 'bench' | 'register'>;

export function citeFigure(site: Site, figure: Figure): string {
  const { text, interval, unit, entry } = figure;
  const value =
    interval === undefined
      ? text
      : text.includes(' to ')
        ? `${text}, ${describeCoverageLevel(interval.level)} interval`
        : `${text} (${describeCoverage(interval, unit)})`;
  return `${describeCiteSubject(site, figure)}: ${value}. ${citePlace(citedPublication(site), entry)}`;
}

/** What a publication is cited as, and in what state: what stands at the end of every line. */
export interface CitedPublication {
  readonly title: string;
  readonly publisher: string;
  readonly analysis: string;
  readonly recorded: string | undefined;
  readonly address: string | undefined;
}

export function citedPublication({ bench, register }: Site): CitedPublication {
  const { title, publisher, address } = bench.site;
  return { title, publisher, analysis: register.analysis, recorded: recordedOn(bench), address };
}

/** A chart or a table, by its caption, at its place on a page. */
export function citeShown(publication: CitedPublication, caption: string, at: string): string {
  return `${caption.replace(/[.\s]+$/, '')}. ${citePlace(publication, at)}`;
}

/** Who says so, in what state of the record, and where. */
export function citePlace(publication: CitedPublication, at: string): string {
  return `${citeSource(publication)} ${addressOf(publication.address, at)}`;
}

function citeSource({ title, publisher, recorded, analysis }: CitedPublication): string {
  const state = recorded === undefined ? 'not yet recorded' : `as recorded on ${recorded}`;
  return `${[title, publisher].filter((name) => name.trim() !== '').join(', ')}; ${state}, analysis version ${analysis}.`;
}

/** In full where the publication says where it stands, else from its home page on. */
function addressOf(base: string | undefined, path: string): string {
  return base === undefined ? path : new URL(path.replace(/^\//, ''), base).href;
}

/** `Total latency of Vennick Q4, 25 frames/s, output UHD, on the rig Balcony`. */
export function describeCiteSubject({ bench }: Pick<Site, 'bench'>, { label, of, group }: Figure): string {
  const describe = (id: string | undefined): string => (id === undefined ? '' : (conditionsOn(bench).get(id) ?? ''));
  const [session, than] = [describe(of['session']), describe(of['than'])];
  if (session !== '' && than !== '') return `${label}: ${session}, against ${than}`;
  if (session !== '') return `${label} of ${session}`;
  return group === undefined || label.includes(group) ? label : `${label} (${group})`;
}

/** By session. */
const conditionsOn = once(
  (bench: Bench) => new Map(bench.sessions.map((session) => [session.id, conditionOf(bench, session)])),
);

function conditionOf(bench: Bench, session: Bench['sessions'][number]): string {
  const [body, rig] = [
    bench.bodies.find(({ id }) => id === session.body)?.name ?? session.body,
    bench.rigs.find(({ id }) => id === session.rig)?.name ?? session.rig,
  ];
  return `${body}, ${describeCondition(bench, session)}, on the rig ${rig} (session ${session.id})`;
}
