/** `data/variation.yaml` as text: a list of sizes a line, a session a line, so that it reads well in a diff. */
import { Document, isMap, visit } from 'yaml';
import type { StatedLevels, StatedSizes, VariationStatement } from '../model/variation-statement.ts';

const HEAD = ` How delays vary on this bench: sizes with their weights. npm run variation learns them anew and writes this file.
 change: standard deviation as a fraction of the body's frame interval; step: probability of a whole frame more.`;
const DIGITS = 4;

export function renderVariation(statement: VariationStatement): string {
  const { reading, bodies, others, sessions, ...rest } = statement;
  const document = new Document({
    ...rest,
    reading: { jitter: written(reading.jitter), repeat: written(reading.repeat), misread: written(reading.misread) },
    bodies: byName(bodies, writtenLevels),
    others: writtenLevels(others),
    sessions: byName(sessions, (digest) => digest),
  });
  document.commentBefore = HEAD;
  // a list of sizes holds numbers alone, and stands on one line
  visit(document, {
    Map(_key, node) {
      if (node.items.length > 0 && node.items.every(({ value }) => !isMap(value) && isNumber(value))) node.flow = true;
    },
  });
  return document.toString({ lineWidth: 0 });
}

function isNumber(value: unknown): boolean {
  return typeof (value as { value?: unknown }).value === 'number';
}

function writtenLevels({ clip, day }: StatedLevels): unknown {
  return {
    clip: { change: written(clip.change), step: written(clip.step) },
    day: { change: written(day.change), step: written(day.step) },
  };
}

/** Weights rounded so that they still sum to 1: what rounding left goes to the greatest. */
function written(sizes: StatedSizes): Map<number, number> {
  const unit = 10 ** -DIGITS;
  const rounded = sizes.map(({ size, weight }) => ({ size, units: Math.round(weight / unit) }));
  const greatest = rounded.reduce((a, b) => (b.units > a.units ? b : a));
  greatest.units += Math.round(1 / unit) - rounded.reduce((sum, { units }) => sum + units, 0);
  return new Map(rounded.map(({ size, units }) => [size, Number((units * unit).toFixed(DIGITS))]));
}

function byName<T>(record: Readonly<Record<string, T>>, write: (value: T) => unknown): Map<string, unknown> {
  return new Map(
    Object.entries(record)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, value]) => [name, write(value)]),
  );
}
