import { describe, expect, it } from 'vitest';
import { renderDifferences } from '../../src/charts/differences.ts';
import { DIFFERENCES, figure } from './examples.ts';
import { axisScale } from './scale.ts';
import { attribute, marksOf, textsOf } from './svg.ts';

const VARIANTS = ['wide', 'narrow'] as const;

describe('a differences chart', () => {
  it.each(Object.entries(DIFFERENCES))(
    'shades the margin from end to end, about the zero line (%s)',
    async (_name, input) => {
      const chart = await renderDifferences({ id: 'chart', ...input });
      for (const variant of VARIANTS) {
        const valueAt = axisScale(chart[variant], 'x');
        const shaded = marksOf(chart[variant], 'shaded');
        expect(shaded.length > 0).toBe(input.margin !== undefined);
        for (const { x, element } of shaded) {
          const [, left, width] = /^M(-?[\d.]+),-?[\d.]+h([\d.]+)v/.exec(attribute(element, 'd') ?? '') ?? [];
          expect(valueAt(x + Number(left))).toBeCloseTo(-(input.margin?.halfWidth ?? NaN), 1);
          expect(valueAt(x + Number(left) + Number(width))).toBeCloseTo(input.margin?.halfWidth ?? NaN, 1);
        }
        const zero = marksOf(chart[variant], 'zero');
        expect(zero.length).toBeGreaterThan(0);
        for (const { x } of zero) expect(valueAt(x)).toBeCloseTo(0, 1);
        if (input.margin)
          expect(textsOf(chart[variant]).map(({ text }) => text)).toContain(
            `Shaded: less than ${input.margin.text} either way.`,
          );
      }
    },
  );

  it('counts the intervals that leave out zero, and those within the margin', async () => {
    const rows = [
      [0.5, 1],
      [4, 1],
      [20, 3],
      [-20, 3],
    ].map(([value = NaN, half = NaN], i) => ({ label: String(i), figure: figure(value, half) }));
    const { description } = await renderDifferences({ id: 'chart', rows, margin: { halfWidth: 5.5, text: '5.5 ms' } });
    expect(description).toContain('on an axis that includes zero');
    expect(description).toContain(
      'Intervals that leave out zero: 3 of 4. Intervals wholly within the shaded margin of 5.5 ms either way: 2 of 4.',
    );
  });

  it.each([0, -1, NaN])('refuses a margin of %d', async (halfWidth) => {
    const chart = renderDifferences({
      id: 'chart',
      rows: [{ label: 'a', figure: figure(1, 1) }],
      margin: { halfWidth, text: 'none' },
    });
    await expect(chart).rejects.toThrow(
      new RangeError(`chart 'chart': a margin is wider than zero, not ${String(halfWidth)}`),
    );
  });
});
