import { describe, expect, it } from 'vitest';
import type { TopLevelSpec } from 'vega-lite';
import { type Drawing, renderSvg } from '../../src/charts/render.ts';
import { attribute, rootOf, walk } from './svg.ts';

/** Clipping makes vega write an id, a gradient another. */
const CLIPPED: TopLevelSpec = {
  width: 10,
  height: 10,
  data: { name: 'rows' },
  mark: {
    type: 'point',
    clip: true,
    fill: {
      gradient: 'linear',
      stops: [
        { offset: 0, color: 'red' },
        { offset: 1, color: 'blue' },
      ],
    },
  },
  encoding: { x: { field: 'a', type: 'quantitative', scale: { domain: [0, 1] } } },
};
const drawing = (over: Partial<Drawing> = {}): Drawing => ({
  spec: CLIPPED,
  data: { rows: [{ a: 0.123456 }, { a: 1 }] },
  params: {},
  width: 100,
  height: 50,
  padding: { left: 5, right: 6, top: 7, bottom: 8 },
  ...over,
});
const words = (id: string) => ({ id, className: 'chart-wide', title: 'T', description: 'D' });

describe('renderSvg', () => {
  it('gives every id the prefix of its drawing, and points each reference at it', async () => {
    const svg = await renderSvg(drawing(), words('one'));
    const ids = walk(svg).flatMap(({ element }) => attribute(element, 'id') ?? []);
    const references = [...svg.matchAll(/url\(#([^)]+)\)/g)].map(([, id]) => id);
    expect(ids.length).toBeGreaterThanOrEqual(4);
    expect(ids.every((id) => id.startsWith('one-'))).toBe(true);
    expect(references.length).toBeGreaterThanOrEqual(2);
    expect(references.filter((id) => id === undefined || !ids.includes(id))).toEqual([]);
  });

  it('gives the same bytes whatever was drawn before or meanwhile', async () => {
    const alone = await renderSvg(drawing(), words('one'));
    const [, again] = await Promise.all([
      renderSvg(drawing(), words('two')),
      renderSvg(drawing(), words('one')),
      renderSvg(drawing(), words('three')),
    ]);
    expect(again).toBe(alone);
  });

  it('takes its size from the drawing, and keeps two decimals', async () => {
    const svg = await renderSvg(drawing(), words('one'));
    expect(attribute(rootOf(svg), 'viewBox')).toBe('0 0 111 65');
    expect(svg).toContain('translate(12.35,');
    expect(svg).not.toMatch(/(?:d|transform|[xy][12]?)="[^"]*\.\d{3}/);
  });

  it('leaves the rows as they were', async () => {
    const rows = [Object.freeze({ a: 0.5 })];
    await renderSvg(drawing({ data: { rows } }), words('one'));
    expect(Reflect.ownKeys(rows[0] ?? {})).toEqual(['a']);
  });

  it('rejects what vega only warns of, and draws on', async () => {
    const spec = { ...CLIPPED, encoding: { x: { field: 'a', type: 'quantitative' } } } as TopLevelSpec;
    await expect(renderSvg(drawing({ spec, data: { rows: [] } }), words('one'))).rejects.toThrow(
      /^chart 'one': warning: Infinite extent/,
    );
    await expect(renderSvg(drawing(), words('one'))).resolves.toContain('<svg');
  });

  it('rejects a specification that vega-lite warns of, each time', async () => {
    const spec = {
      ...CLIPPED,
      encoding: { x: { field: 'a', type: 'quantitative', scale: { domain: [0, 1], paddingInner: 0.1 } } },
    } as TopLevelSpec;
    await expect(renderSvg(drawing({ spec }), words('one'))).rejects.toThrow(/^chart 'one': warning: /);
    await expect(renderSvg(drawing({ spec }), words('one'))).rejects.toThrow(/^chart 'one': warning: /);
  });

  it('reads no file and no address', async () => {
    const spec = { ...CLIPPED, data: { url: 'package.json' } } as TopLevelSpec;
    await expect(renderSvg(drawing({ spec, data: {} }), words('one'))).rejects.toThrow(
      /a chart reads no files, not even package\.json|package\.json/,
    );
  });
});
