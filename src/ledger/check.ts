import type { Bench } from '../model/bench.ts';
import type { Problem } from '../model/problem.ts';
import type { Changes } from './compare.ts';

/** What a strict build refuses: a ledger that does not hold together, and what moved or went since the last record. */
export function checkLedger({ ledger, site }: Bench, { moved, gone, renames, faults }: Changes): readonly Problem[] {
  if (ledger === undefined)
    return [{ code: 'no-ledger', file: site.file.path.replace(/[^/]*$/, 'ledger/figures.csv') }];
  const file = ledger.path;
  return [
    ...faults,
    ...renames.map(({ from, to }): Problem => ({ code: 'renamed-record', file, key: from, expected: to })),
    ...moved.map(
      ({ id, from, to, line, causes }): Problem => ({
        code: 'moved-figure',
        file,
        ...(line === undefined ? {} : { line }),
        key: id,
        found: from,
        expected: to,
        causes,
      }),
    ),
    ...gone.map(
      ({ id, from, line, causes }): Problem => ({
        code: 'gone-figure',
        file,
        ...(line === undefined ? {} : { line }),
        key: id,
        found: from,
        causes,
      }),
    ),
  ];
}
