/** What only shows when sessions are set side by side: copies, settings that one forgot, versions spelt in two ways. */
import type { Bench, Session, Setting } from '../../../model/bench.ts';
import type { Finding } from '../../register.ts';
import { oddRestarts } from './restarts.ts';
import { statedLatencies } from './stated-latency.ts';

type Found = Omit<Finding, 'where'> & { readonly session: string };

const DAY_MS = 86_400_000;
/** A bench that rests for longer than this before or after one session has more likely a mistyped year. */
const LONGEST_REST_DAYS = 400;
/** Rows that two sessions may have in common by chance. */
const COMMON_ROWS = 3;

/** Every finding between files, in the order of the rules. */
export function betweenSessions(bench: Bench): readonly Finding[] {
  const ofSessions = [...copies(bench), ...notStated(bench), ...firmwares(bench), ...dates(bench)];
  return [
    ...ofSessions.map(({ session, ...found }) => ({ ...found, where: { session } })),
    ...statedLatencies(bench),
    ...oddRestarts(bench),
  ];
}

/** The same pairs of stamps cannot come from two films. */
function copies({ sessions }: Bench): readonly Found[] {
  const first = new Map<string, Session>();
  return sessions.flatMap((session) => {
    const common = new Map<Session, number>();
    const keys = new Set(rowKeys(session));
    for (const key of keys) {
      const earlier = first.get(key);
      if (earlier === undefined) first.set(key, session);
      else common.set(earlier, (common.get(earlier) ?? 0) + 1);
    }
    return [...common].flatMap(([earlier, rows]): readonly Found[] =>
      rows < Math.min(COMMON_ROWS, keys.size)
        ? []
        : [
            {
              rule: 'copied-readings',
              severity: 'warning',
              session: session.id,
              message: `Its readings are those of ${earlier.readingsFile.path} too: ${session.method === 'two-timers' ? `${rows} rows are the same` : 'all are the same, in the same order'}.`,
              hint: 'Two sessions never give the same readings: put the file that belongs here in its place, or remove the session.',
            },
          ],
    );
  });
}

/** Stamps by row; counts and sensor readings repeat by chance, so there the whole file is one key. */
function rowKeys({ method, readings }: Session): readonly string[] {
  if (method === 'two-timers')
    return readings.flatMap(({ sourceMs, shownMs }) =>
      sourceMs === undefined || shownMs === undefined ? [] : [`${sourceMs} ${shownMs}`],
    );
  return [`${method} ${readings.map(({ run, latencyMs }) => `${run} ${latencyMs ?? ''}`).join()}`];
}

/** A setting that a session leaves out takes it out of every comparison that knows that setting. */
function notStated({ settings, sessions }: Bench): readonly Found[] {
  return sessions.flatMap((session) => {
    const missing = settings.filter(({ id }) => session.settings[id] === undefined);
    if (missing.length === 0) return [];
    return [
      {
        rule: 'setting-not-stated',
        severity: 'caution' as const,
        session: session.id,
        message: `${session.file.path} does not state ${missing.map(({ label }) => label).join(', ')}${others(sessions, missing)}, so it counts as a condition of its own and takes no part in what is said of that setting.`,
        hint: 'State it under settings if it is known.',
      },
    ];
  });
}

/** How many others do: that one of many does not is most likely forgotten. */
function others(sessions: readonly Session[], missing: readonly Setting[]): string {
  const stating = sessions.filter(({ settings }) => missing.every(({ id }) => settings[id] !== undefined)).length;
  return stating === 0 ? '' : `, as ${stating} of ${sessions.length} sessions do`;
}

/** `1.4` beside `1.40`, `v1.40`, `1.40 `: one version written in two ways is published as two. */
function firmwares({ sessions }: Bench): readonly Found[] {
  const spellings = new Map<string, Session>();
  return sessions.flatMap((session) => {
    if (session.firmware === undefined) return [];
    const key = `${session.body} ${plain(session.firmware)}`;
    const first = spellings.get(key) ?? session;
    spellings.set(key, first);
    if (first.firmware === session.firmware) return [];
    return [
      {
        rule: 'firmware-spelling',
        severity: 'warning' as const,
        session: session.id,
        message: `Firmware ${session.firmware} here, and ${first.firmware} in ${first.file.path}: they are published as two versions.`,
        hint: 'If it is one version, write it in one way.',
      },
    ];
  });
}

function plain(firmware: string): string {
  const [version = firmware] = /\d+(?:\.\d+)*/.exec(firmware) ?? [];
  return version
    .split('.')
    .map((part) => part.replace(/^0+(?=\d)/, ''))
    .join('.')
    .replace(/(?<=\.\d+?)0+$/, '');
}

function dates({ sessions }: Bench): readonly Found[] {
  const days = sessions.map(({ date }) => Date.parse(date) / DAY_MS);
  return sessions.flatMap((session, index) => {
    const own = days[index] ?? 0;
    const nearest = Math.min(...days.flatMap((day, other) => (other === index ? [] : [Math.abs(day - own)])));
    if (!Number.isFinite(nearest) || nearest <= LONGEST_REST_DAYS) return [];
    return [
      {
        rule: 'date-apart',
        severity: 'caution' as const,
        session: session.id,
        message: `Its date, ${session.date}, is ${Math.round(nearest)} days from that of any other session.`,
        hint: 'Check the year.',
      },
    ];
  });
}
