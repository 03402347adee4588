/** Whether a part names sessions, a setting and a margin that can be compared. */
import type { Inventory } from '../ingest/inventory.ts';
import { nearest } from '../ingest/nearest.ts';
import { parseDurationMs } from '../ingest/quantities.ts';
import type { Problem } from '../model/problem.ts';

export type Unplaced = Pick<Problem, 'code' | 'found' | 'expected' | 'choices' | 'nearest'> & { readonly key: string };
type Value = (name: string) => unknown;

const OF_TWO = new Set(['Difference', 'Ratio', 'Verdict']);
const OF_SEVERAL = new Set(['DifferenceTable', 'DifferenceChart']);

/** The key of each problem is the property in which it stands. */
export function checkComparison(
  part: string,
  value: Value,
  { sessions, settings }: Pick<Inventory, 'sessions' | 'settings'>,
): readonly Unplaced[] {
  if (OF_TWO.has(part))
    return [...checkTwo('of', value('of'), 'than', value('than'), sessions), ...checkMargin(value('margin'))];
  if (!OF_SEVERAL.has(part)) return [];
  return [
    ...checkPairs(value('pairs'), sessions),
    ...checkSetting(
      value('setting'),
      settings.map(({ id }) => id),
    ),
    ...checkMargin(value('margin')),
  ];
}

export function checkTwo(
  keyA: string,
  a: unknown,
  keyB: string,
  b: unknown,
  sessions: readonly string[],
): readonly Unplaced[] {
  const unknown = [...checkSession(keyA, a, sessions), ...checkSession(keyB, b, sessions)];
  return unknown.length === 0 && a !== undefined && a === b
    ? [{ code: 'same-session', key: keyB, found: String(b) }]
    : unknown;
}

function checkPairs(pairs: unknown, sessions: readonly string[]): readonly Unplaced[] {
  if (pairs === undefined) return [];
  if (
    !Array.isArray(pairs) ||
    !pairs.every((pair): pair is readonly [unknown, unknown] => Array.isArray(pair) && pair.length === 2)
  ) {
    return [
      {
        code: 'wrong-shape',
        key: 'pairs',
        found: JSON.stringify(pairs),
        expected: 'pairs of sessions, such as {[["a", "b"], ["c", "d"]]}',
      },
    ];
  }
  return pairs.flatMap(([a, b]) => checkTwo('pairs', a, 'pairs', b, sessions));
}

function checkSession(key: string, id: unknown, sessions: readonly string[]): readonly Unplaced[] {
  if (id === undefined || (typeof id === 'string' && sessions.includes(id))) return [];
  const found = typeof id === 'string' ? id : JSON.stringify(id);
  return [{ code: 'unknown-session', key, found, choices: sessions, nearest: nearest(found, sessions) }];
}

function checkSetting(setting: unknown, choices: readonly string[]): readonly Unplaced[] {
  if (setting === undefined || (typeof setting === 'string' && choices.includes(setting))) return [];
  return [
    {
      code: 'unknown-setting',
      key: 'setting',
      found: String(setting),
      choices,
      nearest: nearest(String(setting), choices),
    },
  ];
}

export function checkMargin(margin: unknown): readonly Unplaced[] {
  if (margin === undefined) return [];
  const marginMs = typeof margin === 'string' ? parseDurationMs(margin) : undefined;
  if (marginMs === undefined)
    return [
      { code: 'bad-duration', key: 'margin', found: typeof margin === 'string' ? margin : JSON.stringify(margin) },
    ];
  return marginMs === 0 ? [{ code: 'zero-duration', key: 'margin', found: String(margin) }] : [];
}
