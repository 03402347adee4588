import type { TopLevelSpec } from 'vega-lite';
import type { Chart, Variant } from './chart.ts';
import type { PrecisionInput } from './precision-input.ts';
import { layOutPrecision } from './precision-layout.ts';
import { renderSvg } from './render.ts';
import { COLOUR } from './theme.ts';

export type { PrecisionInput } from './precision-input.ts';

const SPEC: TopLevelSpec = {
  width: 100,
  height: 100,
  params: ['x', 'y'].flatMap((axis) => [
    { name: `${axis}Low`, value: 1 },
    { name: `${axis}High`, value: 2 },
    { name: `${axis}Marks`, value: [] },
    { name: `${axis}Format`, value: 'd' },
  ]),
  encoding: {
    x: {
      type: 'quantitative',
      scale: { type: 'log', domain: [{ expr: 'xLow' }, { expr: 'xHigh' }], nice: false },
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
      scale: { domain: [{ expr: 'yLow' }, { expr: 'yHigh' }], nice: false, zero: false },
      axis: { values: { expr: 'yMarks' }, labelExpr: 'format(datum.value, yFormat)' },
    },
  },
  layer: [
    {
      name: 'lines',
      data: { name: 'lines' },
      mark: { type: 'line', strokeWidth: 1.75 },
      encoding: {
        x: { field: 'readings' },
        y: { field: 'halfWidth' },
        detail: { field: 'line' },
        stroke: { field: 'colour', type: 'nominal', scale: null },
        strokeDash: { field: 'dash', type: 'nominal', scale: null },
      },
    },
    {
      name: 'points',
      data: { name: 'points' },
      mark: { type: 'point', filled: true, opacity: 1, size: 26, color: { expr: 'datum.colour' } },
      encoding: { x: { field: 'readings' }, y: { field: 'halfWidth' } },
    },
    {
      name: 'leaders',
      data: { name: 'leaders' },
      mark: { type: 'rule', color: COLOUR.soft, strokeWidth: 1 },
      encoding: {
        x: { value: { expr: 'width + 2' } },
        x2: { value: { expr: 'datum.x2' } },
        y: { value: { expr: 'datum.y' } },
        y2: { value: { expr: 'datum.y2' } },
      },
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
 * How the half-width of an interval falls with the number of readings, for several ways of taking them: one
 * line each, named at its end; the number of readings on a logarithmic axis, the half-width from zero.
 */
export async function renderPrecision(input: PrecisionInput): Promise<Chart> {
  refuseUndrawable(input);
  const words = {
    title: input.title ?? 'Half-width of the interval against number of readings',
    description: describe(input),
  };
  const draw = (variant: Variant) =>
    renderSvg(
      { spec: SPEC, ...layOutPrecision(input, variant) },
      { id: `${input.id}-${variant}`, className: `chart-${variant}`, ...words },
    );
  return { id: input.id, wide: await draw('wide'), narrow: await draw('narrow'), ...words };
}

function refuseUndrawable({ id, lines }: PrecisionInput): void {
  if (lines.length === 0) throw new RangeError(`chart '${id}' has no lines: give it at least one`);
  for (const { label, points } of lines) {
    if (points.length < 2) throw new RangeError(`chart '${id}': the line '${label}' needs two points or more`);
    if (
      !points.every(
        ({ readings, halfWidth }) =>
          readings > 0 && Number.isFinite(readings) && halfWidth >= 0 && Number.isFinite(halfWidth),
      )
    ) {
      throw new RangeError(
        `chart '${id}': the line '${label}' needs finite half-widths and at least one reading at each point`,
      );
    }
    if (points.some(({ readings }, i) => i > 0 && readings <= (points[i - 1]?.readings ?? 0)))
      throw new RangeError(`chart '${id}': the line '${label}' needs ascending numbers of readings`);
  }
}

function describe({ lines, unit }: PrecisionInput): string {
  const ends = lines.map(({ label, points }) => {
    const [first, last] = [points[0], points.at(-1)];
    return first && last
      ? `${label}: ${first.text} at ${String(first.readings)} readings, ${last.text} at ${String(last.readings)}`
      : label;
  });
  return `Half-width of the interval in ${unit}, from zero, against the number of readings on a logarithmic axis, ${lines.length === 1 ? 'one line' : `${String(lines.length)} lines`}. ${ends.join('; ')}.`;
}
