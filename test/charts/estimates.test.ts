import { describe, expect, it } from 'vitest';
import { type EstimateRow, renderEstimates } from '../../src/charts/estimates.ts';
import { ESTIMATES, figure } from './examples.ts';
import { axisScale, PX } from './scale.ts';
import { attribute, marksOf, numberAttribute, textsOf } from './svg.ts';

const VARIANTS = ['wide', 'narrow'] as const;
const draw = (rows: readonly EstimateRow[]) => renderEstimates({ id: 'chart', rows });
const scaleOf = (svg: string) => axisScale(svg, 'x');

describe('an estimates chart', () => {
  it.each(Object.entries(ESTIMATES))('draws points and intervals where its axis says (%s)', async (_name, rows) => {
    const chart = await draw(rows);
    for (const variant of VARIANTS) {
      const svg = chart[variant];
      const valueAt = scaleOf(svg);
      const tolerance = Math.abs(valueAt(PX) - valueAt(0));
      const drawn = rows.filter(({ figure }) => figure.interval);
      const points = marksOf(svg, 'points').map(({ x }) => valueAt(x));
      const intervals = marksOf(svg, 'intervals').map(({ x, element }) => [
        valueAt(x),
        valueAt(x + numberAttribute(element, 'x2')),
      ]);
      // each end is a bar 1.5 px wide, drawn from its left edge
      const ends = marksOf(svg, 'ends').map(({ x, element }) =>
        valueAt(x + Number(/^M(-?[\d.]+),/.exec(attribute(element, 'd') ?? '')?.[1]) + 0.75),
      );
      expect([points.length, intervals.length, ends.length]).toEqual([drawn.length, drawn.length, 2 * drawn.length]);
      drawn.forEach(({ figure: { value, interval } }, i) => {
        expect(Math.abs((points[i] ?? NaN) - value)).toBeLessThan(tolerance);
        expect(Math.abs((intervals[i]?.[0] ?? NaN) - (interval?.low ?? NaN))).toBeLessThan(tolerance);
        expect(Math.abs((intervals[i]?.[1] ?? NaN) - (interval?.high ?? NaN))).toBeLessThan(tolerance);
        expect(Math.abs((ends[2 * i] ?? NaN) - (interval?.low ?? NaN))).toBeLessThan(tolerance);
        expect(Math.abs((ends[2 * i + 1] ?? NaN) - (interval?.high ?? NaN))).toBeLessThan(tolerance);
      });
    }
  });

  it.each(Object.entries(ESTIMATES))('has zero on its axis (%s)', async (_name, rows) => {
    const chart = await draw(rows);
    for (const variant of VARIANTS) {
      const svg = chart[variant];
      const zero = marksOf(svg, 'zero');
      expect(zero.length).toBeGreaterThan(0);
      const valueAt = scaleOf(svg);
      for (const { x } of zero) expect(Math.abs(valueAt(x))).toBeLessThan(Math.abs(valueAt(PX) - valueAt(0)));
      expect(textsOf(svg).some(({ text }) => Number(text) === 0)).toBe(true);
    }
  });

  it.each(Object.entries(ESTIMATES))(
    'prints every published text whole, and every word of every label (%s)',
    async (_name, rows) => {
      const chart = await draw(rows);
      for (const variant of VARIANTS) {
        const texts = textsOf(chart[variant]).map(({ text }) => text);
        for (const { figure } of rows) expect(texts).toContain(figure.text);
        const letters = texts.join('').replace(/\s/g, '');
        for (const { label, group = '' } of rows) {
          // in both variants the lines of a label follow each other
          expect(letters).toContain(label.replace(/\s/g, ''));
          expect(letters).toContain(group.replace(/\s/g, ''));
        }
      }
    },
  );

  it('has the range of its figures where one from zero would be blank for the better half, and marks the break', async () => {
    const rows = [
      { label: 'One day', figure: figure(251, 6) },
      { label: 'Another', figure: figure(244, 9) },
    ];
    const chart = await renderEstimates({ id: 'chart', rows, ownRange: true });
    for (const variant of VARIANTS) {
      const svg = chart[variant];
      expect(marksOf(svg, 'zero')).toHaveLength(0);
      expect(marksOf(svg, 'breaks').length).toBeGreaterThan(0);
      const valueAt = scaleOf(svg);
      const tolerance = Math.abs(valueAt(PX) - valueAt(0));
      for (const { x } of marksOf(svg, 'breaks')) expect(valueAt(x)).toBeLessThan(244 - 9 + tolerance);
      marksOf(svg, 'points').forEach(({ x }, i) =>
        expect(Math.abs(valueAt(x) - (rows[i]?.figure.value ?? NaN))).toBeLessThan(tolerance),
      );
      expect(
        textsOf(svg)
          .map(({ text }) => text)
          .join(' '),
      ).toMatch(/; not from zero$/);
    }
    expect(chart.description).toContain('on an axis that is broken and does not start at zero');
    const near = await renderEstimates({ id: 'chart', rows: [{ label: 'a', figure: figure(9, 6) }], ownRange: true });
    expect(marksOf(near.wide, 'zero').length).toBeGreaterThan(0);
    expect(marksOf(near.wide, 'breaks')).toHaveLength(0);
  });

  it('marks a figure without an interval by another shape, and says so', async () => {
    const chart = await draw([
      { label: 'One reading', figure: figure(251, undefined) },
      { label: 'Ten', figure: figure(244, 9) },
    ]);
    for (const variant of VARIANTS) {
      expect(marksOf(chart[variant], 'bare')).toHaveLength(1);
      expect(marksOf(chart[variant], 'points')).toHaveLength(1);
    }
    expect(chart.description).toContain('Without an interval, drawn as open diamonds: One reading, at 251.0 ms.');
  });

  it('shows the ends of an interval narrower than its point', async () => {
    const chart = await draw([{ label: 'Light sensor', figure: figure(210.5, 0.012) }]);
    const heights = marksOf(chart.wide, 'ends').map(({ element }) =>
      Number(/v([\d.]+)h/.exec(element.attrs.find(({ name }) => name === 'd')?.value ?? '')?.[1]),
    );
    const radius = marksOf(chart.wide, 'points').map(({ element }) =>
      Number(/^M([\d.]+),0A/.exec(element.attrs.find(({ name }) => name === 'd')?.value ?? '')?.[1]),
    );
    expect(heights).toHaveLength(2);
    for (const height of heights) expect(height / 2).toBeGreaterThan((radius[0] ?? NaN) + 1.5);
  });

  it.each([
    [
      'one figure',
      [{ label: 'UHD 25p', figure: figure(300.8, 8.8) }],
      'Total latency in ms: one figure as points on an axis that starts at zero, with 95 % intervals. UHD 25p, at 300.8 ± 8.8 ms.',
    ],
    [
      'two apart',
      [
        { label: 'Off', figure: figure(100, 5) },
        { label: 'On', figure: figure(140, 5), group: 'Vennick Q4' },
      ],
      'Total latency in ms: 2 figures as points on an axis that starts at zero, with 95 % intervals. The lowest is Off, at 100.0 ± 5.0 ms; the highest is Vennick Q4, On, at 140.0 ± 5.0 ms. Their intervals do not overlap.',
    ],
    [
      'two that overlap, below zero',
      [
        { label: 'Off', figure: figure(-3, 5) },
        { label: 'On', figure: figure(4, 5) },
      ],
      'Total latency in ms: 2 figures as points on an axis that includes zero, with 95 % intervals. The lowest is Off, at −3.0 ± 5.0 ms; the highest is On, at 4.0 ± 5.0 ms. Their intervals overlap.',
    ],
  ])('describes %s', async (_case, rows: EstimateRow[], description) => {
    expect((await draw(rows)).description).toBe(description);
  });

  it('prints markup in a label as text', async () => {
    const label = '<script>alert("x")</script>';
    const chart = await renderEstimates({
      id: 'chart',
      title: label,
      rows: [{ label, group: label, figure: figure(1, 1) }],
    });
    for (const variant of VARIANTS) {
      expect(chart[variant]).not.toMatch(/<script/i);
      expect(textsOf(chart[variant]).filter(({ text }) => text === label)).toHaveLength(2);
    }
  });

  it.each([
    ['no rows', [], "chart 'chart' has no figures: give it at least one"],
    [
      'two units',
      [
        { label: 'a', figure: figure(1, 1) },
        { label: 'b', figure: figure(1, 1, { unit: 'frames' }) },
      ],
      "chart 'chart' mixes the units ms, frames: one axis has one unit",
    ],
    [
      'two coverages',
      [
        { label: 'a', figure: figure(1, 1) },
        { label: 'b', figure: figure(1, 1, { interval: { low: 0, high: 2, level: 0.9 } }) },
      ],
      "chart 'chart' mixes intervals of 0.95, 0.9: use one coverage",
    ],
    ['a figure that is not finite', [{ label: 'a', figure: figure(NaN, 1) }], "chart 'chart': row 'a' is not finite"],
  ])('refuses %s', async (_case, rows: EstimateRow[], message) => {
    await expect(draw(rows)).rejects.toThrow(new RangeError(message));
  });

  it('refuses an id that would need escaping', async () => {
    await expect(renderEstimates({ id: 'a"b', rows: [{ label: 'a', figure: figure(1, 1) }] })).rejects.toThrow(
      "chart id 'a\"b-wide'",
    );
  });
});
