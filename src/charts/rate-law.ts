import type { TopLevelSpec } from 'vega-lite';
import type { Chart, Variant } from './chart.ts';
import { unitOf, type RateLawInput } from './rate-law-input.ts';
import { layOutRateLaw } from './rate-law-layout.ts';
import { describeRateLaw } from './rate-law-text.ts';
import { renderSvg } from './render.ts';
import { COLOUR } from './theme.ts';

export type { RateLawInput } from './rate-law-input.ts';

const POINT_AREA = 38;
const SCALE = (axis: string) => ({
  domain: [{ expr: `${axis}Low` }, { expr: `${axis}High` }],
  nice: false,
  zero: false,
});

const SPEC: TopLevelSpec = {
  width: 100,
  height: 100,
  params: ['x', 'y']
    .flatMap((axis) => [
      { name: `${axis}Low`, value: 0 },
      { name: `${axis}High`, value: 1 },
      { name: `${axis}Marks`, value: [] },
      { name: `${axis}Format`, value: 'd' },
    ])
    .concat([
      { name: 'bodyColour', value: COLOUR.ink },
      { name: 'bodyShape', value: 'circle' },
    ]),
  encoding: {
    x: {
      field: 'intervalMs',
      type: 'quantitative',
      scale: SCALE('x'),
      axis: {
        values: { expr: 'xMarks' },
        labelExpr: 'format(datum.value, xFormat)',
        grid: false,
        ticks: true,
        tickColor: COLOUR.soft,
        tickSize: 4,
      },
    },
    y: {
      type: 'quantitative',
      scale: SCALE('y'),
      axis: { values: { expr: 'yMarks' }, labelExpr: 'format(datum.value, yFormat)' },
    },
  },
  layer: [
    {
      name: 'band',
      data: { name: 'band' },
      mark: { type: 'area', clip: true, color: COLOUR.accent, opacity: 0.18 },
      encoding: { y: { field: 'low' }, y2: { field: 'high' } },
    },
    {
      name: 'line',
      data: { name: 'line' },
      mark: { type: 'line', clip: true, color: COLOUR.accent, strokeWidth: 1.5 },
      encoding: { y: { field: 'fitted' } },
    },
    {
      name: 'leaders',
      data: { name: 'leaders' },
      mark: { type: 'rule', color: COLOUR.rule, strokeWidth: 1 },
      encoding: { y: { value: { expr: 'datum.top' } }, y2: { value: 0 } },
    },
    {
      name: 'intervals',
      data: { name: 'intervals' },
      mark: { type: 'rule', color: { expr: 'bodyColour' }, strokeWidth: 1.5 },
      encoding: { y: { field: 'low' }, y2: { field: 'high' } },
    },
    {
      name: 'points',
      data: { name: 'points' },
      mark: {
        type: 'point',
        shape: { expr: 'bodyShape' },
        filled: true,
        opacity: 1,
        size: POINT_AREA,
        color: { expr: 'bodyColour' },
      },
      encoding: { y: { field: 'value' } },
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
        strokeWidth: 1.5,
        color: { expr: 'bodyColour' },
      },
      encoding: { y: { field: 'value' } },
    },
    {
      name: 'texts',
      data: { name: 'texts' },
      mark: { type: 'text', align: { expr: 'datum.align' }, fontWeight: { expr: 'datum.weight' } },
      encoding: { x: { value: { expr: 'datum.x' } }, y: { value: { expr: 'datum.y' } }, text: { field: 'text' } },
    },
  ],
};

/**
 * Totals against the frame interval, both axes from zero, with the fitted line and its band: in ms, where the line
 * meets the left edge is the part of the latency that no frame rate changes; in frames, a level line is a constant
 * number of frames. The rates stand along the top.
 */
export async function renderRateLaw(input: RateLawInput): Promise<Chart> {
  refuseUndrawable(input);
  const words = describeRateLaw(input);
  const draw = (variant: Variant) =>
    renderSvg(
      { spec: SPEC, ...layOutRateLaw(input, words, variant) },
      { id: `${input.id}-${variant}`, className: `chart-${variant}`, ...words },
    );
  return {
    id: input.id,
    wide: await draw('wide'),
    narrow: await draw('narrow'),
    title: words.title,
    description: words.description,
  };
}

function refuseUndrawable({ id, points, line }: RateLawInput): void {
  if (points.length === 0) throw new RangeError(`chart '${id}' has no figures: give it at least one`);
  if (line.length < 2) throw new RangeError(`chart '${id}': a line has two points or more`);
  const unit = unitOf(points);
  for (const { figure, intervalMs } of points) {
    if (figure.unit !== unit)
      throw new RangeError(`chart '${id}': figure ${figure.id} is in ${figure.unit}, the axis in ${unit}`);
    if (![intervalMs, figure.value, figure.interval?.low ?? 0, figure.interval?.high ?? 0].every(Number.isFinite))
      throw new RangeError(`chart '${id}': figure ${figure.id} is not finite`);
  }
  for (const { intervalMs, fitted, low = 0, high = 0 } of line) {
    if (![intervalMs, fitted, low, high].every(Number.isFinite))
      throw new RangeError(`chart '${id}': the line is not finite`);
  }
}
