/** The numbers that a chart shows, as rows: what its CSV holds and what its specification draws. */
import { renderCsv } from '../model/csv-text.ts';
import { intervalMs } from '../model/rate.ts';
import type { Session } from '../model/bench.ts';
import { describeCondition } from '../register/comparisons/describe-condition.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import type { PrecisionOfRig } from '../planning/precision-of-rig.ts';

export type Cell = string | number | null;
export type Row = Readonly<Record<string, Cell>>;

export type ChartKind = 'figures' | 'rate-law' | 'readings' | 'precision';

export interface ChartData {
  readonly kind: ChartKind;
  readonly rows: readonly Row[];
}

export interface DataSource extends Pick<Published, 'bench' | 'figure'> {
  readonly precision: ReadonlyMap<string, PrecisionOfRig>;
}

/** @param from ids of figures and paths of files, as the mark of the chart names them */
export function chartData(site: DataSource, from: readonly string[], title: string): ChartData {
  const { bench, figure, precision } = site;
  const figures = from.flatMap((id) => figure(id) ?? []);
  const session = bench.sessions.find(({ readingsFile }) => from.includes(readingsFile.path));
  if (session !== undefined)
    return { kind: 'readings', rows: [...readingRows(session), ...figures.map(figureRow(site))] };
  const rig = bench.rigs.find(({ file }) => from.includes(file.path));
  if (figures.length === 0 && rig !== undefined)
    return {
      kind: 'precision',
      rows: (precision.get(rig.id)?.lines ?? []).flatMap(({ way, points }) =>
        points.map(({ readings, halfWidth, text }) => ({ way, readings, halfWidth, unit: 'ms', text })),
      ),
    };
  if (figures.some(({ kind }) => kind === 'rate-law-frames')) {
    // Both charts of a law are from the same figures; each draws those of its unit, and the line.
    const drawn = / in frames$/.test(title) ? 'frames' : 'total';
    return {
      kind: 'rate-law',
      rows: figures.filter(({ kind }) => kind === drawn || kind.startsWith('rate-law')).map(figureRow(site)),
    };
  }
  return { kind: 'figures', rows: figures.map(figureRow(site)) };
}

function readingRows({ readings }: Session): readonly Row[] {
  return readings.map(({ run, latencyMs, excluded }, index) => ({
    row: 'reading',
    number: index + 1,
    run,
    value: latencyMs ?? null,
    unit: 'ms',
    excluded: excluded ?? '',
  }));
}

function figureRow({ bench }: DataSource) {
  return ({ id, label, of, unit, value, interval, limits, standardUncertainty, readings, runs, text }: Figure): Row => {
    const session = bench.sessions.find((each) => each.id === of['session']);
    return {
      row: 'figure',
      id,
      label,
      body: session === undefined ? '' : (bench.bodies.find((body) => body.id === session.body)?.name ?? ''),
      condition: session === undefined ? '' : describeCondition(bench, session),
      rig: session === undefined ? '' : (bench.rigs.find((rig) => rig.id === session.rig)?.name ?? ''),
      frameInterval: session === undefined ? null : intervalMs(session.rate),
      unit,
      value,
      low: interval?.low ?? limits?.low ?? null,
      high: interval?.high ?? limits?.high ?? null,
      level: interval?.level ?? null,
      standardUncertainty: standardUncertainty ?? null,
      readings,
      runs,
      text,
    };
  };
}

/** RFC 4180. Columns in the order in which they first come; a row without one has an empty cell. */
export function renderRows(rows: readonly Row[]): string {
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return renderCsv(
    columns,
    rows.map((row) => columns.map((column) => String(row[column] ?? ''))),
    '\r\n',
  );
}
