/** Reads drawings back from their SVG text: where texts and marks really stand, in the units of the viewBox. */
import { type DefaultTreeAdapterTypes, parseFragment } from 'parse5';
import { textWidth } from '../../src/charts/text-width.ts';

type Element = DefaultTreeAdapterTypes.Element;

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface DrawnText extends Box {
  readonly text: string;
  readonly baseline: number;
}

export interface DrawnMark {
  /** Of the element itself, by the transforms around it. */
  readonly x: number;
  readonly y: number;
  readonly element: Element;
}

/** Source Sans 3: height of a digit or capital over the baseline, and depth of a `p`, in em (from memory). */
const ASCENT = 0.66;
const DESCENT = 0.2;

export function rootOf(svg: string): Element {
  const [root, ...rest] = parseFragment(svg).childNodes;
  if (!root || rest.length > 0 || !('tagName' in root) || root.tagName !== 'svg')
    throw new Error('not one svg element');
  return root;
}

/** What a group around an element says of these holds for the element, too (SVG 2, appendix F). */
const INHERITED = new Set(['fill', 'stroke', 'stroke-dasharray', 'font-size', 'font-weight', 'text-anchor']);

export function attribute(element: Element, name: string): string | undefined {
  const own = element.attrs.find((candidate) => candidate.name === name)?.value;
  const { parentNode } = element;
  if (own !== undefined || !INHERITED.has(name) || parentNode === null || !('attrs' in parentNode)) return own;
  return attribute(parentNode, name);
}

export function numberAttribute(element: Element, name: string): number {
  const value = Number(attribute(element, name) ?? NaN);
  if (!Number.isFinite(value)) throw new Error(`${element.tagName} has no number ${name}`);
  return value;
}

export function viewBoxOf(svg: string): Box {
  const [left = NaN, top = NaN, width = NaN, height = NaN] = (attribute(rootOf(svg), 'viewBox') ?? '')
    .split(' ')
    .map(Number);
  return { left, top, right: left + width, bottom: top + height };
}

/** Every element, in document order, with the sum of the translations around and on it. */
export function walk(svg: string): DrawnMark[] {
  const found: DrawnMark[] = [];
  const visit = (element: Element, x0: number, y0: number) => {
    const transform = attribute(element, 'transform');
    const [, dx = '0', dy = '0'] =
      transform === undefined ? [] : (/^translate\((-?[\d.]+),(-?[\d.]+)\)$/.exec(transform) ?? fail(transform));
    const [x, y] = [x0 + Number(dx), y0 + Number(dy)];
    found.push({ x, y, element });
    for (const child of element.childNodes) if ('tagName' in child) visit(child, x, y);
  };
  visit(rootOf(svg), 0, 0);
  return found;
}

export function textsOf(svg: string): DrawnText[] {
  return walk(svg).flatMap(({ x, y, element }) => {
    if (element.tagName !== 'text') return [];
    const text = textContent(element);
    const size = Number.parseFloat(attribute(element, 'font-size') ?? fail('text without a size'));
    const width = textWidth(text, size, Number(attribute(element, 'font-weight') ?? 400));
    const anchor = attribute(element, 'text-anchor') ?? 'start';
    const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x;
    return [{ text, left, right: left + width, baseline: y, top: y - ASCENT * size, bottom: y + DESCENT * size }];
  });
}

/** The marks of one named layer. A layer of lines has one group for each line. */
export function marksOf(svg: string, name: string): DrawnMark[] {
  const all = walk(svg);
  const groups = all
    .map(({ element }) => element)
    .filter((element) => attribute(element, 'class')?.split(' ').includes(`${name}_marks`));
  return all.filter(({ element }) => groups.some((group) => group === element.parentNode));
}

export function overlaps(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

export function textContent(element: Element): string {
  return element.childNodes
    .map((child) => ('value' in child ? child.value : 'tagName' in child ? textContent(child) : ''))
    .join('');
}

function fail(what: string): never {
  throw new Error(`cannot read ${what}`);
}
