/** A bench small enough to read: one rig, two bodies, sessions as a test needs them. Invented. */
import type { Bench, Reading, Session, SourceFile } from '../../src/model/bench.ts';
import { parseRate, rate } from '../../src/model/rate.ts';

const file = (path: string): SourceFile => ({ path, sha256: '0'.repeat(64), bytes: 1 });
const described = (folder: string, id: string, name: string) => ({
  id,
  name,
  invented: true,
  description: '',
  prose: [],
  file: file(`data/${folder}/${id}.md`),
});

export function reading(line: number, latencyMs: number, more: Partial<Reading> = {}): Reading {
  return { line, run: 1, latencyMs, sourceMs: line * 2137, shownMs: line * 2137 - latencyMs, cells: {}, ...more };
}

export function session(id: string, settings: Readonly<Record<string, string>>, more: Partial<Session> = {}): Session {
  return {
    id,
    body: 'alba-one',
    rig: 'attic',
    links: [],
    display: 'screen',
    method: 'two-timers',
    date: '2026-01-02',
    settings,
    rate: parseRate(settings['rate'] ?? '24') ?? rate(24),
    notes: '',
    prose: [],
    resolutionMs: 1,
    readings: [reading(2, 300), reading(3, 310), reading(4, 305)],
    file: file(`data/sessions/${id}.md`),
    readingsFile: file(`data/sessions/${id}.csv`),
    ...more,
  };
}

export function bench(sessions: readonly Session[], more: Partial<Bench> = {}): Bench {
  return {
    site: {
      title: 'Test',
      tagline: '',
      publisher: '',
      introduction: '',
      writeUpsRunCode: false,
      documentation: true,
      prose: [],
      file: file('content/site.md'),
    },
    settings: [
      {
        id: 'resolution',
        label: 'Resolution',
        kind: 'ordered',
        levels: [
          { id: 'hd', label: 'HD 1920 × 1080' },
          { id: 'uhd', label: 'UHD 3840 × 2160' },
        ],
      },
      {
        id: 'rate',
        label: 'Frame rate',
        kind: 'rate',
        levels: [
          { id: '24', label: '24' },
          { id: '25', label: '25' },
          { id: '59.94', label: '59.94' },
        ],
      },
      {
        id: 'audio-out',
        label: 'Embedded audio',
        kind: 'unordered',
        levels: [
          { id: 'off', label: 'Off' },
          { id: 'on', label: 'On' },
        ],
      },
    ],
    settingsFile: file('data/settings.yaml'),
    bodies: [
      { ...described('bodies', 'alba-one', 'Alba One'), maker: 'Alba', model: 'One' },
      { ...described('bodies', 'brae', 'Brae'), maker: 'Brae', model: 'B' },
    ],
    displays: [{ ...described('displays', 'screen', 'Screen'), refresh: rate(60), sync: 'input' }],
    links: [],
    rigs: [
      {
        ...described('rigs', 'attic', 'Attic'),
        sourceTimer: { name: 'Timer', refresh: rate(60) },
        links: [],
        display: 'screen',
      },
    ],
    sessions,
    displayPairs: [],
    planned: [],
    plannedPairs: [],
    methods: [],
    reports: [],
    ...more,
  };
}
