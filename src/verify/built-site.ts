import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { lazy } from '../model/once.ts';
import { pageOfFile } from '../register/paths.ts';
import { attributeOf, elementsOf, parsePage, type Element, type Node } from './html.ts';

export interface Page {
  /** Site path: `/sessions/a/`. */
  readonly path: string;
  readonly html: string;
  readonly root: Node;
  readonly elements: readonly Element[];
  /** Elements by id. */
  readonly byId: ReadonlyMap<string, Element>;
}

/** A built site: its files, and its pages, each parsed when it is first asked for. */
export interface BuiltSite {
  /** Paths from the site's root, sorted: `sessions/a/index.html`. */
  readonly files: readonly string[];
  readonly pages: readonly Page[];
  bytes(path: string): Buffer;
  page(path: string): Page;
  /** Undefined where there is none. */
  find(path: string): Page | undefined;
}

export function readBuiltSite(dist: string): BuiltSite {
  const files = readdirSync(dist, { recursive: true, encoding: 'utf8' })
    .filter((path) => statSync(join(dist, path)).isFile())
    .map((path) => path.split(sep).join('/'))
    .sort();
  const bytes = (path: string): Buffer => readFileSync(join(dist, path));
  const pages = files
    .filter((path) => path.endsWith('.html'))
    .map((path): Page => {
      const html = bytes(path).toString('utf8');
      const root = lazy(() => parsePage(html));
      const elements = lazy(() => elementsOf(root()));
      const byId = lazy(
        () =>
          new Map(
            elements().flatMap((element) => {
              const id = attributeOf(element, 'id');
              return id === undefined ? [] : [[id, element] as const];
            }),
          ),
      );
      return {
        path: pageOfFile(path),
        html,
        get root() {
          return root();
        },
        get elements() {
          return elements();
        },
        get byId() {
          return byId();
        },
      };
    });
  const byPath = new Map(pages.map((page) => [page.path, page]));
  return {
    files,
    pages,
    bytes,
    find: (path) => byPath.get(path),
    page(path) {
      const page = byPath.get(path);
      if (page === undefined) throw new Error(`the site has no page ${path}`);
      return page;
    },
  };
}
