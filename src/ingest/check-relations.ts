/** What fields of one file, or of two, say about each other: a part cannot last longer than the whole it belongs to. */
import type { Body, Display, Observer, Rig, SourceTimer } from '../model/bench.ts';
import { intervalMs, rateLabel, type Rate } from '../model/rate.ts';
import { keyName } from './check-schema.ts';
import type { RecordFile } from './record.ts';
import type { Report } from './source.ts';
import type { YamlFile } from './yaml.ts';

/** A time written as a rounded decimal may exceed the exact interval by this share: 16.7 ms for 1/60 s. */
const ROUNDING = 0.01;
/**
 * Below this share of its interval, a stated time is a thousandth of the true one: a wrong unit. Zero is a value of its
 * own.
 */
const LEAST_SHARE = 0.005;
/** Slowest rate at which bodies are read out here, in frames per second; common practice, no source. */
const SLOWEST: Rate = { frames: 24_000, seconds: 1001 };

type Front = Pick<YamlFile, 'locate' | 'value'>;

/** A display draws a picture within one refresh. */
export function checkDisplay({
  value,
  front,
  source: { report },
}: RecordFile<Omit<Display, 'id' | 'description' | 'prose' | 'stated' | 'file'>>): void {
  const one = `one refresh of ${rateLabel(value.refresh)} Hz`;
  checkWithin(front, ['scan-out'], value.scanOutMs, intervalMs(value.refresh), one, report);
  checkLatency(front, value.latency, report);
}

/** A sensor is read within a frame. */
export function checkBody({
  value,
  front,
  source: { report },
}: RecordFile<Omit<Body, 'id' | 'description' | 'prose' | 'stated' | 'file'>>): void {
  checkWithin(front, ['sensor-readout'], value.readoutMs, intervalMs(SLOWEST), 'one frame of 23.976 frames/s', report);
}

export function checkLatency(
  front: Front,
  latency: { readonly valueMs: number; readonly standardUncertaintyMs: number } | undefined,
  report: Report,
): void {
  if (latency === undefined || latency.standardUncertaintyMs <= latency.valueMs) return;
  const path = ['latency', 'uncertainty'];
  if (latency.valueMs > 0)
    report({
      code: 'out-of-range',
      ...place(front, path),
      expected: 'no more than the latency itself, as a standard uncertainty',
    });
}

/** What a rig's timer, observer and instrument state of themselves. */
export function checkRig({
  value,
  front,
  source: { report },
}: RecordFile<Omit<Rig, 'id' | 'description' | 'prose' | 'stated' | 'file'>>): void {
  const { observer, sourceTimer, instrument } = value;
  if (observer !== undefined) checkObserver(front, observer, report);
  if (sourceTimer !== undefined) checkTimer(front, sourceTimer, report);
  if (
    instrument !== undefined &&
    !(instrument.expandedUncertaintyMs >= 1e-4 && instrument.expandedUncertaintyMs <= 100)
  )
    report({
      code: 'out-of-range',
      ...place(front, ['instrument', 'expanded-uncertainty']),
      expected: '0.1 µs to 100 ms',
    });
}

export function checkObserver(front: Front, { rate, exposureMs, readoutMs }: Observer, report: Report): void {
  const frameMs = intervalMs(rate);
  const one = `one frame of ${rateLabel(rate)} frames/s`;
  checkAtMost(front, ['observer', 'exposure'], exposureMs, frameMs, one, report);
  checkWithin(front, ['observer', 'readout'], readoutMs, frameMs, one, report);
}

export function checkTimer(front: Front, { resolutionMs, wrapsAfterMs }: SourceTimer, report: Report): void {
  checkAtMost(front, ['source-timer', 'resolution'], resolutionMs, 1000, 'one second', report);
  if (wrapsAfterMs !== undefined && wrapsAfterMs < 1000) {
    const path = ['source-timer', 'wraps-after'];
    report({ code: 'out-of-range', ...place(front, path), expected: 'one second or more' });
  }
}

function checkWithin(
  front: Front,
  path: readonly string[],
  ms: number | undefined,
  wholeMs: number,
  whole: string,
  report: Report,
): void {
  checkAtMost(front, path, ms, wholeMs, whole, report);
  if (ms !== undefined && ms > 0 && ms < LEAST_SHARE * wholeMs)
    report({ code: 'out-of-range', ...place(front, path), expected: `0 ms, or a good part of ${whole}` });
}

function checkAtMost(
  front: Front,
  path: readonly string[],
  ms: number | undefined,
  wholeMs: number,
  whole: string,
  report: Report,
): void {
  if (ms === undefined || ms <= wholeMs * (1 + ROUNDING)) return;
  report({
    code: 'out-of-range',
    ...place(front, path),
    expected: `at most ${Number(wholeMs.toPrecision(4))} ms, ${whole}`,
  });
}

function place(front: Front, path: readonly string[]) {
  let at: unknown = front.value;
  for (const step of path) at = (at as Readonly<Record<string, unknown>>)[step];
  return { ...front.locate(path), key: keyName(path), found: typeof at === 'string' ? at : '' };
}
