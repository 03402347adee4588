import { beforeAll, describe, expect, it } from 'vitest';
import type { Chart } from '../../src/charts/chart.ts';
import { GALLERY } from './examples.ts';
import { attribute, overlaps, rootOf, textContent, textsOf, viewBoxOf, walk } from './svg.ts';

const NAMES = Object.keys(GALLERY);
const draw = (name: string): Promise<Chart> => GALLERY[name]?.(name) ?? Promise.reject(new Error(name));
/** What rounding to two decimals can move. */
const ROUNDING = 0.02;

let charts: ReadonlyMap<string, Chart>;
// a warning of vega's rejects, so drawing them all is itself a check
beforeAll(async () => {
  charts = new Map(await Promise.all(NAMES.map(async (name) => [name, await draw(name)] as const)));
});
const drawings = (name: string): [string, string][] => {
  const chart = charts.get(name);
  if (!chart) throw new Error(name);
  return [
    ['wide', chart.wide],
    ['narrow', chart.narrow],
  ];
};

describe.each(NAMES)('%s', (name) => {
  it('holds no NaN, undefined or Infinity', () => {
    for (const [, svg] of drawings(name)) expect(svg).not.toMatch(/NaN|undefined|Infinity|null/);
  });

  it('keeps every text inside the drawing', () => {
    for (const [variant, svg] of drawings(name)) {
      const box = viewBoxOf(svg);
      const texts = textsOf(svg);
      expect(texts.length, variant).toBeGreaterThan(2);
      const outside = texts.filter(
        ({ left, right, top, bottom }) =>
          left < box.left - ROUNDING ||
          right > box.right + ROUNDING ||
          top < box.top - ROUNDING ||
          bottom > box.bottom + ROUNDING,
      );
      expect(outside, variant).toEqual([]);
    }
  });

  it('lets no two texts overlap', () => {
    for (const [variant, svg] of drawings(name)) {
      const texts = textsOf(svg);
      const pairs = texts.flatMap((a, i) =>
        texts
          .slice(i + 1)
          .filter((b) => overlaps(a, b))
          .map((b) => `${a.text} / ${b.text}`),
      );
      expect(pairs, variant).toEqual([]);
    }
  });

  it('draws text at 12 px or more where its column is 320 or 640 px wide', () => {
    for (const [variant, svg] of drawings(name)) {
      const column = variant === 'wide' ? 640 : 320;
      const { right } = viewBoxOf(svg);
      const sizes = walk(svg).flatMap(({ element }) => attribute(element, 'font-size') ?? []);
      expect(sizes.length).toBeGreaterThan(0);
      for (const size of sizes) expect((Number.parseFloat(size) * column) / right).toBeGreaterThanOrEqual(12);
    }
  });

  it('is an image with a title and a description, and has no role inside', () => {
    const chart = charts.get(name);
    for (const [, svg] of drawings(name)) {
      const root = rootOf(svg);
      expect(attribute(root, 'role')).toBe('img');
      const labels = (attribute(root, 'aria-labelledby') ?? '')
        .split(' ')
        .map((id) => walk(svg).find(({ element }) => attribute(element, 'id') === id)?.element);
      expect(labels.map((element) => element?.tagName)).toEqual(['title', 'desc']);
      expect(labels.map((element) => element && textContent(element))).toEqual([chart?.title, chart?.description]);
      const [, ...inner] = walk(svg);
      expect(
        inner
          .flatMap(({ element }) => element.attrs.map(({ name }) => name))
          .filter((name) => name === 'role' || name.startsWith('aria-')),
      ).toEqual([]);
    }
  });

  it('names colours only through the properties of the page', () => {
    for (const [, svg] of drawings(name)) {
      const colours = walk(svg).flatMap(({ element }) =>
        ['fill', 'stroke'].flatMap((paint) => attribute(element, paint) ?? []),
      );
      expect(colours.length).toBeGreaterThan(0);
      expect(
        colours.filter((colour) => !/^(?:none|currentColor|var\(--[a-z0-9-]+, (?:currentColor|#ccc)\))$/.test(colour)),
      ).toEqual([]);
    }
  });

  it('is the same when drawn again, alone', async () => {
    expect(await draw(name)).toEqual(charts.get(name));
  });
});

describe('the charts of one page', () => {
  it('share no id', () => {
    const ids = NAMES.flatMap((name) =>
      drawings(name).flatMap(([, svg]) => walk(svg).flatMap(({ element }) => attribute(element, 'id') ?? [])),
    );
    expect(ids.length).toBeGreaterThanOrEqual(4 * NAMES.length);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  });

  it('do not depend on the order in which they are drawn', async () => {
    const backwards = new Map<string, Chart>();
    for (const name of [...NAMES].reverse()) backwards.set(name, await draw(name));
    for (const name of NAMES) expect(backwards.get(name), name).toEqual(charts.get(name));
  });
});
