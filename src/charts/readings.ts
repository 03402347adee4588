import type { TopLevelSpec } from 'vega-lite';
import type { Chart, Variant } from './chart.ts';
import type { ReadingsInput } from './readings-input.ts';
import { layOutReadings } from './readings-layout.ts';
import { describeReadings } from './readings-text.ts';
import { renderSvg } from './render.ts';
import { COLOUR } from './theme.ts';

export type { ReadingsInput } from './readings-input.ts';

const CROSS_AREA = 34;

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
    y: {
      type: 'quantitative',
      scale: { domain: [{ expr: 'low' }, { expr: 'high' }], nice: false, zero: false },
      axis: { values: { expr: 'marks' }, labelExpr: 'format(datum.value, tickFormat)' },
    },
  },
  layer: [
    {
      name: 'band',
      data: { name: 'band' },
      mark: { type: 'rect', color: COLOUR.accent, opacity: 0.18 },
      encoding: { x: { value: 0 }, x2: { value: { expr: 'width' } }, y: { field: 'low' }, y2: { field: 'high' } },
    },
    {
      name: 'total',
      data: { name: 'total' },
      mark: { type: 'rule', color: COLOUR.accent, strokeWidth: 1.5 },
      encoding: { x: { value: 0 }, x2: { value: { expr: 'width' } }, y: { field: 'value' } },
    },
    {
      name: 'separators',
      data: { name: 'separators' },
      mark: { type: 'rule', color: COLOUR.soft, strokeWidth: 1, strokeDash: [1, 3] },
      encoding: { x: { value: { expr: 'datum.x' } }, y: { value: 0 }, y2: { value: { expr: 'height' } } },
    },
    {
      name: 'dots',
      data: { name: 'dots' },
      mark: { type: 'point', shape: 'circle', filled: true, color: COLOUR.ink },
      encoding: {
        x: { value: { expr: 'datum.x' } },
        y: { field: 'latencyMs' },
        size: { value: { expr: 'datum.area' } },
        opacity: { value: { expr: 'datum.opacity' } },
      },
    },
    {
      name: 'crosses',
      data: { name: 'crosses' },
      mark: {
        type: 'point',
        shape: { expr: 'datum.shape' },
        filled: false,
        opacity: 1,
        size: CROSS_AREA,
        strokeWidth: 1.5,
        color: COLOUR.caution,
      },
      encoding: { x: { value: { expr: 'datum.x' } }, y: { value: { expr: 'datum.y' } } },
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
 * Every reading of a session in the order taken, run by run, with the total as a line and its interval as a
 * band. Excluded readings are crosses, or triangles at the edge where they lie off the scale, and are listed.
 * Beyond `MOST_DOTS` readings, a dot stands for all readings of a small field, and its area for their number.
 */
export async function renderReadings(input: ReadingsInput): Promise<Chart> {
  refuseUndrawable(input);
  const words = describeReadings(input);
  const draw = (variant: Variant) =>
    renderSvg(
      { spec: SPEC, ...layOutReadings(input, words, variant) },
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

function refuseUndrawable({ id, readings, total }: ReadingsInput): void {
  if (total.unit !== 'ms') throw new RangeError(`chart '${id}': the total is in ${total.unit}, the readings in ms`);
  if (![total.value, total.interval?.low ?? 0, total.interval?.high ?? 0].every(Number.isFinite))
    throw new RangeError(`chart '${id}': figure ${total.id} is not finite`);
  readings.forEach(({ latencyMs, excluded }, i) => {
    if (latencyMs === undefined ? excluded === undefined : !Number.isFinite(latencyMs))
      throw new RangeError(`chart '${id}': reading ${String(i + 1)} has no finite latency`);
  });
  if (!readings.some(({ excluded }) => excluded === undefined))
    throw new RangeError(`chart '${id}' has no reading that counts`);
}
