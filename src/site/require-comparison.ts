/** What a part of a write-up compares, or an error that says why it cannot. */
import { lookup } from '../register/lookup.ts';
import { PATHS } from '../register/paths.ts';
import { loadSite } from 'lagfolio/site';
import type { Published } from '../register/published.ts';
import { withMargin, writeUpFamilyId } from '../write-ups/asked-families.ts';
import { bodyFamilies } from '../register/comparisons/body-families.ts';
import { comparedRows, type ComparedRow, type ComparedRows } from '../views/compared-rows.ts';
import type { SessionPair } from '../register/comparisons/family.ts';
import { selectPairs, type PairQuery } from '../register/comparisons/select-pairs.ts';
import { settingFamilies } from '../register/comparisons/setting-families.ts';

export interface Asked {
  /** What counts as the same: `8 ms`. */
  readonly margin?: string | undefined;
}

export interface AskedPair extends Asked {
  readonly of: string;
  readonly than: string;
}

/** One comparison that the write-up at this site path asks for. */
export async function requireComparison(path: string, { of, than, margin }: AskedPair): Promise<ComparedRow> {
  const site = await loadSite();
  const find = lookup(site.bench);
  const {
    rows: [row],
  } = inFamily(site, path, [withMargin({ a: find.session(of).id, b: find.session(than).id }, margin)]);
  if (row === undefined) throw new Error(`nothing compares '${of}' and '${than}'`);
  return row;
}

export async function requireComparisons(path: string, query: PairQuery & Asked): Promise<ComparedRows> {
  const site = await loadSite();
  const families = [...settingFamilies(site.bench), ...bodyFamilies(site.bench)];
  const pairs = selectPairs(site.bench, families, query).map((pair) => withMargin(pair, query.margin));
  if (pairs.length === 0) throw new Error(`no comparison matches ${JSON.stringify(query)}`);
  return inFamily(site, path, pairs);
}

/** A pair that is asked with a margin elsewhere in the write-up was compared with that margin. */
function inFamily(site: Published, path: string, pairs: readonly SessionPair[]): ComparedRows {
  const [folder, id = ''] = path.split('/').filter(Boolean);
  const family = writeUpFamilyId(`/${folder ?? ''}/` === PATHS.method ? 'method' : 'reports', id);
  return comparedRows(
    site,
    family,
    pairs.map((pair) => statedMargin(site, family, pair)),
  );
}

function statedMargin({ register }: Published, family: string, pair: SessionPair): SessionPair {
  if (pair.marginMs !== undefined) return pair;
  const start = `verdict/${family}/${pair.a}/${pair.b}`;
  const ids = register.figures.flatMap(({ id }) => (id === start || id.startsWith(`${start}/within-`) ? [id] : []));
  const [, stated] = /\/within-([\d.]+)-ms$/.exec(ids[0] ?? '') ?? [];
  return stated === undefined || ids.includes(start) ? pair : { ...pair, marginMs: Number(stated) };
}
