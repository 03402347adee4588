/**
 * The files of `data/` → what they say, checked against each other. Pure: no file is read here, so that it runs on
 * files that a reader downloaded, and in a browser, as it does in a build.
 */
import type { z } from 'zod';
import type { Bench, DisplayPair, PlannedPair, PlannedSession, Prose, Rig, Session } from '../model/bench.ts';
import { checkId, checkLinks } from './check-ids.ts';
import { checkReadingsAlone } from './check-readings.ts';
import { checkBody, checkDisplay, checkLatency, checkRig } from './check-relations.ts';
import { parseDisplayPair } from './display-pairs.ts';
import { parseFrontMatter } from './front-matter.ts';
import { statedValues } from './front-texts.ts';
import { parseSpeeds } from './parse-speeds.ts';
import { parseVariation } from './parse-variation.ts';
import { parseRecord, type RecordFile } from './record.ts';
import { bodySchema } from './schemas/body.ts';
import { displaySchema } from './schemas/display.ts';
import { linkSchema } from './schemas/link.ts';
import { rigSchema } from './schemas/rig.ts';
import { parseSession, type Known } from './sessions.ts';
import { parseSettings } from './settings.ts';
import type { Source } from './source.ts';

/** A file that describes something; without a source where it could not be read, which is reported. */
export interface NamedSource {
  readonly id: string;
  readonly source: Source | undefined;
}

/** The two files of a session; what could not be read or is not there is missing, which is reported. */
export interface SessionPairSource {
  readonly id: string;
  readonly front: Source | undefined;
  readonly readings: Source | undefined;
}

/** Each list sorted by id. */
export interface DataSources {
  readonly settings: Source | undefined;
  readonly variation: Source | undefined;
  readonly speeds: Source | undefined;
  readonly bodies: readonly NamedSource[];
  readonly displays: readonly NamedSource[];
  readonly links: readonly NamedSource[];
  readonly rigs: readonly NamedSource[];
  readonly sessions: readonly SessionPairSource[];
  readonly displayPairs: readonly SessionPairSource[];
}

export interface DataContext {
  /** Ids of the method notes that there are. */
  readonly methods: readonly string[];
  /** What a note says in its author's words; nothing, where nobody is going to check that. */
  readonly readProse: (source: Source) => readonly Prose[];
}

/** What could be parsed: a faulty file is missing, its mistakes are reported. */
export interface ParsedData
  extends Pick<
    Bench,
    'bodies' | 'displays' | 'links' | 'rigs' | 'sessions' | 'displayPairs' | 'planned' | 'plannedPairs'
  > {
  readonly settings: Bench['settings'] | undefined;
  readonly variation: Bench['variation'] | undefined;
  readonly speeds: Bench['speeds'] | undefined;
}

export function parseData(sources: DataSources, { methods, readProse }: DataContext): ParsedData {
  const describe = <T>({ id, value, front, source }: RecordFile<T>) => ({
    id,
    ...value,
    description: front.body,
    prose: readProse(source),
    stated: statedValues(front.value),
    file: source.file,
  });
  // 1. what stands alone
  const settings = sources.settings && parseSettings(sources.settings);
  const variation = sources.variation && parseVariation(sources.variation);
  const speeds = sources.speeds && parseSpeeds(sources.speeds);
  const bodies = parseRecords(sources.bodies, bodySchema);
  const displays = parseRecords(sources.displays, displaySchema);
  const links = parseRecords(sources.links, linkSchema);
  bodies.forEach(checkBody);
  displays.forEach(checkDisplay);
  for (const { value, front, source } of links) checkLatency(front, value.latency, source.report);

  // 2. what refers to something else
  const [displayIds, linkIds] = [idsOf(sources.displays), idsOf(sources.links)];
  const rigs = parseRecords(sources.rigs, rigSchema);
  for (const { value, front, source } of rigs) {
    checkId(front, 'display', 'unknown-display', value.display, displayIds, source.report);
    checkLinks(front, value.links, linkIds, source.report);
  }
  rigs.forEach(checkRig);
  const described = rigs.map((record): Rig => describe(record));
  const known: Known = {
    bodies: idsOf(sources.bodies),
    displays: displayIds,
    links: linkIds,
    rigs: idsOf(sources.rigs),
    methods,
    settings,
    rigById: new Map(described.map((rig) => [rig.id, rig])),
  };
  return {
    settings,
    variation,
    speeds,
    bodies: bodies.map((record) => describe(record)),
    displays: displays.map((record) => describe(record)),
    links: links.map((record) => describe(record)),
    rigs: described,
    ...parseSessions(sources.sessions, known, readProse),
    ...parsePairs(sources.displayPairs, known, readProse),
  };
}

function parseRecords<T>(sources: readonly NamedSource[], schema: z.ZodType<T>): readonly RecordFile<T>[] {
  return sources.flatMap(({ id, source }) => {
    const record = source && parseRecord(source, schema);
    return record === undefined ? [] : [{ id, ...record }];
  });
}

function parseSessions(
  sources: readonly SessionPairSource[],
  known: Known,
  readProse: DataContext['readProse'],
): Pick<ParsedData, 'sessions' | 'planned'> {
  const sessions: Session[] = [];
  const planned: PlannedSession[] = [];
  for (const { id, front: source, readings } of sources) {
    const front = source && parseFrontMatter(source);
    if (front === undefined && readings) checkReadingsAlone(readings, undefined, known);
    const parsed = source && front && parseSession({ id, source, front, readingsSource: readings, readProse }, known);
    if (parsed?.kind === 'session') sessions.push(parsed.session);
    if (parsed?.kind === 'planned') planned.push(parsed.planned);
  }
  return { sessions, planned };
}

function parsePairs(
  sources: readonly SessionPairSource[],
  known: Known,
  readProse: DataContext['readProse'],
): Pick<ParsedData, 'displayPairs' | 'plannedPairs'> {
  const displayPairs: DisplayPair[] = [];
  const plannedPairs: PlannedPair[] = [];
  for (const { id, front: source, readings } of sources) {
    const front = source && parseFrontMatter(source);
    const parsed =
      source && front && parseDisplayPair({ id, source, front, readingsSource: readings, readProse }, known);
    if (parsed?.kind === 'pair') displayPairs.push(parsed.pair);
    if (parsed?.kind === 'planned') plannedPairs.push(parsed.planned);
  }
  return { displayPairs, plannedPairs };
}

function idsOf(sources: readonly NamedSource[]): readonly string[] {
  return sources.map(({ id }) => id);
}
