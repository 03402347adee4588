/** What a readings file says beyond its rows: its unit, and its own mistakes where the session around it is faulty. */
import { METHODS, type MethodId, type Rig } from '../model/bench.ts';
import type { ProblemCode } from '../model/problem.ts';
import { intervalMs, type Rate } from '../model/rate.ts';
import { parseReadings, type Readings } from './readings.ts';
import type { Report, Source } from './source.ts';
import type { YamlFile } from './yaml.ts';

/**
 * A total holds half a frame at least, and its readings scatter by as much; what is far below was written in another
 * unit.
 */
const LEAST_FRAMES = 1 / 8;
/** Readings of one clip; estimating as many takes seconds. */
const LONGEST_CLIP = 1000;
/** Mistakes that only a known rig can tell. */
const NEEDS_RIG: readonly ProblemCode[] = ['shown-later', 'timer-wrapped', 'time-past-wrap', 'stamps-back', 'too-long'];
const ANY_RATE: Rate = { frames: 60, seconds: 1 };
const ANY_RIG = {
  sourceTimer: { name: '', refresh: ANY_RATE },
  observer: { name: '', rate: ANY_RATE },
} as Rig;

/** Reports readings that are too short for the frame rate, as seconds in a column of milliseconds are. */
export function checkReadings({ readings }: Readings, method: MethodId, rig: Rig, rate: Rate, report: Report): void {
  checkReadingsResolution(readings, rig, report);
  if (method !== 'instrument') checkClipLengths(readings, report);
  const latencies = readings
    .flatMap(({ excluded, latencyMs }) => (excluded === undefined && latencyMs !== undefined ? [latencyMs] : []))
    .sort((a, b) => a - b);
  const middle = latencies[Math.floor(latencies.length / 2)];
  const leastMs = LEAST_FRAMES * intervalMs(rate);
  if (middle === undefined || middle >= leastMs) return;
  const key = { 'two-timers': 'source', 'frame-count': 'frames', instrument: 'latency' }[method];
  const unit = method === 'frame-count' ? intervalMs(rig.observer?.rate ?? ANY_RATE) : 1;
  const show = (ms: number): string =>
    method === 'frame-count' ? `${Number((ms / unit).toPrecision(3))} frames` : `${Number(ms.toPrecision(3))} ms`;
  report({ code: 'too-short', key, found: show(middle), expected: `at least about ${show(leastMs)}` });
}

/** The analysis of a clip weighs each reading in every phase of it: with thousands it would not end. */
export function checkClipLengths(readings: Readings['readings'], report: Report): void {
  const counted = readings.filter(({ excluded }) => excluded === undefined);
  for (const [run, rows] of Map.groupBy(counted, (reading) => reading.run)) {
    const first = rows[LONGEST_CLIP];
    if (first === undefined) continue;
    const [found, expected] = [String(rows.length), `at most ${LONGEST_CLIP}`];
    report({ code: 'long-clip', line: first.line, key: `run ${run}`, found, expected });
  }
}

/** What was not written down cannot have been read. */
export function checkReadingsResolution(readings: Readings['readings'], rig: Rig, report: Report): void {
  const statedMs = rig.sourceTimer?.resolutionMs;
  const cell = readings[0]?.cells['source'];
  if (statedMs === undefined || cell === undefined || cell === '') return;
  const stepMs = 1000 / 10 ** (cell.split('.')[1]?.length ?? 0);
  if (statedMs < stepMs * (1 - 1e-9))
    report({
      code: 'out-of-range',
      key: 'source',
      found: cell,
      expected: `digits as fine as the resolution of ${statedMs} ms that the rig states for its source-timer`,
    });
}

/** Reports the mistakes of a readings file whose session or rig is faulty, as far as they can be told without them. */
export function checkReadingsAlone(
  source: Source,
  front: Pick<YamlFile, 'value'> | undefined,
  known: { readonly rigById: ReadonlyMap<string, Rig> },
): void {
  const written = typeof front?.value === 'object' && front.value !== null ? front.value : {};
  const { method: stated, rig: rigId } = written as Readonly<Record<string, unknown>>;
  const rig = known.rigById.get(String(rigId));
  const method = METHODS.find((name) => name === stated) ?? methodOfHeader(source.bytes);
  if (method === undefined) return;
  const report: Report = (problem) => {
    if (rig !== undefined || !NEEDS_RIG.includes(problem.code)) source.report(problem);
  };
  parseReadings({ ...source, report }, method, { ...ANY_RIG, ...rig }, true);
}

/** The method whose column a file has. */
function methodOfHeader(bytes: Uint8Array): MethodId | undefined {
  const header = new TextDecoder().decode(bytes.subarray(0, 200)).split(/[\r\n]/, 1)[0] ?? '';
  if (header.includes('frames')) return 'frame-count';
  if (header.includes('latency')) return 'instrument';
  return header.includes('source') || header.includes('shown') ? 'two-timers' : undefined;
}
