/** Properties that several parts have, and mean the same by. */
import { z } from 'zod';
import { parseDurationMs } from '../../ingest/quantities.ts';
import { KINDS } from '../../register/kinds.ts';
import { RANKABLE } from '../../register/comparisons/ranking.ts';
import { asWritten, checkChoice, checkFigure, choice, type Known, type Property, type Unplaced } from './property.ts';

const text = z.string();
/** Level by setting. */
export const levels: z.ZodType<Readonly<Record<string, string>>> = z.record(z.string(), z.coerce.string());

export const COMMON = {
  caption: {
    means: 'what it shows, in a sentence; also its name for screen readers',
    accepts: '"text"',
    isProse: true,
    schema: text,
  },
  title: { means: 'another caption than the computed one', accepts: '"text"', isProse: true, schema: text },
  ids: {
    means: 'figures, in the order in which they are to stand',
    accepts: '{["total/a", "total/b"]}',
    schema: z.array(text).readonly(),
    check: (found, known) => (Array.isArray(found) ? found : [found]).flatMap((id) => checkFigure(id, known)),
  },
  kind: {
    means: 'figures of this kind, by query: sessions that match join by themselves',
    accepts: '"total", "frames" or another kind of a session’s figures',
    schema: text,
    check: checkChoice('bad-choice', () => Object.keys(KINDS)),
  },
  ranked: {
    means: 'figures of this kind, by query',
    accepts: '"total" or "frames"',
    schema: text,
    check: checkChoice('bad-choice', () => [...RANKABLE]),
  },
  body: {
    means: 'only of this body',
    accepts: '"id of a body"',
    schema: text,
    check: checkChoice('unknown-body', ({ bodies }) => bodies),
  },
  rig: {
    means: 'only on this rig',
    accepts: '"id of a rig"',
    schema: text,
    check: checkChoice('unknown-rig', ({ rigs }) => rigs),
  },
  method: {
    means: 'only read this way',
    accepts: '"two-timers", "frame-count" or "instrument"',
    schema: text,
    check: checkChoice('unknown-method', ({ methods }) => methods),
  },
  session: {
    means: 'which session',
    accepts: '"id of a session"',
    schema: text,
    check: checkChoice('unknown-session', ({ sessions }) => sessions),
  },
  where: {
    means: 'only where this was set',
    accepts: '{{ setting: "level" }}',
    schema: levels,
    check: checkWhere,
  },
  margin: {
    means: 'what counts as the same; half a frame of the faster rate where it is left out',
    accepts: '"8 ms", "1/120 s"',
    schema: text,
    check: checkMargin,
  },
} as const satisfies Record<string, Property>;

function checkWhere(where: unknown, { settings }: Known): readonly Unplaced[] {
  if (typeof where !== 'object' || where === null || Array.isArray(where))
    return [
      {
        code: 'wrong-shape',
        found: asWritten(where),
        expected: 'settings and levels, such as {{ output: "uhd" }}',
      },
    ];
  // faulty, which is reported there
  if (settings.length === 0) return [];
  const ids = settings.map(({ id }) => id);
  return Object.entries(where).flatMap(([name, level]): readonly Unplaced[] => {
    const known = settings.find(({ id }) => id === name)?.levels.map(({ id }) => id);
    if (known === undefined) return [{ code: 'unknown-setting', ...choice(name, ids) }];
    return known.includes(String(level)) ? [] : [{ code: 'unknown-level', ...choice(String(level), known) }];
  });
}

function checkMargin(margin: unknown): readonly Unplaced[] {
  const marginMs = typeof margin === 'string' ? parseDurationMs(margin) : undefined;
  if (marginMs === undefined) return [{ code: 'bad-duration', found: asWritten(margin) }];
  return marginMs === 0 ? [{ code: 'zero-duration', found: asWritten(margin) }] : [];
}
