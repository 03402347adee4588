/** A planned session as the two files that an author would have written: front matter with notes, and readings. */
import { totalFromPipelineMs } from '../../src/analysis/chain.ts';
import { seededRandom, type Random } from '../../src/analysis/random.ts';
import { simulateFrameCounts, simulateTwoTimers, type Stamp } from '../../src/analysis/simulate.ts';
import { intervalMs } from '../../src/model/rate.ts';
import type { Misread, Place, PlannedRun, PlannedSession, Spoiled } from './plan.ts';
import { chainOf, RIGS, rowShiftMs } from './rigs.ts';
import { seedOf } from './seed.ts';
import { BODIES, CLOCKS_PPM, trueReadingTotalMs } from './truth.ts';

/** Step of the timers' last digit. */
export const RESOLUTION_MS = 1;
/** Half-width of what the light sensors' thresholds add; the recorder writes tenths. */
const SENSOR_NOISE_MS = 0.5;

const HEADERS = { 'two-timers': 'source,shown', 'frame-count': 'frames', instrument: 'latency' } as const;

/** `data/sessions/<id>.csv` */
export function readingsText(session: PlannedSession): string {
  const rows = session.runs.flatMap((run, runIndex) =>
    readRun(session, run, runIndex).map((cells, readingIndex) => {
      const isHere = (one: Place): boolean => one.run === runIndex + 1 && one.reading === readingIndex + 1;
      const spoiled = session.spoiled?.find(isHere);
      const { exclude = '', note = '' } = spoiled ?? {};
      const wrong = spoiled ?? [session.misread].find((one) => one && isHere(one));
      return [String(runIndex + 1), ...(wrong ? misread(cells, wrong) : cells), exclude, note].map(quoted).join(',');
    }),
  );
  return [`run,${HEADERS[session.method]},exclude,note`, ...rows, ''].join('\n');
}

/** `data/sessions/<id>.md` */
export function frontMatterText(session: PlannedSession): string {
  const settings = Object.entries(session.settings).map(([key, value]) => `  ${key}: ${value}`);
  return [
    '---',
    `body: ${session.body}`,
    `firmware: "${session.firmware}"`,
    `rig: ${session.rig}`,
    ...(session.links ? [`links: [${session.links.join(', ')}]`] : []),
    `method: ${session.method}`,
    `date: ${session.date}`,
    'settings:',
    ...settings,
    `room: ${session.room}`,
    `warm-up: ${session.warmUp}`,
    ...(session.cutShort ? [`cut-short: ${session.cutShort}`] : []),
    '---',
    '',
    session.notes,
    '',
  ].join('\n');
}

/** One run, each reading as the cells between `run` and `exclude`. */
function readRun(session: PlannedSession, run: PlannedRun, runIndex: number): string[][] {
  const chain = chainOf(session);
  // What a frame waits on the mean: half its interval on the display, and half a refresh where that free-runs.
  const meanWaitMs = totalFromPipelineMs(0, chain);
  const sampling = { readings: run.readings, spacingMs: run.spacingS * 1000, startMs: (run.startS ?? 0) * 1000 };
  const seed = seedOf(session.id, runIndex);
  const truths = Array.from({ length: run.readings }, (_, i) => ({
    pipelineMs: trueReadingTotalMs(session, runIndex, i) - meanWaitMs,
    clockPpm: CLOCKS_PPM,
    jitterMs: BODIES[session.body].jitterMs,
  }));

  // A delay that changes along a run: the same run is played once per reading, from the same seed,
  // with the delay of that moment, and gives that one reading.
  switch (session.method) {
    case 'two-timers':
      return truths.map((truth, i) =>
        stampCells(session, simulateTwoTimers(chain, truth, sampling, RESOLUTION_MS, seededRandom(seed))[i]!),
      );
    case 'frame-count':
      return truths.map((truth, i) => [String(simulateFrameCounts(chain, truth, sampling, seededRandom(seed))[i]!)]);
    case 'instrument': {
      const random = seededRandom(seed);
      return truths.map(({ pipelineMs, jitterMs }) => [
        sensorMs(session, pipelineMs + random.between(-jitterMs, jitterMs), random).toFixed(1),
      ]);
    }
  }
}

/** Flash to first light: the flash falls anywhere within a frame of the body, which ends its capture later. */
function sensorMs(session: PlannedSession, pipelineMs: number, random: Random): number {
  const untilCapturedMs = random.between(0, intervalMs(chainOf(session).body.rate));
  return untilCapturedMs + pipelineMs + rowShiftMs(session) + random.between(-SENSOR_NOISE_MS, SENSOR_NOISE_MS);
}

/** The phone shows minutes, seconds and thousandths; the tablet seconds and thousandths, and wraps. */
function stampCells({ rig }: PlannedSession, { sourceMs, shownMs }: Stamp): string[] {
  const { wrapsAfterMs } = RIGS[rig];
  return [sourceMs, shownMs].map((valueMs) => {
    if (valueMs < 0) throw new RangeError(`${rig}: a timer does not show ${valueMs} ms; start the run later`);
    const whole = Math.round(wrapsAfterMs ? valueMs % wrapsAfterMs : valueMs);
    const minutes = wrapsAfterMs ? '' : `${String(Math.floor(whole / 60_000)).padStart(2, '0')}:`;
    const seconds = (wrapsAfterMs ? whole : whole % 60_000) / 1000;
    return minutes + seconds.toFixed(3).padStart(6, '0');
  });
}

function misread(cells: readonly string[], { shownError }: Spoiled | Misread): string[] {
  const last = cells.at(-1)!;
  if (shownError === 'unreadable') return [...cells.slice(0, -1), ''];
  const [clock = '', seconds = ''] = last.includes(':') ? last.split(':') : ['', last];
  const wrong = (Number(seconds) + shownError / 1000).toFixed(3).padStart(6, '0');
  return [...cells.slice(0, -1), clock ? `${clock}:${wrong}` : wrong];
}

/** RFC 4180: quoted only where it must be. */
function quoted(cell: string): string {
  return /[",\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
