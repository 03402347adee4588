/**
 * The order of entries, by the digest that each carries of the one before; and where an entry was edited, removed or
 * forged.
 */
import type { ChainedEntry, Ledger } from '../model/ledger.ts';
import type { Problem } from '../model/problem.ts';
import { digestOfEntry, digestOfTold } from './digest.ts';

export interface OrderedChain {
  readonly chain: readonly ChainedEntry[];
  readonly faults: readonly Problem[];
}

/**
 * What the first entry of a chain carries: the digest of the entries from before entries were chained, where there are
 * any.
 */
export function rootOf({ told }: Pick<Ledger, 'told'>): string | undefined {
  return told.length === 0 ? undefined : digestOfTold(told);
}

/** From the first entry to the last; where the chain is broken, as far as it goes. */
export function orderChain(ledger: Ledger): OrderedChain {
  const { chain: entries, head, path, told } = ledger;
  const root = rootOf(ledger);
  const said = new Set(entries.map(({ says }) => says));
  const edited = entries.flatMap((entry): readonly Problem[] =>
    digestOfEntry(entry) === entry.says ? [] : [{ code: 'entry-edited', file: entry.path, expected: tableName(entry) }],
  );
  const lost = entries.flatMap(({ before, path: file }): readonly Problem[] =>
    before === root || (before !== undefined && said.has(before))
      ? []
      : [{ code: 'entry-lost', file, found: before === undefined ? 'none' : before.slice(0, 12) }],
  );
  const byBefore = Map.groupBy(entries, ({ before }) => before);
  const forks = [...byBefore].flatMap(([, [first, ...more]]) =>
    more.map(({ path: file }): Problem => ({ code: 'entry-fork', file, found: first?.id ?? '' })),
  );
  const chain = walk(byBefore, root);
  const days = [...told.map(({ date }) => date)].sort();
  const falls = chain.flatMap(({ date, path: file }, index): readonly Problem[] => {
    const before = index === 0 ? days.at(-1) : chain[index - 1]?.date;
    return before !== undefined && date < before
      ? [{ code: 'entry-dated', file, key: 'date', found: date, expected: before }]
      : [];
  });
  const last = chain.at(-1)?.says;
  const faults = [...edited, ...lost, ...forks, ...falls];
  const ends: readonly Problem[] =
    faults.length > 0 || head === last
      ? []
      : [{ code: 'entry-last', file: path.replace(/[^/]*$/, 'inputs.csv'), key: 'ledger', found: head ?? 'none' }];
  return { chain, faults: [...faults, ...ends] };
}

/** Of a fork the first branch. A ring, which no record writes, ends where it closes. */
function walk(
  byBefore: ReadonlyMap<string | undefined, readonly ChainedEntry[]>,
  root: string | undefined,
): readonly ChainedEntry[] {
  const chain: ChainedEntry[] = [];
  const seen = new Set<string>();
  let at = byBefore.get(root)?.[0];
  while (at !== undefined && !seen.has(at.says)) {
    chain.push(at);
    seen.add(at.says);
    at = byBefore.get(at.says)?.[0];
  }
  return chain;
}

function tableName({ id }: ChainedEntry): string {
  return `${id}.csv`;
}
