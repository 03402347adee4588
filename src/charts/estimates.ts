import type { TopLevelSpec } from 'vega-lite';
import type { Figure } from '../figures/register.ts';
import type { Chart, Variant } from './chart.ts';
import { describeEstimates } from './estimates-text.ts';
import { layOutEstimates } from './estimates-layout.ts';
import { renderSvg } from './render.ts';
import { COLOUR } from './theme.ts';

export interface EstimateRow {
  readonly label: string;
  readonly figure: Figure;
  /** Heading under which the row stands, e.g. the body; rows of one group follow each other. */
  readonly group?: string;
}

export interface EstimatesInput {
  /** Unique on the page: letters, digits, `-`, `_`. */
  readonly id: string;
  /** In the order in which they are drawn, top to bottom. */
  readonly rows: readonly EstimateRow[];
  /** Says what the figures are; otherwise the figures' own label. */
  readonly title?: string;
}

const POINT_AREA = 38;
const INTERVAL_WIDTH = 1.5;
/** Taller than the point, so that the ends of an interval narrower than the point still show. */
const CAP_HEIGHT = 11;

const SPEC: TopLevelSpec = {
  width: 100,
  height: 100,
  params: [
    { name: 'low', value: 0 },
    { name: 'high', value: 1 },
    { name: 'marks', value: [] },
    { name: 'tickFormat', value: 'd' },
  ],
  encoding: {
    x: {
      type: 'quantitative',
      scale: { domain: [{ expr: 'low' }, { expr: 'high' }], nice: false, zero: false },
      axis: { values: { expr: 'marks' }, labelExpr: 'format(datum.value, tickFormat)', grid: false },
    },
    y: { value: { expr: 'datum.y' } },
  },
  layer: [
    { name: 'grid', data: { name: 'grid' }, mark: { type: 'rule', color: COLOUR.rule, strokeWidth: 1 }, encoding: { x: { field: 'value' }, y2: { value: { expr: 'datum.y2' } } } },
    { name: 'zero', data: { name: 'zero' }, mark: { type: 'rule', color: COLOUR.soft, strokeWidth: 1 }, encoding: { x: { field: 'value' }, y2: { value: { expr: 'datum.y2' } } } },
    { name: 'intervals', data: { name: 'intervals' }, mark: { type: 'rule', color: COLOUR.accent, strokeWidth: INTERVAL_WIDTH }, encoding: { x: { field: 'low' }, x2: { field: 'high' } } },
    { name: 'ends', data: { name: 'ends' }, mark: { type: 'tick', orient: 'vertical', opacity: 1, color: COLOUR.accent, thickness: INTERVAL_WIDTH, size: CAP_HEIGHT }, encoding: { x: { field: 'value' } } },
    { name: 'points', data: { name: 'points' }, mark: { type: 'point', shape: 'circle', filled: true, opacity: 1, size: POINT_AREA, color: COLOUR.accent }, encoding: { x: { field: 'value' } } },
    { name: 'bare', data: { name: 'bare' }, mark: { type: 'point', shape: 'diamond', filled: false, opacity: 1, size: POINT_AREA, strokeWidth: INTERVAL_WIDTH, color: COLOUR.accent }, encoding: { x: { field: 'value' } } },
    { name: 'lines', data: { name: 'lines' }, mark: { type: 'rule', color: COLOUR.rule, strokeWidth: 1 }, encoding: { x: { value: { expr: 'datum.x' } }, x2: { value: { expr: 'datum.x2' } } } },
    { name: 'texts', data: { name: 'texts' }, mark: { type: 'text', align: { expr: 'datum.align' }, fontWeight: { expr: 'datum.weight' } }, encoding: { x: { value: { expr: 'datum.x' } }, text: { field: 'text' } } },
  ],
};

/**
 * Figures as points with their intervals, on a common axis that starts at zero: rows top to bottom, the
 * published text of each at the right. A figure without an interval is an open diamond and says so.
 */
export async function renderEstimates(input: EstimatesInput): Promise<Chart> {
  refuseUndrawable(input);
  const words = describeEstimates(input);
  const draw = (variant: Variant) =>
    renderSvg({ spec: SPEC, ...layOutEstimates(input.rows, words.axisTitle, variant) }, { id: `${input.id}-${variant}`, className: `chart-${variant}`, ...words });
  return { wide: await draw('wide'), narrow: await draw('narrow'), title: words.title, description: words.description };
}

function refuseUndrawable({ id, rows }: EstimatesInput): void {
  if (rows.length === 0) throw new RangeError(`chart '${id}' has no figures: give it at least one`);
  const units = new Set(rows.map(({ figure }) => figure.unit));
  if (units.size > 1) throw new RangeError(`chart '${id}' mixes the units ${[...units].join(', ')}: one axis has one unit`);
  const levels = new Set(rows.flatMap(({ figure }) => figure.interval?.level ?? []));
  if (levels.size > 1) throw new RangeError(`chart '${id}' mixes intervals of ${[...levels].join(', ')}: use one coverage`);
  for (const { figure } of rows) {
    const { value, interval } = figure;
    if (![value, interval?.low ?? 0, interval?.high ?? 0].every(Number.isFinite)) throw new RangeError(`chart '${id}': figure ${figure.id} is not finite`);
  }
}
