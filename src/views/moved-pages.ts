/** Addresses at which something stood that is called otherwise now: each keeps a page that leads on. */
import { renamedIds } from '../ledger/history.ts';
import { bodyPath, methodPath, reportPath, rigPath, sessionPath } from '../register/paths.ts';
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
  const there = new Set(pagePathsOf(site.bench));
  return [...renamedIds(site.bench.ledger)].flatMap(([was, id]): readonly MovedPage[] => {
    const [kind = '', old = ''] = was.split('/');
    const pathOf = PATH_OF[kind];
    if (pathOf === undefined) return [];
    const [from, to] = [pathOf(old), pathOf(id.slice(kind.length + 1))];
    return there.has(from) || !there.has(to) ? [] : [{ from, to, name: nameStatement(id, site).name, was: old }];
  });
}
