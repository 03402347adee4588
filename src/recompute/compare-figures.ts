/** Published figures set beside recomputed ones, to the last digit. */
import type { Figure } from '../register/register.ts';

export interface FigureComparison {
  readonly id: string;
  readonly published: Figure | undefined;
  readonly recomputed: Figure | undefined;
  /** What the two state differently: `value`, `interval.low`, `components.2.share`; none where they are identical. */
  readonly differing: readonly string[];
}

/** Where a figure stands and what it is called there depends on what else is published, and is no part of its value. */
const PLACE: readonly string[] = ['entry', 'group', 'label', 'inWords', 'own'];

export function compareFigures(
  published: readonly Figure[],
  recomputed: readonly Figure[],
): readonly FigureComparison[] {
  const before = new Map(published.map((figure) => [figure.id, figure]));
  return recomputed.map((figure) => {
    const other = before.get(figure.id);
    return { id: figure.id, published: other, recomputed: figure, differing: differing(other, figure) };
  });
}

function differing(published: Figure | undefined, recomputed: Figure): readonly string[] {
  if (published === undefined) return ['the figure itself'];
  // As JSON states them: what is not there and what is undefined are the same.
  const plain = (figure: Figure): unknown =>
    JSON.parse(JSON.stringify(figure, (key, value: unknown) => (PLACE.includes(key) ? undefined : value)));
  return differences(plain(published), plain(recomputed), '');
}

function differences(a: unknown, b: unknown, path: string): readonly string[] {
  if (a === b) return [];
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return [path];
  const [left, right] = [a, b] as Readonly<Record<string, unknown>>[];
  const keys = new Set([...Object.keys(left ?? {}), ...Object.keys(right ?? {})]);
  return [...keys].flatMap((key) => differences(left?.[key], right?.[key], path === '' ? key : `${path}.${key}`));
}
