/** A comparison of two displays: its front matter and its readings, in the form that two timers have. */
import { PAIR_METHODS, type DisplayPair, type PlannedPair, type Prose, type Rig } from '../model/bench.ts';
import { checkId, checkLinks, reportAtKey } from './check-ids.ts';
import { checkClipLengths, checkReadingsResolution } from './check-readings.ts';
import { checkObserver, checkTimer } from './check-relations.ts';
import { checkSchema } from './check-schema.ts';
import type { FrontMatter } from './front-matter.ts';
import { statedValues } from './front-texts.ts';
import { present } from './present.ts';
import { parseReadings } from './readings.ts';
import { displayPairSchema } from './schemas/display-pair.ts';
import type { Source } from './source.ts';

interface PairSources {
  readonly id: string;
  readonly source: Source;
  readonly front: FrontMatter;
  readonly readingsSource: Source | undefined;
  readonly readProse: (source: Source) => readonly Prose[];
}

interface Known {
  readonly displays: readonly string[];
  readonly links: readonly string[];
  readonly methods: readonly string[];
}

export type ParsedPair =
  | { readonly kind: 'pair'; readonly pair: DisplayPair }
  | { readonly kind: 'planned'; readonly planned: PlannedPair };

/** Undefined where a mistake was reported. */
export function parseDisplayPair(
  { id, source, front, readingsSource, readProse }: PairSources,
  known: Known,
): ParsedPair | undefined {
  const { report } = source;
  const noDate = { code: 'missing-key', line: 1, key: 'date' } as const;
  const prose = readProse(source);
  const data = checkSchema(front, displayPairSchema, report);
  if (data === undefined) return undefined;
  if (data.date === undefined && data.planned !== true) report(noDate);
  checkId(front, 'method', 'unknown-method', data.method, PAIR_METHODS, report);
  checkId(front, 'display', 'unknown-display', data.display, known.displays, report);
  checkId(front, 'against', 'unknown-display', data.against, known.displays, report);
  checkLinks(front, data.links, known.links, report);
  checkLinks(front, data.againstLinks, known.links, report);
  checkTimer(front, data.sourceTimer, report);
  if (data.observer !== undefined) checkObserver(front, data.observer, report);
  if (data.display === data.against)
    reportAtKey(front, 'against', { code: 'same-display', found: data.against }, report);
  const method = PAIR_METHODS.find((name) => name === data.method);
  if (method === undefined) return undefined;
  if (!known.methods.includes(method))
    reportAtKey(front, 'method', { code: 'missing-method', found: method, expected: `${method}.mdx` }, report);
  if (readingsSource === undefined) return undefined;
  const timer = { sourceTimer: data.sourceTimer } as Rig;
  const parsed = parseReadings(readingsSource, 'two-timers', timer, data.planned, true);
  if (parsed === undefined) return undefined;
  checkReadingsResolution(parsed.readings, timer, readingsSource.report);
  checkClipLengths(parsed.readings, readingsSource.report);
  const { planned: isPlanned, date, ...described } = data;
  const planned: PlannedPair = present({ id, ...described, method, file: source.file });
  if (parsed.readings.length === 0) return isPlanned === true ? { kind: 'planned', planned } : undefined;
  if (date === undefined) {
    if (isPlanned === true) report(noDate);
    return undefined;
  }
  const { resolutionMs, readings } = parsed;
  const said = { notes: front.body, prose, stated: statedValues(front.value) };
  return {
    kind: 'pair',
    pair: { ...present({ ...planned, date, ...said, resolutionMs }), readings, readingsFile: readingsSource.file },
  };
}
