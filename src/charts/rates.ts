import type { TopLevelSpec } from 'vega-lite';
import type { Chart, Variant } from './chart.ts';
import { layOutRates, type RatesInput } from './rates-layout.ts';
import { renderSvg } from './render.ts';
import { COLOUR } from './theme.ts';

const X = { value: { expr: 'datum.x' } } as const;

const SPEC: TopLevelSpec = {
  width: 100,
  height: 100,
  params: [
    { name: 'high', value: 1 },
    { name: 'marks', value: [] },
    { name: 'tickFormat', value: 'd' },
  ],
  encoding: {
    y: {
      type: 'quantitative',
      scale: { domain: [0, { expr: 'high' }], nice: false, zero: true },
      axis: { values: { expr: 'marks' }, labelExpr: 'format(datum.value, tickFormat)' },
    },
  },
  layer: [
    {
      name: 'leaders',
      data: { name: 'leaders' },
      mark: { type: 'rule', color: COLOUR.rule, strokeWidth: 1 },
      encoding: { x: X, y: { value: { expr: 'datum.top' } }, y2: { value: { expr: 'datum.bottom' } } },
    },
    {
      name: 'segments',
      data: { name: 'segments' },
      mark: { type: 'rule', color: { expr: 'datum.colour' }, strokeWidth: 1, opacity: 0.6 },
      encoding: { x: X, x2: { value: { expr: 'datum.x2' } }, y: { field: 'value' }, y2: { field: 'value2' } },
    },
    {
      name: 'intervals',
      data: { name: 'intervals' },
      mark: { type: 'rule', color: { expr: 'datum.colour' }, strokeWidth: 1.5 },
      encoding: { x: X, y: { field: 'low' }, y2: { field: 'high' } },
    },
    {
      name: 'points',
      data: { name: 'points' },
      mark: {
        type: 'point',
        filled: true,
        opacity: 1,
        size: 44,
        shape: { expr: 'datum.shape' },
        color: { expr: 'datum.colour' },
      },
      encoding: { x: X, y: { field: 'value' } },
    },
    {
      name: 'texts',
      data: { name: 'texts' },
      mark: { type: 'text', align: { expr: 'datum.align' }, fontWeight: { expr: 'datum.weight' } },
      encoding: { x: X, y: { value: { expr: 'datum.y' } }, text: { field: 'text' } },
    },
  ],
};

/**
 * Totals of several bodies against the frame rate: each body in its own colour and mark, with its name at its fastest
 * rate. The rates stand on a logarithmic axis, which says so, at the rates themselves; latency starts at zero.
 */
export async function renderRates(input: RatesInput): Promise<Chart> {
  const { id, title, bodies } = input;
  if (bodies.length === 0 || bodies.some(({ points }) => points.length === 0))
    throw new RangeError(`chart '${id}' has a body without figures: give each at least one`);
  const units = new Set(bodies.flatMap(({ points }) => points.map(({ figure }) => figure.unit)));
  if (units.size > 1) throw new RangeError(`chart '${id}' mixes the units ${[...units].join(', ')}`);
  const description = `Total latency against frames per second on a logarithmic axis, latency from zero. ${bodies
    .map(({ name, points }) => `${name}: ${points.map(({ rate, figure }) => `${figure.text} at ${rate}`).join(', ')}`)
    .join('. ')}.`;
  const draw = (variant: Variant) =>
    renderSvg(
      { spec: SPEC, ...layOutRates(input, variant) },
      { id: `${id}-${variant}`, className: `chart-${variant}`, title, description },
    );
  return { id, wide: await draw('wide'), narrow: await draw('narrow'), title, description };
}
