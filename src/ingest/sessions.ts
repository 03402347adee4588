import {
  METHODS,
  type MethodId,
  type PlannedSession,
  type Prose,
  type Rig,
  type Session,
  type Setting,
} from '../model/bench.ts';
import { parseRate, type Rate } from '../model/rate.ts';
import { checkId, checkLinks, reportAtKey } from './check-ids.ts';
import { checkSchema } from './check-schema.ts';
import type { FrontMatter } from './front-matter.ts';
import { statedValues } from './front-texts.ts';
import { nearest } from './nearest.ts';
import { present } from './present.ts';
import { checkReadings, checkReadingsAlone } from './check-readings.ts';
import { parseReadings } from './readings.ts';
import { sessionSchema, type SessionFront } from './schemas/session.ts';
import { findLevel } from './settings.ts';
import type { Report, Source } from './source.ts';

/** Missing as a key of the schema is missing; only a planned session without readings has no date yet. */
const NO_DATE = { code: 'missing-key', line: 1, key: 'date' } as const;

/** What a session may refer to. A file that is there but faulty counts as known: one mistake, one problem. */
export interface Known {
  readonly bodies: readonly string[];
  readonly displays: readonly string[];
  readonly links: readonly string[];
  readonly rigs: readonly string[];
  readonly methods: readonly string[];
  /** Undefined where `data/settings.yaml` is faulty. */
  readonly settings: readonly Setting[] | undefined;
  /** Those that were read without a mistake, by id. */
  readonly rigById: ReadonlyMap<string, Rig>;
}

interface SessionSources {
  readonly id: string;
  readonly source: Source;
  readonly front: FrontMatter;
  /** Undefined where the readings could not be read, which is reported already. */
  readonly readingsSource: Source | undefined;
  readonly readProse: (source: Source) => readonly Prose[];
}

export type ParsedSession =
  | { readonly kind: 'session'; readonly session: Session }
  | { readonly kind: 'planned'; readonly planned: PlannedSession };

/** Parses one session and its readings; undefined, with every mistake of both files reported, when they do not fit. */
export function parseSession(
  { id, source, front, readingsSource, readProse }: SessionSources,
  known: Known,
): ParsedSession | undefined {
  const { report } = source;
  const prose = readProse(source);
  const data = checkSchema(front, sessionSchema, report);
  if (data === undefined) {
    if (readingsSource) checkReadingsAlone(readingsSource, front, known);
    return undefined;
  }
  checkReferences(data, known, front, report);
  const { levels, rate } = checkSettings(data, known.settings, front, report);

  const rig = known.rigById.get(data.rig);
  const method = METHODS.find((name) => name === data.method);
  if (method !== undefined && !known.methods.includes(method)) {
    reportAtKey(front, 'method', { code: 'missing-method', found: method, expected: `${method}.mdx` }, report);
  }
  if (rig === undefined || method === undefined) {
    if (readingsSource) checkReadingsAlone(readingsSource, front, known);
    return undefined;
  }
  const lacks = whatRigLacks(rig, method);
  if (lacks !== undefined) {
    reportAtKey(front, 'rig', { code: 'rig-lacks', found: method, expected: lacks }, report);
    return undefined;
  }
  const parsed = readingsSource && parseReadings(readingsSource, method, rig, data.planned);
  if (readingsSource === undefined || parsed === undefined || rate === undefined) return undefined;
  checkReadings(parsed, method, rig, rate, readingsSource.report);
  const { body, firmware, date, room, warmUp, cutShort, importedFrom, links = rig.links, display = rig.display } = data;
  const planned = { id, body, rig: rig.id, links, display, method, settings: levels, rate, file: source.file };
  if (data.planned === true && parsed.readings.length === 0) return { kind: 'planned', planned };
  if (date === undefined) {
    if (data.planned === true) report(NO_DATE);
    return undefined;
  }
  const details = { firmware, room, warmUp, cutShort, importedFrom, resolutionMs: parsed.resolutionMs };
  return {
    kind: 'session',
    session: {
      ...present({ ...planned, date, notes: front.body, prose, stated: statedValues(front.value), ...details }),
      readings: parsed.readings,
      readingsFile: readingsSource.file,
    },
  };
}

function checkReferences(data: SessionFront, known: Known, front: FrontMatter, report: Report): void {
  if (data.date === undefined && data.planned !== true) report(NO_DATE);
  if (data.firmware !== undefined && front.isNumber(['firmware'])) {
    reportAtKey(front, 'firmware', { code: 'unquoted-number', found: data.firmware }, report);
  }
  checkId(front, 'body', 'unknown-body', data.body, known.bodies, report);
  checkId(front, 'rig', 'unknown-rig', data.rig, known.rigs, report);
  checkId(front, 'method', 'unknown-method', data.method, METHODS, report);
  if (data.display !== undefined) checkId(front, 'display', 'unknown-display', data.display, known.displays, report);
  checkLinks(front, data.links ?? [], known.links, report);
}

function checkSettings(
  data: SessionFront,
  settings: readonly Setting[] | undefined,
  front: FrontMatter,
  report: Report,
): { levels: Readonly<Record<string, string>>; rate: Rate | undefined } {
  if (settings === undefined) return { levels: {}, rate: undefined };
  const names = settings.map(({ id }) => id);
  const written = new Map(Object.entries(data.settings));
  for (const name of writtenNames(front)) {
    if (names.includes(name)) continue;
    const key = `settings.${name}`;
    report({
      code: 'unknown-setting',
      ...front.locateKey(['settings', name]),
      key,
      found: name,
      choices: names,
      nearest: nearest(name, names),
    });
  }
  const levels: [string, string][] = [];
  for (const setting of settings) {
    const found = written.get(setting.id);
    if (found === undefined) continue;
    const level = findLevel(setting, found);
    if (level) levels.push([setting.id, level.id]);
    else {
      const choices = setting.levels.map(({ id }) => id);
      const here = { ...front.locate(['settings', setting.id]), key: `settings.${setting.id}` };
      report({ code: 'unknown-level', ...here, found, choices, nearest: nearest(found, choices) });
    }
  }
  if (!written.has('rate')) report({ code: 'missing-key', ...front.locateKey(['settings']), key: 'settings.rate' });
  const rate = levels.find(([name]) => name === 'rate')?.[1];
  return { levels: Object.fromEntries(levels), rate: rate === undefined ? undefined : parseRate(rate) };
}

/** Every name under `settings` as it is written, those too that an object cannot hold like any other. */
function writtenNames({ value }: FrontMatter): readonly string[] {
  const settings = (value as Readonly<Record<string, unknown>>)['settings'];
  return typeof settings === 'object' && settings !== null ? Object.getOwnPropertyNames(settings) : [];
}

/** The key of the rig that the method cannot do without, where the rig has none. */
function whatRigLacks(rig: Rig, method: MethodId): string | undefined {
  if (method === 'two-timers') return rig.sourceTimer ? undefined : 'source-timer';
  if (method === 'frame-count') return rig.observer ? undefined : 'observer';
  return rig.instrument ? undefined : 'instrument';
}
