import { inputsOf, inputsOfState } from '../../src/ledger/compare.ts';
import { statementsOf } from '../../src/ledger/statements.ts';
import { compileRegister } from '../../src/site/compile.ts';
import type { Register } from '../../src/register/register.ts';
import type { Bench } from '../../src/model/bench.ts';
import { recordOf } from '../../src/ledger/record.ts';
import { isInputId, type Ledger, type LedgerEntry } from '../../src/model/ledger.ts';

/** What a bench says, as if it had been recorded so in the form of before: to be changed by a test as it likes. */
export function ledgerOf(
  bench: Bench,
  register: Register = compileRegister(bench),
  entries: readonly LedgerEntry[] = [],
): Ledger {
  return {
    path: 'content/ledger/figures.csv',
    ...inputsOf(bench, register),
    figures: statementsOf(bench, register).map(({ sources: _, ...statement }, index) => ({
      ...statement,
      line: index + 2,
    })),
    told: entries,
    chain: [],
  };
}

export interface Record {
  readonly bench: Bench;
  readonly date: string;
  readonly reason?: string;
}

/**
 * The ledger after each of these benches was recorded, one after the other: on top of another ledger, where one is
 * given.
 */
export function ledgerAfter(records: readonly Record[], onto?: Ledger): Ledger {
  const last = records.reduce<Ledger | undefined>((ledger, { bench, date, reason = `Record of ${date}` }) => {
    const register = compileRegister(bench);
    const inputs = inputsOf(bench, register);
    const record = recordOf(ledger, statementsOf(bench, register), inputs, { date, reason }, 'content/ledger/entries');
    if (record === undefined) throw new Error(`there is nothing to record on ${date}`);
    const rows = [...record.state.values()].filter(({ id }) => !isInputId(id)).sort((a, b) => (a.id < b.id ? -1 : 1));
    const head = record.entries.at(-1)?.says;
    return {
      path: 'content/ledger/figures.csv',
      figures: rows.map((row, index) => ({ ...row, line: index + 2 })),
      ...inputsOfState(record.state),
      ...(head === undefined ? {} : { head }),
      chain: [...(ledger?.chain ?? []), ...record.entries],
      told: ledger?.told ?? [],
    };
  }, onto);
  if (last === undefined) throw new Error('no record was given');
  return last;
}
