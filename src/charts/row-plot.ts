import type { TopLevelSpec } from 'vega-lite';
import type { Chart, Variant } from './chart.ts';
import type { RowPlot } from './row-plot-input.ts';
import { renderSvg } from './render.ts';
import { layOutRows } from './row-plot-layout.ts';
import { COLOUR } from './theme.ts';

const POINT_AREA = 38;
const INTERVAL_WIDTH = 1.5;
/** Taller than the point, so that the ends of an interval narrower than the point still show. */
const CAP_HEIGHT = 11;

/** The square of a bracket's height. */
const BRACKET_AREA = 144;
const BREAK_AREA = 100;

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
    {
      name: 'shaded',
      data: { name: 'shaded' },
      mark: { type: 'rect', color: COLOUR.soft, opacity: 0.16 },
      encoding: { x: { field: 'low' }, x2: { field: 'high' }, y2: { value: { expr: 'datum.y2' } } },
    },
    {
      name: 'grid',
      data: { name: 'grid' },
      mark: { type: 'rule', color: COLOUR.rule, strokeWidth: 1 },
      encoding: { x: { field: 'value' }, y2: { value: { expr: 'datum.y2' } } },
    },
    {
      name: 'zero',
      data: { name: 'zero' },
      mark: { type: 'rule', color: COLOUR.soft, strokeWidth: 1 },
      encoding: { x: { field: 'value' }, y2: { value: { expr: 'datum.y2' } } },
    },
    {
      name: 'marked',
      data: { name: 'marked' },
      mark: { type: 'rule', color: COLOUR.accent2, strokeWidth: 1.25, strokeDash: [4, 3] },
      encoding: { x: { field: 'value' }, y2: { value: { expr: 'datum.y2' } } },
    },
    {
      name: 'intervals',
      data: { name: 'intervals' },
      mark: { type: 'rule', color: { expr: 'datum.colour' }, strokeWidth: INTERVAL_WIDTH },
      encoding: { x: { field: 'low' }, x2: { field: 'high' } },
    },
    {
      name: 'ends',
      data: { name: 'ends' },
      mark: {
        type: 'tick',
        orient: 'vertical',
        opacity: 1,
        color: { expr: 'datum.colour' },
        thickness: INTERVAL_WIDTH,
        size: CAP_HEIGHT,
      },
      encoding: { x: { field: 'value' } },
    },
    {
      name: 'points',
      data: { name: 'points' },
      mark: {
        type: 'point',
        shape: { expr: 'datum.shape' },
        filled: true,
        opacity: 1,
        size: POINT_AREA,
        color: { expr: 'datum.colour' },
      },
      encoding: { x: { field: 'value' } },
    },
    {
      name: 'bare',
      data: { name: 'bare' },
      mark: {
        type: 'point',
        shape: 'diamond',
        filled: false,
        opacity: 1,
        size: POINT_AREA,
        strokeWidth: INTERVAL_WIDTH,
        color: { expr: 'datum.colour' },
      },
      encoding: { x: { field: 'value' } },
    },
    {
      name: 'spans',
      data: { name: 'spans' },
      mark: { type: 'rule', color: COLOUR.accent, strokeWidth: 1, strokeDash: [1, 3] },
      encoding: { x: { field: 'low' }, x2: { field: 'high' } },
    },
    {
      name: 'brackets',
      data: { name: 'brackets' },
      mark: {
        type: 'point',
        shape: { expr: 'datum.shape' },
        filled: false,
        opacity: 1,
        size: BRACKET_AREA,
        strokeWidth: 2,
        color: COLOUR.accent,
      },
      encoding: { x: { field: 'value' } },
    },
    {
      name: 'breaks',
      data: { name: 'breaks' },
      mark: {
        type: 'point',
        shape: { expr: 'datum.shape' },
        filled: false,
        opacity: 1,
        size: BREAK_AREA,
        strokeWidth: 1.5,
        color: COLOUR.soft,
      },
      encoding: { x: { field: 'value' } },
    },
    {
      name: 'lines',
      data: { name: 'lines' },
      mark: { type: 'rule', color: COLOUR.rule, strokeWidth: 1 },
      encoding: { x: { value: { expr: 'datum.x' } }, x2: { value: { expr: 'datum.x2' } } },
    },
    {
      name: 'texts',
      data: { name: 'texts' },
      mark: { type: 'text', align: { expr: 'datum.align' }, fontWeight: { expr: 'datum.weight' } },
      encoding: { x: { value: { expr: 'datum.x' } }, text: { field: 'text' } },
    },
  ],
};

/** Draws rows of marks, top to bottom, in both variants. */
export async function renderRowPlot(plot: RowPlot): Promise<Chart> {
  const { id, title, description, rows, shaded } = plot;
  if (rows.length === 0) throw new RangeError(`chart '${id}' has no rows: give it at least one`);
  for (const { label, value = 0, interval, bracket } of rows) {
    const numbers = [value, ...[interval, bracket, shaded].flatMap((range) => (range ? [range.low, range.high] : []))];
    if (!numbers.every(Number.isFinite)) throw new RangeError(`chart '${id}': row '${label}' is not finite`);
  }
  const draw = (variant: Variant) =>
    renderSvg(
      { spec: SPEC, ...layOutRows(plot, variant) },
      { id: `${id}-${variant}`, className: `chart-${variant}`, title, description },
    );
  return { id, wide: await draw('wide'), narrow: await draw('narrow'), title, description };
}
