import type { Bench } from '../model/bench.ts';
import type { Cause, Inputs, Move, Recorded, Withdrawal } from '../model/ledger.ts';
import { publishedFiles } from '../register/published-files.ts';
import type { Register } from '../register/register.ts';
import { causeFinder } from './causes.ts';
import { statementsOf, type Statement } from './statements.ts';

interface Explained {
  /** Of `content/ledger/figures.csv`. */
  readonly line: number;
  /** At least one. */
  readonly causes: readonly Cause[];
}

/** What is published now against what was recorded. */
export interface Changes {
  readonly moved: readonly (Move & Explained)[];
  readonly gone: readonly (Withdrawal & Explained)[];
  /** Ids of what is new. */
  readonly added: readonly string[];
  readonly unchanged: number;
}

/** Compares a bench and its register with the ledger; where there is none, everything is new. Pure. */
export function compareWithLedger(bench: Bench, register: Register): Changes {
  const statements = statementsOf(bench, register);
  const { ledger } = bench;
  if (ledger === undefined) return { moved: [], gone: [], added: statements.map(({ id }) => id), unchanged: 0 };
  const causes = causeFinder(ledger, inputsOf(bench, register));
  const recorded = new Map(ledger.figures.map((figure) => [figure.id, figure]));
  const published = new Set(statements.map(({ id }) => id));
  const moved = statements.flatMap((now) => {
    const before = recorded.get(now.id);
    return before === undefined || isSame(before, now)
      ? []
      : [{ ...describeMove(before, now), line: before.line, causes: causes.ofMoved(now, before) }];
  });
  const gone = ledger.figures
    .filter(({ id }) => !published.has(id))
    .map((before) => ({ id: before.id, from: before.text, line: before.line, causes: causes.ofGone(before) }));
  const added = statements.filter(({ id }) => !recorded.has(id)).map(({ id }) => id);
  return { moved, gone, added, unchanged: statements.length - moved.length - added.length };
}

export function inputsOf(bench: Bench, { analysis }: Pick<Register, 'analysis'>): Inputs {
  return { analysis, checksums: Object.fromEntries(publishedFiles(bench).map(({ path, sha256 }) => [path, sha256])) };
}

/** Whether nothing moved, went or came. */
export function isUnchanged({ moved, gone, added }: Changes): boolean {
  return moved.length + gone.length + added.length === 0;
}

function isSame(before: Recorded, now: Statement): boolean {
  return before.text === now.text && before.value === now.value && before.low === now.low && before.high === now.high;
}

/** In the published words; where these are the same, with the digits that they do not show. */
function describeMove(before: Recorded, now: Statement): Move {
  const { id } = before;
  if (before.text !== now.text) return { id, from: before.text, to: now.text };
  return { id, from: describeDigits(before), to: describeDigits(now) };
}

function describeDigits({ text, value, low, high }: Recorded | Statement): string {
  return `${text} (${value}${low === undefined && high === undefined ? '' : `, interval ${low} to ${high}`})`;
}
