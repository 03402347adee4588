import { describe, expect, it } from 'vitest';
import { renderPrecision, type PrecisionInput } from '../../src/charts/precision.ts';
import { PRECISIONS } from './examples.ts';
import { axisScale } from './scale.ts';
import { attribute, marksOf, textsOf } from './svg.ts';

const VARIANTS = ['wide', 'narrow'] as const;
const draw = (input: Omit<PrecisionInput, 'id'>) => renderPrecision({ id: 'chart', ...input });

describe('a precision chart', () => {
  it.each(Object.entries(PRECISIONS))(
    'draws each line through its points, on a logarithmic and a zero-based axis (%s)',
    async (_name, input) => {
      const chart = await draw(input);
      for (const variant of VARIANTS) {
        const [logReadingsAt, halfWidthAt] = [
          axisScale(chart[variant], 'x', Math.log10),
          axisScale(chart[variant], 'y'),
        ];
        expect(textsOf(chart[variant]).filter(({ text }) => text === '0')).toHaveLength(1);
        const lines = marksOf(chart[variant], 'lines');
        expect(lines).toHaveLength(input.lines.length);
        lines.forEach(({ x, y, element }, i) => {
          const corners = [...(attribute(element, 'd') ?? '').matchAll(/(-?[\d.]+),(-?[\d.]+)/g)];
          const points = input.lines[i]?.points ?? [];
          expect(corners).toHaveLength(points.length);
          corners.forEach(([, dx, dy], k) => {
            expect(10 ** logReadingsAt(x + Number(dx)) / (points[k]?.readings ?? NaN)).toBeCloseTo(1, 2);
            expect(halfWidthAt(y + Number(dy))).toBeCloseTo(points[k]?.halfWidth ?? NaN, 1);
          });
        });
        // a mark at each point, and each mark of the axis at one of them
        expect(marksOf(chart[variant], 'points')).toHaveLength(
          input.lines.reduce((sum, { points }) => sum + points.length, 0),
        );
        const words = textsOf(chart[variant]).map(({ text }) => text);
        expect(words).toContain('number of readings, logarithmic');
        const counts = new Set(input.lines.flatMap(({ points }) => points.map(({ readings }) => String(readings))));
        expect(words.filter((word) => counts.has(word)).length).toBeGreaterThan(1);
        // told apart in greyscale: no two neighbours share their dashes
        const dashes = lines.map(({ element }) => attribute(element, 'stroke-dasharray'));
        dashes.forEach((dash, i) => expect(i > 0 && dash === dashes[i - 1]).toBe(false));
      }
    },
  );

  it.each(Object.entries(PRECISIONS))('names every line (%s)', async (_name, input) => {
    const chart = await draw(input);
    for (const variant of VARIANTS) {
      const words = textsOf(chart[variant])
        .map(({ text }) => text)
        .join(' ');
      expect(input.lines.filter(({ label }) => !words.includes(label))).toEqual([]);
    }
  });

  const point = (readings: number, halfWidth: number) => ({ readings, halfWidth, text: '' });
  it.each([
    ['no lines', [], "chart 'chart' has no lines: give it at least one"],
    ['one point', [{ label: 'a', points: [point(1, 1)] }], "chart 'chart': the line 'a' needs two points or more"],
    [
      'no reading',
      [{ label: 'a', points: [point(0, 1), point(1, 1)] }],
      "chart 'chart': the line 'a' needs finite half-widths and at least one reading at each point",
    ],
    [
      'a step back',
      [{ label: 'a', points: [point(5, 1), point(5, 1)] }],
      "chart 'chart': the line 'a' needs ascending numbers of readings",
    ],
  ])('refuses %s', async (_case, lines: PrecisionInput['lines'], message) => {
    await expect(draw({ lines, unit: 'ms' })).rejects.toThrow(new RangeError(message));
  });
});
