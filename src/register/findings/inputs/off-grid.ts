import type { Session } from '../../../model/bench.ts';
import { intervalMs } from '../../../model/rate.ts';
import type { Lookup } from '../../lookup.ts';
import { countedReadings, countedRuns, type CountedReading } from '../../session-input.ts';
import { describeSignificant } from '../../text.ts';
import type { Rule } from '../rule.ts';

const FEWEST_STAMPS = 8;
/** Rows that may be named as misread; with more, the timer does not step with its refresh. */
const MOST = 0.25;
/** Speed error of a clock where nobody stated one, in ppm; common practice, no source. */
const TOLERANCE_PPM = 100;

/**
 * A timer drawn on a screen changes with its refresh, so that the stamps of a clip lie on one grid of that step, each
 * cut to the resolution. A stamp off the grid on which all others lie has a digit misread; where many are off it, times
 * were rounded, or the refresh rate is another.
 */
export const offGrid: Rule = ({ session, find }) => {
  const timer = find.rig(session.rig).sourceTimer;
  const { resolutionMs } = session;
  if (session.method !== 'two-timers' || timer === undefined || resolutionMs === undefined) return undefined;
  const stepMs = intervalMs(timer.refresh);
  if (resolutionMs > stepMs)
    return timer.resolutionMs !== undefined
      ? undefined
      : {
          severity: 'warning',
          message: `Times are written in steps of ${describeSignificant(resolutionMs, 2, 'ms')}, coarser than the ${describeSignificant(stepMs, 2, 'ms')} between two refreshes of the source timer: digits seem to be lost.`,
          hint: 'Spreadsheets round times: type them again with every digit that the timer shows; if it shows no more, state resolution in the rig’s source-timer.',
        };
  const off = offGridReadings(session, find);
  if (off.length === 0) return undefined;
  if (off.length > Math.max(1, MOST * countedReadings(session).length))
    return {
      severity: 'caution',
      message: `The stamps do not step with the ${describeSignificant(stepMs, 3, 'ms')} between two refreshes of the source timer.`,
      hint: 'Check source-timer refresh in the rig’s file, and whether a program rounded the times.',
    };
  return {
    severity: 'warning',
    message: `Stamps off the grid of refreshes on which all others of the clip lie: ${off.map(({ line, cells }) => `line ${line} (${cells['source'] ?? ''}, ${cells['shown'] ?? ''})`).join(', ')}.`,
    hint: 'Look at the film again: a mistyped digit is the usual cause. Correct it, or say under exclude why it does not count.',
  };
};

/** Readings with a stamp off the grid on which most of their clip lie; none where the session cannot tell. */
export function offGridReadings(session: Session, find: Lookup): readonly CountedReading[] {
  const timer = find.rig(session.rig).sourceTimer;
  const { resolutionMs } = session;
  if (timer === undefined || resolutionMs === undefined) return [];
  return countedRuns(session).flatMap((run) =>
    offIn(run, intervalMs(timer.refresh), resolutionMs, timer.clockTolerancePpm ?? TOLERANCE_PPM),
  );
}

/** Readings of a run of which a stamp is not within the arc, as long as a stamp may be off, that holds most of them. */
function offIn(
  run: readonly CountedReading[],
  stepMs: number,
  resolutionMs: number,
  ppm: number,
): readonly CountedReading[] {
  const stamps = run.flatMap((reading) =>
    [reading.sourceMs, reading.shownMs].flatMap((ms) => (ms === undefined ? [] : [{ ms, reading }])),
  );
  const times = stamps.map(({ ms }) => ms);
  const spanMs =
    times.reduce((high, ms) => Math.max(high, ms), 0) - times.reduce((low, ms) => Math.min(low, ms), Infinity);
  const arcMs = resolutionMs + 2 * spanMs * ppm * 1e-6 + 1e-3;
  if (stamps.length < FEWEST_STAMPS || arcMs > stepMs / 3) return [];
  const places = stamps.map(({ ms, reading }) => ({ place: ((ms % stepMs) + stepMs) % stepMs, reading }));
  const sorted = places.map(({ place }) => place).toSorted((a, b) => a - b);
  const round = [...sorted, ...sorted.map((place) => place + stepMs)];
  let [best, start, end] = [0, 0, 0];
  sorted.forEach((from, index) => {
    while (end < round.length && (round[end] ?? Infinity) <= from + arcMs) end += 1;
    if (end - index > best) [best, start] = [end - index, from];
  });
  const isOff = (place: number): boolean => (place - start + stepMs) % stepMs > arcMs;
  return run.filter((reading) => places.some((one) => one.reading === reading && isOff(one.place)));
}
