/** What parts that show several comparisons have in common: by list, by setting, or between bodies. */
import { z } from 'zod';
import { selectPairs, type PairQuery } from '../../register/comparisons/select-pairs.ts';
import type { SessionPair } from '../../register/comparisons/family.ts';
import type { Figure } from '../../register/register.ts';
import { comparedRows, type ComparedRows } from '../../views/compared-rows.ts';
import { COMMON } from './common.ts';
import type { Answering, Asking } from './definition.ts';
import { asWritten, checkValue, choice, type Known, type Unplaced } from './property.ts';
import { asked, stated } from './question.ts';

export const SEVERAL_PAIRS = {
  pairs: {
    means: 'pairs of sessions, the first less the second',
    accepts: '{[["a", "b"], ["c", "d"]]}',
    schema: z.array(z.tuple([z.string(), z.string()]).readonly()).readonly(),
    check: checkPairs,
  },
  setting: {
    means: 'pairs of sessions that differ in this setting only, by query',
    accepts: '"id of a setting"',
    schema: z.string(),
    check: checkSetting,
  },
  body: COMMON.body,
  rig: COMMON.rig,
  where: { ...COMMON.where, means: 'only where this was set; without setting, the bodies measured there are compared' },
  margin: COMMON.margin,
  caption: COMMON.caption,
} as const;

export interface SeveralPairs extends PairQuery {
  readonly margin?: string | undefined;
}

export function askedPairs({ margin, ...query }: SeveralPairs, { bench, families }: Asking): readonly SessionPair[] {
  return selectPairs(bench, families, query).map((pair) => asked(pair, margin));
}

export function whyNoPairs(props: SeveralPairs, answering: Answering): 'empty-comparison' | undefined {
  return askedPairs(props, answering).length === 0 ? 'empty-comparison' : undefined;
}

export function comparedPairs(props: SeveralPairs, answering: Answering): ComparedRows {
  const { site, family } = answering;
  const pairs = askedPairs(props, answering).map((pair) => stated(family, pair));
  if (pairs.length === 0) throw new Error(`no comparison matches ${JSON.stringify(props)}`);
  return comparedRows(site, family?.id ?? '', pairs);
}

/** The size of the family is said where it is more than one. */
export function figuresCompared({ rows, familySizes }: ComparedRows): readonly Figure[] {
  return [
    ...rows.flatMap(({ difference, ratio, verdict }) => [difference, ...(ratio === undefined ? [] : [ratio]), verdict]),
    ...familySizes.filter(({ value }) => value > 1),
  ];
}

function checkPairs(pairs: unknown, known: Known): readonly Unplaced[] {
  const arePairs = Array.isArray(pairs) && pairs.every((pair: unknown) => Array.isArray(pair) && pair.length === 2);
  if (!arePairs)
    return [
      {
        code: 'wrong-shape',
        found: asWritten(pairs),
        expected: 'pairs of sessions, such as {[["a", "b"], ["c", "d"]]}',
      },
    ];
  return (pairs as readonly (readonly [unknown, unknown])[]).flatMap(([a, b]): readonly Unplaced[] => {
    const wrong = [a, b].flatMap((id) => checkValue(COMMON.session, id, known));
    return wrong.length === 0 && a === b ? [{ code: 'same-session', found: String(b) }] : wrong;
  });
}

function checkSetting(setting: unknown, { settings }: Known): readonly Unplaced[] {
  const ids = settings.map(({ id }) => id);
  // faulty, which is reported there
  if (ids.length === 0) return [];
  return typeof setting === 'string' && ids.includes(setting)
    ? []
    : [{ code: 'unknown-setting', ...choice(asWritten(setting), ids) }];
}
