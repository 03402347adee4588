/** A chart as a Vega-Lite specification that holds its own numbers: to be drawn anew, in other colours and sizes. */
import type { ChartData, Row } from './chart-data.ts';

interface Layer {
  readonly mark: object;
  readonly encoding?: object;
  readonly data?: object;
  readonly transform?: readonly object[];
}

const SCHEMA = 'https://vega.github.io/schema/vega-lite/v6.json';
const quantity = (field: string, title: string): object => ({
  field,
  type: 'quantitative',
  title,
  scale: { zero: true },
});

export function specification({ kind, rows }: ChartData, title: string, description: string): object {
  const unit = String(rows.find(({ row }) => row === 'figure' || row === undefined)?.['unit'] ?? 'ms');
  return {
    $schema: SCHEMA,
    title,
    description,
    data: { values: rows },
    width: 560,
    ...(kind === 'figures' ? {} : { height: 320 }),
    layer: LAYERS[kind](rows, unit),
  };
}

const LAYERS: Readonly<Record<ChartData['kind'], (rows: readonly Row[], unit: string) => readonly Layer[]>> = {
  figures: (rows, unit) => {
    const y = { field: 'id', type: 'nominal', title: null, sort: null };
    const title = `${String(rows[0]?.['label'] ?? 'Value')}, ${unit}`;
    return [
      { mark: { type: 'rule' }, encoding: { y, x: quantity('low', title), x2: { field: 'high' } } },
      {
        mark: { type: 'point', filled: true },
        encoding: { y, x: quantity('value', title), tooltip: { field: 'text', type: 'nominal' } },
      },
    ];
  },
  'rate-law': (rows, unit) => {
    const ofSessions = { filter: 'isValid(datum.frameInterval)' };
    const x = quantity('frameInterval', 'Frame interval, ms');
    const y = (field: string): object => quantity(field, `Total latency, ${unit}`);
    const line = lineOf(rows, unit);
    return [
      { transform: [ofSessions], mark: { type: 'rule' }, encoding: { x, y: y('low'), y2: { field: 'high' } } },
      { transform: [ofSessions], mark: { type: 'point', filled: true }, encoding: { x, y: y('value') } },
      ...(line.length === 0
        ? []
        : [{ data: { values: line }, mark: { type: 'line' }, encoding: { x, y: y('value') } }]),
    ];
  },
  readings: () => {
    const reading = { filter: "datum.row === 'reading' && isValid(datum.value)" };
    const total = { filter: "datum.row === 'figure'" };
    const title = 'Latency, ms';
    return [
      {
        transform: [total],
        mark: { type: 'rect', opacity: 0.2 },
        encoding: { y: quantity('low', title), y2: { field: 'high' } },
      },
      { transform: [total], mark: { type: 'rule' }, encoding: { y: quantity('value', title) } },
      {
        transform: [reading],
        mark: { type: 'point', filled: true },
        encoding: {
          x: { field: 'number', type: 'quantitative', title: 'Reading, in the order taken' },
          y: { ...quantity('value', title), scale: { zero: false } },
          color: { condition: { test: "datum.excluded !== ''", value: 'firebrick' }, value: 'steelblue' },
        },
      },
    ];
  },
  precision: (_rows, unit) => [
    {
      mark: { type: 'line', point: true },
      encoding: {
        x: { field: 'readings', type: 'quantitative', title: 'Readings in all', scale: { type: 'log', base: 2 } },
        y: quantity('halfWidth', `Half-width of the interval, ${unit}`),
        color: { field: 'way', type: 'nominal', title: null, sort: null },
      },
    },
  ],
};

/** The law over the intervals of its sessions: in ms a straight line; in frames a fixed part over the interval. */
function lineOf(rows: readonly Row[], unit: string): readonly Row[] {
  const published = (kind: string): number | undefined => {
    const found = rows.find(({ id }) => String(id).startsWith(`${kind}/`))?.['value'];
    return typeof found === 'number' ? found : undefined;
  };
  const [fixed, frames, floor] = [
    published('rate-law-fixed'),
    published('rate-law-frames'),
    published('rate-law-floor'),
  ];
  const intervals = rows.flatMap(({ frameInterval }) => (typeof frameInterval === 'number' ? [frameInterval] : []));
  if (fixed === undefined || frames === undefined || intervals.length === 0) return [];
  const [least, most] = [Math.min(...intervals), Math.max(...intervals)];
  const from = unit === 'frames' ? least : 0;
  return Array.from({ length: 41 }, (_none, index) => {
    const frameInterval = from + ((most - from) * index) / 40;
    const ms = Math.max(fixed + frames * frameInterval, floor ?? 0);
    return { frameInterval, value: unit === 'frames' ? ms / frameInterval : ms };
  });
}
