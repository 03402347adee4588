/** Whether the properties of a claim, or of a part that names the lowest of a selection, can be read. */
import type { Inventory } from '../../ingest/inventory.ts';
import { nearest } from '../../ingest/nearest.ts';
import type { Part } from '../../model/bench.ts';
import type { Problem } from '../../model/problem.ts';
import { checkMargin, checkTwo, type Unplaced } from '../check-comparison.ts';
import { QUANTITY_NAMES, RANK_ASSERTIONS, VERDICT_WORDS } from './assertions.ts';
import { parseQuantity } from './quantity.ts';

type Known = Pick<Inventory, 'sessions'> & { readonly figures: ReadonlySet<string>; isFigure(id: string): boolean };

/** Parts that mark words, which therefore must stand between their tags. */
const MARKING = new Set(['Claim', 'Quoted', 'Setting']);

export function checkWords({ name, words, holds = [] }: Part): readonly Pick<Problem, 'code' | 'found'>[] {
  if (!MARKING.has(name)) return [];
  if (words === undefined || words === '') return [{ code: 'no-words' }];
  const [first] = holds;
  return first === undefined ? [] : [{ code: 'nested-words', found: first }];
}

/** The key of each problem is the property in which it stands. */
export function checkClaimShape(value: (name: string) => unknown, known: Known): readonly Unplaced[] {
  return [
    ...checkSubject(value('of'), value('than'), known),
    ...QUANTITY_NAMES.flatMap((key): readonly Unplaced[] => {
      const written = value(key);
      return written === undefined || (typeof written === 'string' && parseQuantity(written) !== undefined)
        ? []
        : [{ code: 'bad-quantity', key, found: asWritten(written) }];
    }),
    ...RANK_ASSERTIONS.flatMap((key) => checkAmong(key, value(key), known)),
    ...checkVerdict(value('verdict')),
    ...checkMargin(value('margin')),
  ];
}

function checkSubject(of: unknown, than: unknown, { sessions, figures, isFigure }: Known): readonly Unplaced[] {
  if (than !== undefined) return checkTwo('of', of, 'than', than, sessions);
  if (of === undefined || (typeof of === 'string' && isFigure(of))) return [];
  return [{ code: 'unknown-figure', key: 'of', found: asWritten(of), nearest: nearest(asWritten(of), [...figures]) }];
}

function checkAmong(key: string, among: unknown, { figures, isFigure }: Known): readonly Unplaced[] {
  if (among === undefined) return [];
  if (Array.isArray(among)) {
    return among.flatMap((id: unknown): readonly Unplaced[] =>
      typeof id === 'string' && isFigure(id)
        ? []
        : [{ code: 'unknown-figure', key, found: asWritten(id), nearest: nearest(asWritten(id), [...figures]) }],
    );
  }
  const isQuery =
    typeof among === 'object' &&
    among !== null &&
    Object.keys(among).every((name) => ['body', 'rig', 'method', 'where'].includes(name));
  return isQuery ? [] : [{ code: 'bad-selection', key, found: asWritten(among) }];
}

function checkVerdict(verdict: unknown): readonly Unplaced[] {
  if (verdict === undefined || VERDICT_WORDS.some((word) => word === verdict)) return [];
  return [
    {
      code: 'bad-choice',
      key: 'verdict',
      found: asWritten(verdict),
      choices: VERDICT_WORDS,
      nearest: nearest(asWritten(verdict), VERDICT_WORDS),
    },
  ];
}

function asWritten(value: unknown): string {
  return typeof value === 'string' ? value : JSON.stringify(value);
}
