/** What the page of one session prints. */
import type { Bench, Session, SourceFile } from '../model/bench.ts';
import { once } from '../model/once.ts';
import { badgesOf } from '../register/badges.ts';
import { namesOfSessions } from '../register/labels.ts';
import { bodyPath, methodPath, rigPath, sessionPath } from '../register/paths.ts';
import { describeImport } from './imported-from.ts';
import { describeBasis, describeCoverageLevel } from '../register/provenance.ts';
import type { Published } from '../register/published.ts';
import type { Figure, Finding } from '../register/register.ts';
import { inBenchOrder } from '../register/select.ts';
import { describeBudget, type BudgetText } from './budget.ts';
import { entryRow, type EntryRow } from './entry.ts';
import { noteOf, type Note } from './note.ts';
import { readingsPlate, type ReadingsPlate } from './readings-plate.ts';

/** A line of what was set and used; `path` leads to the page of the first word. */
export interface ConditionLine {
  readonly term: string;
  readonly says: string;
  /** Where `says` leads, and what follows it outside the link. */
  readonly path?: string;
  readonly after?: string;
}

export interface Neighbour {
  readonly label: string;
  readonly path: string;
}

export interface SessionPage {
  readonly session: Session;
  readonly note: Note;
  /** What sets it apart from an ordinary one. */
  readonly badges: readonly string[];
  /** `Vennick Q4, 25 frames/s`. */
  readonly title: string;
  /** The sessions before and after it, of the same body. */
  readonly before: Neighbour | undefined;
  readonly after: Neighbour | undefined;
  readonly headline:
    | {
        readonly total: Figure;
        readonly frames: Figure;
        /** `95 %`. */
        readonly level: string;
        /** `10 readings in 1 run`. */
        readonly basis: string;
        readonly budget: BudgetText;
      }
    | undefined;
  readonly plate: ReadingsPlate | undefined;
  readonly findings: readonly Finding[];
  readonly entries: readonly EntryRow[];
  readonly analysis: string;
  readonly conditions: readonly ConditionLine[];
  readonly files: readonly SourceFile[];
}

export function sessionPage(site: Published, id: string): SessionPage {
  const { bench, register, find, figuresOf, findingsOf } = site;
  const session = find.session(id);
  return {
    session,
    note: noteOf(bench, session.notes, session.file),
    badges: badgesOf(bench)(id),
    title: namesOfSessions(bench).get(id) ?? id,
    before: neighbour(site, session, -1),
    after: neighbour(site, session, 1),
    headline: headlineOf(site, id),
    plate: readingsPlate(site, session),
    findings: findingsOf('session', id),
    entries: figuresOf(id).map((figure) => entryRow(site, figure)),
    analysis: register.analysis,
    conditions: conditionsOf(site, session),
    files: filesOf(site, session),
  };
}

function neighbour({ bench }: Published, { id, body }: Session, step: 1 | -1): Neighbour | undefined {
  const own = byBody(bench).get(body) ?? [];
  const other = own[own.findIndex((session) => session.id === id) + step];
  return other && { label: namesOfSessions(bench).get(other.id) ?? other.id, path: sessionPath(other.id) };
}

const byBody = once((bench: Bench) => Map.groupBy(inBenchOrder(bench, bench.sessions), ({ body }) => body));

/** All that it takes to recompute the session alone; its rig's own display and links too, where it had others. */
function filesOf({ bench, find }: Published, session: Session): readonly SourceFile[] {
  const rig = find.rig(session.rig);
  const files = [
    session.readingsFile,
    session.file,
    find.body(session.body).file,
    rig.file,
    ...[session.display, rig.display].map((display) => find.display(display).file),
    ...[...session.links, ...rig.links].map((link) => find.link(link).file),
    bench.settingsFile,
    ...(bench.variation === undefined ? [] : [bench.variation.file]),
    ...(bench.workbooks ?? []).filter(({ path }) => path === session.importedFrom?.path),
  ];
  return [...new Map(files.map((file) => [file.path, file])).values()];
}

function headlineOf({ figure }: Published, id: string): SessionPage['headline'] {
  const [total, frames] = [figure(`total/${id}`), figure(`frames/${id}`)];
  return (
    total &&
    frames && {
      total,
      frames,
      level: describeCoverageLevel(total.interval?.level ?? 0),
      basis: describeBasis(total),
      budget: describeBudget(total),
    }
  );
}

function conditionsOf({ bench, find }: Published, session: Session): readonly ConditionLine[] {
  const [body, rig, display] = [find.body(session.body), find.rig(session.rig), find.display(session.display)];
  const method = bench.methods.find((each) => each.id === session.method);
  return [
    {
      term: 'Body',
      says: body.name,
      path: bodyPath(body.id),
      ...(session.firmware === undefined ? {} : { after: `, firmware ${session.firmware}` }),
    },
    ...bench.settings
      .filter((setting) => session.settings[setting.id] !== undefined)
      .map((setting) => ({ term: setting.label, says: find.level(setting.id, session.settings[setting.id] ?? '') })),
    { term: 'Rig', says: rig.name, path: rigPath(rig.id) },
    {
      term: 'Chain',
      says: [body.name, ...session.links.map((link) => find.link(link).name), display.name].join(', then '),
    },
    method === undefined
      ? { term: 'Method', says: '' }
      : { term: 'Method', says: method.title, path: methodPath(method.id) },
    ...(session.importedFrom === undefined
      ? []
      : [{ term: 'Readings imported from', says: describeImport(session.importedFrom) }]),
    ...(session.room === undefined ? [] : [{ term: 'Room', says: session.room }]),
    ...(session.warmUp === undefined ? [] : [{ term: 'Warm-up', says: session.warmUp }]),
  ];
}
