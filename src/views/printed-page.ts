/**
 * A page's view as text: all that the page prints, and nothing else reaches it. The page is printed from this text, and
 * the digest of it says whether the page that was printed before still holds.
 */
import type { Figure, PrintedFigure } from '../register/register.ts';

/** What the route of a page is handed. */
export interface PageProps {
  readonly text: () => string;
}

/** The view as JSON; of a figure, what pages print. Throws a TypeError for what JSON would drop or change in silence. */
export function printView(view: unknown): string {
  return JSON.stringify(view, function (this: unknown, key, value: unknown) {
    if (isFigure(value)) return printedFigure(value);
    // A day is text by now, and a key without a value is as good as none.
    const held = (this as Readonly<Record<string, unknown>>)[key];
    if (isLost(held) && (held !== undefined || Array.isArray(this)))
      throw new TypeError(`a page's view holds '${key}', which is no plain data: ${String(held)}`);
    return value;
  });
}

/** The view that a page was handed. */
export function readPage<View>({ text }: PageProps): View {
  return JSON.parse(text()) as View;
}

function isFigure(value: unknown): value is Figure {
  return typeof value === 'object' && value !== null && 'sources' in value && 'entry' in value && 'text' in value;
}

function printedFigure(figure: Figure): PrintedFigure {
  const { id, unit, value, interval, limits, readings, runs, excluded, text, label, entry } = figure;
  return {
    id,
    unit,
    value,
    ...(interval && { interval }),
    ...(limits && { limits }),
    readings,
    runs,
    excluded,
    text,
    label,
    entry,
  };
}

function isLost(value: unknown): boolean {
  if (typeof value === 'number') return !Number.isFinite(value);
  if (typeof value !== 'object') return ['undefined', 'function', 'bigint', 'symbol'].includes(typeof value);
  return value !== null && !Array.isArray(value) && ![Object.prototype, null].includes(Object.getPrototypeOf(value));
}
