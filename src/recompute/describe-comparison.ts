import { plural } from '../register/provenance.ts';
import type { Figure } from '../register/register.ts';
import { describeSignificant } from '../register/text.ts';
import type { FigureComparison } from './compare-figures.ts';

/** What a reader is told: that all is identical, or each figure that is not, and in what. */
export function describeComparison(compared: readonly FigureComparison[]): string {
  const differing = compared.filter((each) => each.differing.length > 0);
  if (compared.length === 0) return 'There was nothing to compare.';
  const identical = compared.length - differing.length;
  return [
    ...(identical === 0 ? [] : [`${plural(identical, 'figure')} identical to the last digit.`]),
    ...differing.map(describeOne),
  ].join('\n');
}

function describeOne({ id, published, recomputed, differing }: FigureComparison): string {
  if (published === undefined) return `${id}: ${recomputed?.text ?? ''}; not published`;
  return `${id}: published ${published.text}, recomputed ${recomputed?.text ?? 'not at all'}; differs in ${fieldsOf(differing)}`;
}

/** `value, interval, files`: the fields of a figure, whatever is different within them. */
function fieldsOf(differing: readonly string[]): string {
  return [...new Set(differing.map((path) => path.split('.')[0]))]
    .map((field) => (field === 'sources' ? 'files' : field))
    .join(', ');
}

/** Every digit of a figure's value and interval, as the register states them. */
export function exactly(figure: Figure | undefined): string {
  if (figure === undefined || figure.verdict !== undefined) return '';
  const { value, interval } = figure;
  return interval === undefined ? String(value) : `${value}, ${interval.low} to ${interval.high}`;
}

/** How far a change of assumptions moves a value: `moved by −12 ms`. */
export function describeMove(before: Figure | undefined, after: Figure | undefined): string {
  if (before === undefined || after === undefined) return '';
  const by = after.value - before.value;
  if (by === 0) return before.text === after.text ? 'as before' : 'same value';
  return `moved by ${by < 0 ? '' : '+'}${describeSignificant(by, 2, before.unit)}`;
}
