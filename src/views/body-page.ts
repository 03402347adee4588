/** What the page of one body prints. */
import type { Body } from '../model/bench.ts';
import { rigPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { selectFigures } from '../register/select.ts';
import { capitalize } from '../register/text.ts';
import { bodyHistory, type BodyHistory } from './body-history.ts';
import { figureRows, type FigureRows } from './figure-rows.ts';
import { lawPlate, type LawPlate } from './law-plate.ts';
import { noteOf, type Note } from './note.ts';
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
  }[];
  /** undefined for a body without a session. */
  readonly settings: SettingsOfBody | undefined;
  readonly laws: readonly BodyLaw[];
  readonly practice: InPractice | undefined;
  readonly history: BodyHistory;
}

export function bodyPage(site: Published, of: string): BodyPage {
  const { bench, register, find, figure } = site;
  const { id, name, maker, model, readoutMs, description, file } = find.body(of);
  const [sessions, readings] = ['sessions', 'readings'].map((count) => figure(`count/${count}/${id}`));
  return {
    body: { id, name, maker, model, ...(readoutMs === undefined ? {} : { readoutMs }), file },
    note: noteOf(bench, description, file),
    measured: sessions && readings && { sessions, readings },
    rigs: bench.rigs
      .flatMap((rig) => {
        const figures = selectFigures(bench, register.figures, { kind: 'total', body: id, rig: rig.id });
        if (figures.length === 0) return [];
        const ofRig = figures.map((total) => find.session(total.of['session'] ?? ''));
        return [{ id: rig.id, name: rig.name, path: rigPath(rig.id), totals: figureRows(bench, figures, ofRig) }];
      })
      .sort((x, y) => y.totals.rows.length - x.totals.rows.length),
    settings: bench.sessions.some(({ body }) => body === id) ? settingsOfBody(site, id) : undefined,
    laws: lawsOf(site, id),
    practice: inPractice(site, id),
    history: bodyHistory(site, id),
  };
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
