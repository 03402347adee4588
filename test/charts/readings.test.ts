import { describe, expect, it } from 'vitest';
import { MOST_DOTS } from '../../src/charts/readings-bins.ts';
import { MOST_RUNS } from '../../src/charts/readings-runs.ts';
import { renderReadings, type ReadingsInput } from '../../src/charts/readings.ts';
import { figure, READINGS } from './examples.ts';
import { axisScale, PX } from './scale.ts';
import { attribute, marksOf, textsOf, walk } from './svg.ts';

const VARIANTS = ['wide', 'narrow'] as const;
const draw = (input: Omit<ReadingsInput, 'id'>) => renderReadings({ id: 'chart', ...input });
const EXAMPLES = Object.entries(READINGS);
const SINGLE = EXAMPLES.filter(([, { readings }]) => readings.length <= MOST_DOTS);

const scaleOf = (svg: string) => axisScale(svg, 'y');

describe('a readings chart', () => {
  it.each(SINGLE)(
    'draws each reading that counts as a dot at its latency, in the order taken (%s)',
    async (_name, input) => {
      const chart = await draw(input);
      const counted = input.readings.filter(({ excluded }) => excluded === undefined);
      if (new Set(input.readings.map(({ run }) => run)).size <= MOST_RUNS) counted.sort((a, b) => a.run - b.run);
      for (const variant of VARIANTS) {
        const latencyAt = scaleOf(chart[variant]);
        const dots = marksOf(chart[variant], 'dots');
        expect(dots).toHaveLength(counted.length);
        const tolerance = Math.abs(latencyAt(PX) - latencyAt(0));
        dots.forEach(({ y }, i) =>
          expect(Math.abs(latencyAt(y) - (counted[i]?.latencyMs ?? NaN))).toBeLessThan(tolerance),
        );
        expect(dots.every(({ x }, i) => i === 0 || x > (dots[i - 1]?.x ?? NaN))).toBe(true);
      }
    },
  );

  it.each(EXAMPLES)('draws the grid at the ticks, which are round numbers (%s)', async (_name, input) => {
    const chart = await draw(input);
    for (const variant of VARIANTS) {
      const latencyAt = scaleOf(chart[variant]);
      const grid = walk(chart[variant]).filter(
        ({ element }) =>
          element.tagName === 'line' && attribute(element.parentNode as typeof element, 'class')?.includes('axis-grid'),
      );
      expect(grid.length).toBeGreaterThan(1);
      const tolerance = Math.abs(latencyAt(PX) - latencyAt(0));
      const values = grid.map(({ y }) => latencyAt(y)).sort((a, b) => a - b);
      const step = ((values.at(-1) ?? NaN) - (values[0] ?? NaN)) / (values.length - 1);
      expect(
        [1, 2, 5, 10].some((round) => Math.abs(step / 10 ** Math.floor(Math.log10(step)) - round) < 0.01),
        String(step),
      ).toBe(true);
      values.forEach((value, i) => expect(Math.abs(value - (values[0] ?? NaN) - i * step)).toBeLessThan(2 * tolerance));
    }
  });

  it.each(EXAMPLES)('draws the total as a line and its interval as a band (%s)', async (_name, { readings, total }) => {
    const chart = await draw({ readings, total });
    for (const variant of VARIANTS) {
      const latencyAt = scaleOf(chart[variant]);
      const tolerance = Math.abs(latencyAt(PX) - latencyAt(0));
      const [line, ...more] = marksOf(chart[variant], 'total');
      expect(more).toEqual([]);
      expect(Math.abs(latencyAt(line?.y ?? NaN) - total.value)).toBeLessThan(tolerance);
      const bands = marksOf(chart[variant], 'band');
      expect(bands).toHaveLength(total.interval ? 1 : 0);
      for (const { y, element } of bands) {
        const [, top, height] = /^M[\d.]+,(-?[\d.]+)h[\d.]+v([\d.]+)h/.exec(attribute(element, 'd') ?? '') ?? [];
        expect(Math.abs(latencyAt(y + Number(top)) - (total.interval?.high ?? NaN))).toBeLessThan(tolerance);
        expect(Math.abs(latencyAt(y + Number(top) + Number(height)) - (total.interval?.low ?? NaN))).toBeLessThan(
          tolerance,
        );
      }
      expect(textsOf(chart[variant]).some(({ text }) => text.includes(`total ${total.text}`))).toBe(true);
    }
  });

  it('draws excluded readings apart, at the edge where they are off the scale, and lists them', async () => {
    const { readings, total } = READINGS['off-the-scale'] ?? {};
    if (!readings || !total) throw new Error('no such example');
    const chart = await draw({ readings, total });
    for (const variant of VARIANTS) {
      const shapes = marksOf(chart[variant], 'crosses').map(({ element }) => attribute(element, 'd') ?? '');
      expect(shapes).toHaveLength(3);
      expect(new Set(shapes).size).toBe(3);
      const words = textsOf(chart[variant])
        .map(({ text }) => text.replaceAll('\u00a0', ' '))
        .join(' ');
      expect(words).toContain(
        'Crosses, and triangles off the scale: excluded, no. 21 (5012 ms), no. 22 (12 ms), no. 23 (no value).',
      );
    }
    expect(chart.description).toContain(
      '3 readings excluded, drawn apart: no. 21 (minute misread), no. 22 (digit missing), no. 23 (source out of the picture).',
    );
  });

  it('keeps excluded readings from squeezing those that count', async () => {
    const { readings, total } = READINGS['off-the-scale'] ?? {};
    if (!readings || !total) throw new Error('no such example');
    const all = await draw({ readings, total });
    const counted = await draw({ readings: readings.filter(({ excluded }) => excluded === undefined), total });
    const ys = (svg: string) => marksOf(svg, 'dots').map(({ y }) => y);
    const span = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
    expect(span(ys(all.wide))).toBeCloseTo(span(ys(counted.wide)), 1);
  });

  it('describes what is shown, the range and the total', async () => {
    const readings = [
      { run: 1, latencyMs: 300 },
      { run: 1, latencyMs: 310.5 },
      { run: 2, latencyMs: 305, excluded: 'blurred' },
    ];
    expect((await draw({ readings, total: figure(305, 8) })).description).toBe(
      'Latency of 3 readings in 2 runs, in the order taken. The 2 that count run from 300 ms to 310.5 ms. ' +
        'The total is 305.0 ± 8.0 ms, drawn as a line with its 95 % interval as a band. 1 reading excluded, drawn apart: no. 3 (blurred).',
    );
  });

  it('names the runs, in order, whatever the order of the file', async () => {
    const readings = [2, 1, 2, 1, 1, 2].map((run, i) => ({ run, latencyMs: 100 + i }));
    const chart = await draw({ readings, total: figure(102, 3) });
    const runs = textsOf(chart.wide).filter(({ text }) => /^run \d$/.test(text));
    expect(runs.map(({ text }) => text)).toEqual(['run 1', 'run 2']);
    expect(runs[0]?.left).toBeLessThan(runs[1]?.left ?? NaN);
  });

  it('draws a million readings as fields whose area is their number', async () => {
    const count = 1_000_000;
    // three quarters at 100 ms, one quarter at 200 ms, evenly mixed
    const readings = Array.from({ length: count }, (_, i) => ({
      run: 1,
      latencyMs: i % 4 === 0 ? 200 : 100,
      ...(i === 4321 ? { excluded: 'smudged' } : {}),
    }));
    const chart = await draw({ readings, total: figure(125, 0.1) });
    expect(chart.description).toContain(
      'Each dot stands for the readings of one field, 50000 readings by 5 ms; its area shows their number.',
    );
    for (const variant of VARIANTS) {
      expect(chart[variant].length).toBeLessThan(200_000);
      const areas = marksOf(chart[variant], 'dots').map(
        ({ element }) => Number(/^M([\d.]+),0A/.exec(attribute(element, 'd') ?? '')?.[1]) ** 2,
      );
      expect(areas).toHaveLength(40);
      const [large, small] = [Math.max(...areas), Math.min(...areas)];
      // radii are rounded to 0.01 px, of 2 px or more
      expect(large / small).toBeCloseTo(3, 1);
      const columns = [...new Set(marksOf(chart[variant], 'dots').map(({ x }) => x))].sort((a, b) => a - b);
      expect(columns).toHaveLength(20);
      expect(2 * Math.sqrt(large)).toBeLessThanOrEqual((columns[1] ?? NaN) - (columns[0] ?? NaN));
      expect(marksOf(chart[variant], 'crosses')).toHaveLength(1);
    }
  });

  it('prints markup in a reason as text', async () => {
    const readings = [
      { run: 1, latencyMs: 300 },
      { run: 1, latencyMs: 301, excluded: '<script>alert(1)</script>' },
    ];
    const chart = await draw({ readings, total: figure(300, 2) });
    for (const variant of VARIANTS) expect(chart[variant]).not.toMatch(/<script/i);
    expect(chart.description).toContain('<script>alert(1)</script>');
  });

  it.each([
    [
      'no reading that counts',
      [{ run: 1, latencyMs: 1, excluded: 'blurred' }],
      figure(1, 1),
      "chart 'chart' has no reading that counts",
    ],
    ['a reading without a latency', [{ run: 1 }], figure(1, 1), "chart 'chart': reading 1 has no finite latency"],
    [
      'a latency that is not finite',
      [
        { run: 1, latencyMs: 1 },
        { run: 1, latencyMs: Infinity },
      ],
      figure(1, 1),
      "chart 'chart': reading 2 has no finite latency",
    ],
    [
      'a total in another unit',
      [{ run: 1, latencyMs: 1 }],
      figure(1, 1, { unit: 'frames' }),
      "chart 'chart': the total is in frames, the readings in ms",
    ],
  ])('refuses %s', async (_case, readings: ReadingsInput['readings'], total, message) => {
    await expect(draw({ readings, total })).rejects.toThrow(new RangeError(message));
  });
});
