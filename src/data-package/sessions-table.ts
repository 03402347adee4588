import type { Bench, Session } from '../model/bench.ts';
import { tableOf, type Column, type Table } from './table.ts';

const COLUMNS: readonly Column<Session>[] = [
  {
    name: 'session',
    title: 'Session',
    description: 'Names the session, and its two raw files.',
    datatype: 'string',
    required: true,
    of: ({ id }) => id,
  },
  {
    name: 'body',
    title: 'Body',
    description: 'The body under test: data/bodies.',
    datatype: 'string',
    required: true,
    of: ({ body }) => body,
  },
  {
    name: 'firmware',
    title: 'Firmware',
    description: 'Of the body.',
    datatype: 'string',
    of: ({ firmware }) => firmware,
  },
  {
    name: 'rig',
    title: 'Rig',
    description: 'What was set up around it: data/rigs.',
    datatype: 'string',
    required: true,
    of: ({ rig }) => rig,
  },
  {
    name: 'display',
    title: 'Display',
    description: 'Where the picture came out: data/displays.',
    datatype: 'string',
    required: true,
    of: ({ display }) => display,
  },
  {
    name: 'links',
    title: 'Links',
    description: 'Between body and display, in the order of the signal: data/links.',
    datatype: 'string',
    of: ({ links }) => links.join(' '),
  },
  {
    name: 'method',
    title: 'Method',
    description: 'How readings were taken: two-timers, frame-count or instrument.',
    datatype: 'string',
    required: true,
    of: ({ method }) => method,
  },
  { name: 'date', title: 'Date', description: 'The day.', datatype: 'date', required: true, of: ({ date }) => date },
  {
    name: 'rate',
    title: 'Frame rate',
    description: 'Set on the body, per second, as an exact fraction.',
    datatype: 'string',
    required: true,
    of: ({ rate: { frames, seconds } }) => `${frames}/${seconds}`,
  },
  {
    name: 'room',
    title: 'Room',
    description: 'Temperature of the room, as written.',
    datatype: 'string',
    of: ({ room }) => room,
  },
  {
    name: 'warm_up',
    title: 'Warm-up',
    description: 'How long the body had been on, as written.',
    datatype: 'string',
    of: ({ warmUp }) => warmUp,
  },
  {
    name: 'cut_short',
    title: 'Cut short',
    description: 'Why it ended before it was complete.',
    datatype: 'string',
    of: ({ cutShort }) => cutShort,
  },
  {
    name: 'resolution_ms',
    title: 'Resolution',
    description: 'Step of the last digit that counts, in ms.',
    datatype: 'number',
    of: ({ resolutionMs }) => resolutionMs,
  },
  {
    name: 'front_file',
    title: 'Front matter',
    description: 'The raw file that says what was measured.',
    datatype: 'string',
    required: true,
    of: ({ file }) => file.path,
  },
  {
    name: 'readings_file',
    title: 'Readings file',
    description: 'The raw file with its readings.',
    datatype: 'string',
    required: true,
    of: ({ readingsFile }) => readingsFile.path,
  },
  {
    name: 'readings_sha256',
    title: 'Checksum',
    description: 'SHA-256 of the readings file.',
    datatype: 'string',
    required: true,
    of: ({ readingsFile }) => readingsFile.sha256,
  },
];

/** Every session, with what was set in columns of their own: `setting_audio_out`. */
export function sessionsTable({ sessions, settings }: Bench): Table {
  const set = settings.map(
    ({ id, label }): Column<Session> => ({
      name: `setting_${id.replaceAll('-', '_')}`,
      title: label,
      description: `What was set on the body: ${id} in data/settings.yaml.`,
      datatype: 'string',
      of: (session) => session.settings[id],
    }),
  );
  return tableOf(
    {
      file: 'sessions.csv',
      title: 'Sessions',
      description: 'One body in one condition on one rig on one day.',
      primaryKey: ['session'],
      references: [],
    },
    [...COLUMNS, ...set],
    sessions,
  );
}
