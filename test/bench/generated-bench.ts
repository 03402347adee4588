/** A bench of any size, written by a simulation with a seed: three invented bodies on two rigs, in 24 conditions. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Chain } from '../../src/analysis/chain.ts';
import { seededRandom } from '../../src/analysis/random.ts';
import { simulateTwoTimers, type Stamp } from '../../src/analysis/simulate.ts';
import { parseRate } from '../../src/model/rate.ts';

export interface BenchSize {
  readonly sessions: number;
  readonly writeUps: number;
}

const SEED = 20_260_701;
const RUNS = 3;
const READINGS_PER_RUN = 10;
export const CHARTS_PER_WRITE_UP = 3;
const RESOLUTION_MS = 1;

const BODIES = ['alba-one', 'brae-two', 'corrie-3'] as const;
const RIGS = { loft: { refresh: '60', sync: 'input' }, yard: { refresh: '120', sync: 'free' } } as const;
type RigId = keyof typeof RIGS;
const RATES = ['23.976', '25', '29.97', '50', '59.94', '119.88'] as const;
const CONDITIONS = RATES.flatMap((rate) =>
  (['hd', 'uhd'] as const).flatMap((resolution) =>
    (['off', 'on'] as const).map((audio) => ({ rate, resolution, audio })),
  ),
);

export interface GeneratedSession {
  readonly id: string;
  readonly body: string;
  readonly rig: RigId;
  readonly condition: (typeof CONDITIONS)[number];
  readonly runs: readonly (readonly Stamp[])[];
}

/** Sessions in a fixed order: every body in every condition on every rig, and then again. */
export function generateSessions(count: number): readonly GeneratedSession[] {
  return Array.from({ length: count }, (_, index) => {
    const body = index % BODIES.length;
    const rest = Math.floor(index / BODIES.length);
    const condition = CONDITIONS[rest % CONDITIONS.length]!;
    const rig: RigId = Math.floor(rest / CONDITIONS.length) % 2 === 0 ? 'loft' : 'yard';
    const random = seededRandom(SEED + index);
    const truth = {
      pipelineMs: 60 + 45 * body + (condition.resolution === 'uhd' ? 20 : 0) + (condition.audio === 'on' ? 35 : 0),
      clockPpm: { source: 12, body: -8, observer: 5 },
    };
    const sampling = { readings: READINGS_PER_RUN, spacingMs: 2000, startMs: 3000 };
    return {
      id: `s${String(index).padStart(4, '0')}`,
      body: BODIES[body]!,
      rig,
      condition,
      runs: Array.from({ length: RUNS }, () =>
        simulateTwoTimers(chainOf(rig, condition.rate), truth, sampling, RESOLUTION_MS, random),
      ),
    };
  });
}

/** Writes `data/` and `content/` of a folder anew. */
export function writeGeneratedBench(
  root: string,
  { sessions: count, writeUps }: BenchSize,
): readonly GeneratedSession[] {
  for (const folder of ['data', 'content']) rmSync(join(root, folder), { recursive: true, force: true });
  const write = (path: string, ...lines: readonly string[]): void => {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), `${lines.join('\n')}\n`);
  };
  const sessions = generateSessions(count);
  writeSurroundings(write);
  for (const session of sessions) {
    write(`data/sessions/${session.id}.md`, ...sessionLines(session));
    write(`data/sessions/${session.id}.csv`, ...readingLines(session));
  }
  for (let index = 0; index < writeUps; index += 1)
    write(`content/reports/${writeUpId(index)}.mdx`, ...writeUpLines(index, sessions));
  return sessions;
}

export function writeUpId(index: number): string {
  return `r${String(index).padStart(3, '0')}`;
}

export function chainOf(rig: RigId, rate: string): Chain {
  const { refresh, sync } = RIGS[rig];
  return {
    body: { rate: parseRate(rate)! },
    display: { refresh: parseRate('60')!, sync },
    source: { refresh: parseRate(refresh)!, clockTolerancePpm: 50 },
    observer: { rate: parseRate('240')!, exposureMs: 2, clockTolerancePpm: 50 },
  };
}

