/**
 * Displays of the demonstration read against each other: what the invented team wrote down, and what is true. Readings
 * come from the event-by-event simulation of the coverage bench.
 */
import { simulatePair, type PairWorld } from '../coverage/side-by-side.ts';
import { worldRandom } from '../coverage/world.ts';
import { DISPLAYS_MS } from './truth.ts';
import { seedOf } from './seed.ts';

/** What the tablet’s own screen takes. */
export const TABLET_MS = 6;
/** By how much later the tablet sends the mirrored picture than it draws its own. */
const MIRRORED_LATER_MS = 5;
const REFRESH_MS = 1000 / 60;

/** The display in the mean, its own wait for a refresh included. */
const PIT_MS = DISPLAYS_MS.pit + REFRESH_MS / 2;

interface DemonstrationPair {
  readonly id: string;
  readonly front: readonly string[];
  readonly notes: string;
  readonly world: PairWorld;
  /** Display less what it is read against, in mid-screen. */
  readonly differenceMs: number;
  readonly excluded?: { readonly row: number; readonly reason: string; readonly note: string };
}

const PIT = { delayMs: DISPLAYS_MS.pit, freeHz: 60 } as const;
const OBSERVER = { hz: 50, exposureMs: 1 } as const;
const COMMON = { pictureHz: 60, resolutionMs: 1, observer: OBSERVER, clockPpm: 30 } as const;

const observerLines = [
  'observer:',
  '  name: Compact camera on a tripod',
  '  rate: 50',
  '  exposure: 1/1000 s',
  '  readout: 10 ms',
  '  source-row: 0.5',
  '  display-row: 0.5',
  '  clock-tolerance: 50 ppm',
  'digits-row: 0.5',
  'against-digits-row: 0.5',
];

export const DISPLAY_PAIRS: readonly DemonstrationPair[] = [
  {
    id: 'pit-beside-workshop',
    front: [
      'method: side-by-side',
      'date: 2026-04-15',
      'display: pit-monitor',
      'against: bench-panel',
      'source-timer:',
      '  name: Stopwatch page on a laptop',
      '  refresh: 60',
      '  clock-tolerance: 50 ppm',
      'outputs: splitter',
      ...observerLines,
      'room: 21.0 °C',
    ],
    notes:
      'The pit monitor was carried up to the workshop for an afternoon and stood beside the panel whose delay has been measured. The splitter was unplugged between clips.',
    world: { ...COMMON, source: { delayMs: DISPLAYS_MS.workshop }, shown: PIT },
    differenceMs: PIT_MS - DISPLAYS_MS.workshop,
    excluded: { row: 6, reason: 'digits overlap', note: 'the pit monitor was between two pictures' },
  },
  {
    id: 'pit-mirrors-tablet',
    front: [
      'method: mirrored-screen',
      'date: 2026-04-16',
      'display: pit-monitor',
      'against: tablet-screen',
      'source-timer:',
      '  name: Stopwatch page on a tablet',
      '  refresh: 60',
      '  clock-tolerance: 50 ppm',
      'outputs: unknown',
      ...observerLines,
      'room: 20.5 °C',
    ],
    notes: 'Back in the pit, with the tablet mirrored by cable: a check that needs no other display.',
    world: {
      ...COMMON,
      source: { delayMs: TABLET_MS },
      shown: { ...PIT, delayMs: DISPLAYS_MS.pit + MIRRORED_LATER_MS },
    },
    differenceMs: PIT_MS - TABLET_MS,
  },
];

export function pairFront({ front, notes }: DemonstrationPair): string {
  return ['---', ...front, '---', '', notes, ''].join('\n');
}

export function pairReadings({ id, world, excluded }: DemonstrationPair): string {
  const { runs } = simulatePair(world, 4, 4, 2300, worldRandom(seedOf(id, 0)));
  const rows = runs.flatMap(({ sourceMs, latenciesMs }, run) =>
    sourceMs.map((source, i) => [String(run + 1), clockText(source), clockText(source - latenciesMs[i]!)]),
  );
  const lines = rows.map((cells, index) =>
    excluded?.row === index + 1
      ? [...cells, `"${excluded.reason}"`, `"${excluded.note}"`].join(',')
      : `${cells.join(',')},,`,
  );
  return ['run,source,shown,exclude,note', ...lines, ''].join('\n');
}

function clockText(ms: number): string {
  const whole = Math.round(ms);
  return `${String(Math.floor(whole / 60_000)).padStart(2, '0')}:${((whole % 60_000) / 1000).toFixed(3).padStart(6, '0')}`;
}
