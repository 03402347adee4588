import { expect, it } from 'vitest';
import { renderBrackets } from '../../src/charts/brackets.ts';
import { BRACKETS } from './examples.ts';
import { axisScale } from './scale.ts';
import { attribute, marksOf } from './svg.ts';

it.each(Object.entries(BRACKETS))(
  'a brackets chart opens and closes each bracket at its limits, and draws no point (%s)',
  async (_name, input) => {
    const chart = await renderBrackets({ id: 'chart', ...input });
    for (const svg of [chart.wide, chart.narrow]) {
      const valueAt = axisScale(svg, 'x');
      const brackets = marksOf(svg, 'brackets');
      expect(brackets).toHaveLength(2 * input.rows.length);
      input.rows.forEach(({ range }, i) => {
        const [left, right] = [brackets[2 * i], brackets[2 * i + 1]];
        expect(valueAt(left?.x ?? NaN)).toBeCloseTo(range.low, 1);
        expect(valueAt(right?.x ?? NaN)).toBeCloseTo(range.high, 1);
        // the serifs point inwards: [ begins right of its limit, ] left of it
        const serif = (mark: typeof left) =>
          Number(/^M(-?[\d.]+),/.exec((mark && attribute(mark.element, 'd')) ?? '')?.[1]);
        expect(serif(left)).toBeGreaterThan(0);
        expect(serif(right)).toBeLessThan(0);
      });
      expect([...marksOf(svg, 'points'), ...marksOf(svg, 'bare'), ...marksOf(svg, 'intervals')]).toEqual([]);
    }
    expect(chart.description).toBe(
      'Latency of the chain in ms: the lowest and the highest possible as brackets, 4 rows. ' +
        'The lowest limit is of Wireless link, either converter, 18 ms to 35 ms; the highest of Whole chain, 102 ms to 161 ms.',
    );
  },
);

it('a brackets chart refuses limits in the wrong order', async () => {
  const chart = renderBrackets({
    id: 'chart',
    quantity: 'Latency',
    unit: 'ms',
    rows: [{ label: 'Body', text: '2 ms to 1 ms', range: { low: 2, high: 1 } }],
  });
  await expect(chart).rejects.toThrow(new RangeError("chart 'chart': row 'Body' has its low limit above its high one"));
});
