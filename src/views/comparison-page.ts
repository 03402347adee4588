/** The comparison of bodies: all of it on one page, or each chain's charts on pages of their own where that is too long. */
import { once } from '../model/once.ts';
import { comparisonPartPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import { standingBodies } from '../register/comparisons/standing.ts';
import { plural } from '../register/provenance.ts';
import { answerOf, type Answer } from './answer.ts';
import { bodyGrids, type BodyGrid, type GridCell, type GridRow } from './body-grid.ts';
import { MOST_ROWS } from './most-rows.ts';

export interface ComparisonPage {
  readonly answer: Answer;
  readonly grids: readonly ComparedGrid[];
}

export interface ComparedGrid extends BodyGrid {
  /** Of its charts, which then do not stand here. */
  readonly pages: { readonly charts: string; readonly differences: string | undefined } | undefined;
}

export interface ComparisonPart {
  readonly part: 'on' | 'differences';
  /** Of the chain. */
  readonly slug: string;
  readonly path: string;
  /** `Bodies against each other on Balcony` */
  readonly title: string;
}

export interface ComparisonPartPage {
  readonly title: string;
  /** Its charts, or its differences. */
  readonly part: ComparisonPart['part'];
  readonly grid: BodyGrid;
}

export function comparisonPage(site: Published): ComparisonPage {
  const { grids, isWhole } = laidOut(site);
  return {
    answer: answerOf(site),
    grids: grids.map((grid): ComparedGrid => {
      if (isWhole) return { ...grid, pages: undefined };
      const pages = {
        charts: comparisonPartPath('on', grid.slug),
        differences: grid.compared && comparisonPartPath('differences', grid.slug),
      };
      return { ...grid, rows: speaking(site, grid.rows), rates: undefined, compared: undefined, pages };
    }),
  };
}

/** None where one page holds all of it. */
export function comparisonParts(site: Published): readonly ComparisonPart[] {
  const { grids, isWhole } = laidOut(site);
  if (isWhole) return [];
  return grids.flatMap(({ slug, name, compared }) =>
    (['on', 'differences'] as const).flatMap((part) =>
      part === 'differences' && compared === undefined
        ? []
        : [{ part, slug, path: comparisonPartPath(part, slug), title: `${TITLES[part]} ${name}` }],
    ),
  );
}

const TITLES: Readonly<Record<ComparisonPart['part'], string>> = {
  on: 'Bodies side by side on',
  differences: 'Body against body on',
};

export function comparisonPartPage(site: Published, { part, slug, title }: ComparisonPart): ComparisonPartPage {
  const grid = laidOut(site).grids.find((each) => each.slug === slug);
  if (grid === undefined) throw new Error(`no chain '${slug}' was compared`);
  return {
    title,
    part,
    grid:
      part === 'on'
        ? { ...grid, rows: speaking(site, grid.rows), compared: undefined }
        : { ...grid, rows: [], rates: undefined },
  };
}

const laidOut = once((site: Published) => {
  const grids = bodyGrids(site);
  const rows = grids.reduce(
    (sum, grid) => sum + (grid.compared?.rows.length ?? 0) + grid.rows.flatMap(({ cells }) => cells.flat()).length,
    0,
  );
  return { grids, isWhole: rows <= MOST_ROWS };
});

/** One session for each body in each condition. */
function speaking({ bench, find }: Published, rows: readonly GridRow[]): readonly GridRow[] {
  const spokenBy = (cell: readonly GridCell[]): readonly GridCell[] => {
    if (cell.length < 2) return cell;
    const sessions = cell.map(({ total }) => find.session(total.of['session'] ?? ''));
    const [speaker] = standingBodies(bench, sessions);
    return cell
      .filter(({ total }) => total.of['session'] === speaker?.id)
      .map((each) => ({
        ...each,
        label: '',
        words: [...each.remarks, `one of ${plural(cell.length, 'session')}`].join(', '),
      }));
  };
  return rows.map((row) => ({ ...row, cells: row.cells.map(spokenBy) }));
}