function writeSurroundings(write: (path: string, ...lines: readonly string[]) => void): void {
  write(
    'content/site.md',
    '---',
    'title: Generated bench',
    'tagline: Written by a simulation',
    'publisher: Nobody',
    '---',
    '',
    'Invented throughout.',
  );
  for (const method of ['two-timers', 'frame-count', 'instrument']) {
    write(
      `content/methods/${method}.mdx`,
      '---',
      `title: ${method}`,
      'summary: How it is taken.',
      'date: 2026-01-01',
      '---',
      '',
      'As the method says.',
    );
  }
  write(
    'data/settings.yaml',
    `- { name: rate, label: Frame rate, kind: rate, levels: [${RATES.join(', ')}] }`,
    '- { name: resolution, label: Resolution, kind: ordered, levels: [{ name: hd, label: HD }, { name: uhd, label: UHD }] }',
    '- { name: audio-out, label: Embedded audio, kind: unordered, levels: [{ name: off, label: Off }, { name: on, label: On }] }',
  );
  for (const body of BODIES)
    write(`data/bodies/${body}.md`, '---', `name: ${body}`, 'maker: Nobody', `model: ${body}`, 'invented: true', '---');
  for (const [rig, { refresh, sync }] of Object.entries(RIGS)) {
    write(
      `data/displays/${rig}-screen.md`,
      '---',
      `name: Screen of the ${rig}`,
      'refresh: 60',
      `sync: ${sync}`,
      'invented: true',
      '---',
    );
    write(
      `data/rigs/${rig}.md`,
      '---',
      `name: The ${rig}`,
      `source-timer: { name: Timer, refresh: ${refresh}, clock-tolerance: 50 ppm }`,
      'observer: { name: Second camera, rate: 240, exposure: 2 ms, clock-tolerance: 50 ppm }',
      `display: ${rig}-screen`,
      'invented: true',
      '---',
    );
  }
}

function sessionLines({ id, body, rig, condition: { rate, resolution, audio } }: GeneratedSession): readonly string[] {
  return [
    '---',
    `body: ${body}`,
    `rig: ${rig}`,
    'method: two-timers',
    'date: 2026-02-03',
    `settings: { rate: ${rate}, resolution: ${resolution}, audio-out: ${audio} }`,
    '---',
    '',
    `Session ${id}.`,
  ];
}

function readingLines({ runs }: GeneratedSession): readonly string[] {
  return [
    'run,source,shown,exclude,note',
    ...runs.flatMap((stamps, index) => stamps.map((stamp) => readingLine(index + 1, stamp))),
  ];
}

export function readingLine(run: number, { sourceMs, shownMs }: Stamp): string {
  return [run, ...[sourceMs, shownMs].map((ms) => (Math.round(ms) / 1000).toFixed(3)), '', ''].join(',');
}

/** Prose with a figure in every sentence, and a chart of ten sessions under each part. */
function writeUpLines(index: number, sessions: readonly GeneratedSession[]): readonly string[] {
  const pick = (offset: number): string => sessions[(index * 5 + offset) % sessions.length]!.id;
  const part = (chart: number): readonly string[] => {
    const ids = [...new Set(Array.from({ length: 10 }, (_, row) => pick(chart * 10 + row)))];
    return [
      `## Part ${chart + 1}`,
      '',
      ...ids
        .slice(0, 5)
        .map(
          (id) =>
            `Session ${id} took <Figure id="total/${id}" />, which is <Figure id="frames/${id}" />, from <Figure id="readings/${id}" /> readings.`,
        ),
      '',
      `<FigureChart ids={${JSON.stringify(ids.map((id) => `total/${id}`))}} caption="Chart ${chart + 1} of write-up ${index}" />`,
      '',
    ];
  };
  return [
    '---',
    `title: Write-up ${index}`,
    `summary: What ${CHARTS_PER_WRITE_UP} charts show.`,
    'date: 2026-03-04',
    '---',
    '',
    ...Array.from({ length: CHARTS_PER_WRITE_UP }, (_, chart) => part(chart)).flat(),
  ];
}
