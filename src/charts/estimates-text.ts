import type { Figure } from '../register/register.ts';
import type { EstimateRow, EstimatesInput } from './estimate-row.ts';

export interface EstimatesWords {
  readonly title: string;
  readonly description: string;
  readonly axisTitle: string;
}

/** The words of an estimates chart. Every number in them is a figure's own text. */
export function describeEstimates(
  { rows, title }: Pick<EstimatesInput, 'rows' | 'title'>,
  isBroken = false,
): EstimatesWords {
  const first = rows[0]?.figure;
  if (!first) throw new RangeError('an estimates chart has at least one row');
  const labels = new Set(rows.map(({ figure }) => figure.label));
  const quantity = labels.size === 1 ? first.label : 'Value';
  // a plain number has no unit to name, and some labels name theirs
  const unit = first.unit === '1' || quantity.endsWith(` ${first.unit}`) ? '' : first.unit;
  return {
    title: title ?? quantity,
    axisTitle: `${unit === '' ? quantity : `${quantity}, ${unit}`}${isBroken ? '; not from zero' : ''}`,
    description: [shown(rows, quantity, unit, isBroken), comparison(rows), ...withoutInterval(rows)].join(' '),
  };
}

function shown(rows: readonly EstimateRow[], quantity: string, unit: string, isBroken: boolean): string {
  const groups = new Set(rows.flatMap(({ group }) => group ?? []));
  const level = rows.find(({ figure }) => figure.interval)?.figure.interval?.level;
  const what =
    rows.length === 1
      ? 'one figure'
      : `${String(rows.length)} figures${groups.size > 1 ? ` in ${String(groups.size)} groups` : ''}`;
  const negative = rows.some(({ figure: { value, interval } }) => Math.min(value, interval?.low ?? value) < 0);
  const intervals = level === undefined ? '' : `, with ${percent(level)} intervals`;
  return `${quantity}${unit === '' ? '' : ` in ${unit}`}: ${what} as points on an axis that ${isBroken ? 'is broken and does not start at' : negative ? 'includes' : 'starts at'} zero${intervals}.`;
}

function comparison(rows: readonly EstimateRow[]): string {
  const [lowest, highest] = [extreme(rows, -1), extreme(rows, 1)];
  if (rows.length === 1) return `${named(highest)}.`;
  if (lowest.figure.value === highest.figure.value) return `All have the same value: ${lowest.figure.text}.`;
  const [a, b] = [lowest.figure.interval, highest.figure.interval];
  const overlap = a && b ? ` Their intervals ${a.high >= b.low ? 'overlap' : 'do not overlap'}.` : '';
  return `The lowest is ${named(lowest)}; the highest is ${named(highest)}.${overlap}`;
}

function withoutInterval(rows: readonly EstimateRow[]): string[] {
  const bare = rows.filter(({ figure }) => !figure.interval);
  return bare.length === 0 ? [] : [`Without an interval, drawn as open diamonds: ${bare.map(named).join('; ')}.`];
}

function named({ label, group, figure }: EstimateRow): string {
  return `${group === undefined ? '' : `${group}, `}${label}, at ${figure.text}`;
}

/** The first row with the lowest (−1) or highest (1) value. */
function extreme(rows: readonly EstimateRow[], sign: -1 | 1): EstimateRow {
  return rows.reduce((best, row) => (sign * row.figure.value > sign * best.figure.value ? row : best));
}

/** 0.95 → `95 %` */
export function percent(level: NonNullable<Figure['interval']>['level']): string {
  return `${String(Number((level * 100).toFixed(2)))} %`;
}
