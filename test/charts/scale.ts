/** Scales as a reader takes them: from the tick labels to the marks beside them. */
import { attribute, textContent, walk } from './svg.ts';

/** How far rounding can move a place: two decimals are kept of each translation, and up to four add up. */
export const PX = 0.05;

/** From a place to the value there, by the first and last label of vega's horizontal (0) or vertical (1) axis. */
export function axisScale(
  svg: string,
  axis: 'x' | 'y',
  transform: (value: number) => number = (value) => value,
): (px: number) => number {
  const labels = walk(svg).flatMap(({ x, y, element }) => {
    const group = element.parentNode && 'attrs' in element.parentNode ? attribute(element.parentNode, 'class') : '';
    if (element.tagName !== 'text' || !group?.includes('role-axis-label')) return [];
    const isX = attribute(element, 'text-anchor') === 'middle';
    // vega sets labels beside a vertical axis 0.3 em lower, so that their middle is at the tick
    const px = isX ? x : y - 4;
    return isX === (axis === 'x') ? [{ value: transform(Number(textContent(element).replace('−', '-'))), px }] : [];
  });
  const [first, last] = [labels[0], labels.at(-1)];
  if (!first || !last || first === last) throw new Error(`the ${axis} axis has two ticks or more`);
  return (px) => first.value + ((px - first.px) * (last.value - first.value)) / (last.px - first.px);
}
