import { inputsOf } from '../../src/ledger/compare.ts';
import { statementsOf } from '../../src/ledger/statements.ts';
import { compileRegister } from '../../src/site/compile.ts';
import type { Register } from '../../src/register/register.ts';
import type { Bench } from '../../src/model/bench.ts';
import type { Ledger, LedgerEntry } from '../../src/model/ledger.ts';

/** The ledger as it stands after this bench was recorded, in memory. */
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
    entries,
  };
}
