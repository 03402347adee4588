import type { Bench, Reading } from '../model/bench.ts';
import { tableOf, type Column, type Table } from './table.ts';

interface Row {
  readonly session: string;
  readonly reading: Reading;
}

const COLUMNS: readonly Column<Row>[] = [
  {
    name: 'session',
    title: 'Session',
    description: 'The session that it belongs to.',
    datatype: 'string',
    required: true,
    of: ({ session }) => session,
  },
  {
    name: 'line',
    title: 'Line',
    description: 'Line of its readings file.',
    datatype: 'integer',
    required: true,
    of: ({ reading }) => reading.line,
  },
  {
    name: 'run',
    title: 'Run',
    description: 'The clip that it was read from, counted from 1.',
    datatype: 'integer',
    required: true,
    of: ({ reading }) => reading.run,
  },
  {
    name: 'source_ms',
    title: 'Source time',
    description: 'What the source timer showed, in ms.',
    datatype: 'number',
    of: ({ reading }) => reading.sourceMs,
  },
  {
    name: 'shown_ms',
    title: 'Shown time',
    description: 'What the display showed of it, in ms.',
    datatype: 'number',
    of: ({ reading }) => reading.shownMs,
  },
  {
    name: 'frames',
    title: 'Frames',
    description: 'Observer frames from the flash to its picture.',
    datatype: 'integer',
    of: ({ reading }) => reading.frames,
  },
  {
    name: 'latency_ms',
    title: 'Latency',
    description: 'Of this reading, before any correction, in ms.',
    datatype: 'number',
    of: ({ reading }) => reading.latencyMs,
  },
  {
    name: 'counts',
    title: 'Counts',
    description: 'Whether it enters the figures.',
    datatype: 'boolean',
    required: true,
    of: ({ reading }) => reading.excluded === undefined,
  },
  {
    name: 'excluded_because',
    title: 'Excluded because',
    description: 'Why it does not count.',
    datatype: 'string',
    of: ({ reading }) => reading.excluded,
  },
  {
    name: 'note',
    title: 'Note',
    description: 'What its author noted.',
    datatype: 'string',
    of: ({ reading }) => reading.note,
  },
];

/** Every reading, those that do not count too, in the order taken. */
export function readingsTable({ sessions }: Bench): Table {
  return tableOf(
    {
      file: 'readings.csv',
      title: 'Readings',
      description: 'Every reading of every session, those that do not count too, with the reason.',
      primaryKey: ['session', 'line'],
      references: [{ column: 'session', file: 'sessions.csv', to: 'session' }],
    },
    COLUMNS,
    sessions.flatMap(({ id, readings }) => readings.map((reading) => ({ session: id, reading }))),
  );
}
