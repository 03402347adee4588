/** What the page of totals carried to other displays prints. */
import { bodyElement } from '../register/chain/elements.ts';
import {
  carriedConditionId,
  carriedDifferenceId,
  carriedFamily,
  carriedId,
  carriedVerdictId,
  NOMINAL_DISPLAY,
} from '../register/carried/carried-figures.ts';
import { crossedConditions, type CrossedCondition } from '../register/carried/crossed-conditions.ts';
import { describeCondition } from '../register/comparisons/describe-condition.ts';
import { familySizeId } from '../register/comparisons/family.ts';
import { lowestOfBody } from '../register/comparisons/lowest-of-body.ts';
import { standingBodies } from '../register/comparisons/standing.ts';
import { bodyPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import type { Figure, Finding } from '../register/register.ts';
import { saysDifference, type ComparedRow, type ComparedRows } from './compared-rows.ts';

export interface CarriedPage {
  /** Over the columns: the display whose delay is chosen, then real ones. */
  readonly displays: readonly string[];
  readonly bodies: readonly CarriedBody[];
  readonly conditions: readonly CarriedCondition[];
  /** What cannot be carried, and what would make it so. */
  readonly findings: readonly Finding[];
}

interface CarriedBody {
  readonly name: string;
  readonly path: string;
  readonly condition: string;
  /** One for each display. */
  readonly cells: readonly { readonly figure: Figure | undefined; readonly isMeasured: boolean }[];
}

interface CarriedCondition {
  readonly condition: string;
  /** On the display whose delay is chosen, lowest first; empty where nothing anchors them. */
  readonly totals: readonly { readonly name: string; readonly figure: Figure }[];
  readonly compared: ComparedRows;
}

export function carriedPage(site: Published): CarriedPage {
  const { bench, register } = site;
  const rows = bench.bodies.flatMap(({ id }) => bodyRow(site, id) ?? []);
  const isFilled = (_: unknown, at: number): boolean => at === 0 || rows.some(({ cells }) => cells[at]?.figure);
  return {
    displays: [NOMINAL_DISPLAY.replace(/ (?=ms)/, '\u00a0'), ...bench.displays.map(({ name }) => name)].filter(
      isFilled,
    ),
    bodies: rows.map((row) => ({ ...row, cells: row.cells.filter(isFilled) })),
    conditions: crossedConditions(bench).flatMap((condition) => conditionOf(site, condition) ?? []),
    findings: register.findings.filter(({ rule }) => rule === 'carried-not-joined'),
  };
}

/** Undefined for a body that nothing can be carried of. */
function bodyRow(site: Published, body: string): CarriedBody | undefined {
  const { bench, find, figure } = site;
  const lowest = lowestOfBody(bench, body, (id) => figure(`total/${id}`));
  if (lowest === undefined) return undefined;
  const element = bodyElement(lowest.session, bench);
  const measuredOn = (display: string): Figure | undefined => {
    const own = bench.sessions.filter(
      (session) => session.display === display && session.links.length === 0 && bodyElement(session, bench) === element,
    );
    const [standing] = standingBodies(bench, own);
    return standing && figure(`total/${standing.id}`);
  };
  const cells = [
    { figure: figure(carriedId(body)), isMeasured: false },
    ...bench.displays.map(({ id }) => {
      const carried = figure(carriedId(body, id));
      return { figure: carried ?? measuredOn(id), isMeasured: carried === undefined };
    }),
  ];
  if (cells.every((cell) => cell.figure === undefined || cell.isMeasured)) return undefined;
  return {
    name: find.body(body).name,
    path: bodyPath(body),
    condition: describeCondition(bench, { ...lowest.session, links: [] }),
    cells,
  };
}

/** Undefined where nothing joins any two of its bodies. */
function conditionOf({ figure }: Published, condition: CrossedCondition): CarriedCondition | undefined {
  const rows = condition.pairs.flatMap(([a, b]): readonly ComparedRow[] => {
    const difference = figure(carriedDifferenceId(condition, a, b));
    const verdict = figure(carriedVerdictId(condition, a, b));
    return difference === undefined || verdict === undefined
      ? []
      : [
          {
            group: '',
            label: `${a.name} against ${b.name}`,
            difference,
            ratio: undefined,
            verdict,
            isSaid: saysDifference(verdict, difference),
          },
        ];
  });
  const size = figure(familySizeId(carriedFamily(condition)));
  if (size === undefined) return undefined;
  return {
    condition: condition.words,
    totals: condition.bodies
      .flatMap(({ name, element }) => {
        const total = figure(carriedConditionId(element));
        return total === undefined ? [] : [{ name, figure: total }];
      })
      .sort((x, y) => x.figure.value - y.figure.value),
    compared: { rows, shared: '', familySizes: [size] },
  };
}
