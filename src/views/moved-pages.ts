/** Addresses at which something stood that is called otherwise now, or was removed: each keeps a page that leads on. */
import { entriesOf, renamedIds } from '../ledger/history.ts';
import { bodyPath, methodPath, PATHS, reportPath, rigPath, sessionPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import { pagePathsOf } from '../register/site-paths.ts';
import { nameStatement } from './statement-name.ts';

export interface MovedPage {
  /** `/sessions/a/` */
  readonly from: string;
  readonly to: string;
  /** What it is called now. */
  readonly name: string;
  readonly was: string;
  /** It was removed: `to` leads to where readers are told why. */
  readonly isGone?: true;
}

const PATH_OF: Readonly<Record<string, (id: string) => string>> = {
  session: sessionPath,
  body: bodyPath,
  rig: rigPath,
  report: reportPath,
  method: methodPath,
};

/** An address that another page has taken since is none. */
export function movedPages(site: Published): readonly MovedPage[] {
  const { ledger } = site.bench;
  const there = new Set(pagePathsOf(site.bench));
  const went = new Map(
    entriesOf(ledger)
      .toReversed()
      .flatMap((entry) => entry.gone.map(({ id }) => [id, entry.id] as const)),
  );
  const former = new Map([...[...went.keys()].map((id) => [id, id] as const), ...renamedIds(ledger)]);
  return [...former].flatMap(([was, id]): readonly MovedPage[] => {
    const [kind = '', old = ''] = was.split('/');
    const pathOf = PATH_OF[kind];
    if (pathOf === undefined || there.has(pathOf(old))) return [];
    const [from, to, entry] = [pathOf(old), pathOf(id.slice(kind.length + 1)), went.get(id)];
    if (there.has(to)) return [{ from, to, name: nameStatement(id, site).name, was: old }];
    return entry === undefined
      ? []
      : [{ from, to: `${PATHS.corrections}#${entry}`, name: 'Corrections', was: old, isGone: true }];
  });
}
