import { describe, expect, it } from 'vitest';
import { renderRateLaw, type RateLawInput } from '../../src/charts/rate-law.ts';
import { figure, RATE_LAWS } from './examples.ts';
import { axisScale, PX } from './scale.ts';
import { attribute, marksOf, numberAttribute, textsOf } from './svg.ts';

const VARIANTS = ['wide', 'narrow'] as const;
const EXAMPLES = Object.entries(RATE_LAWS);
const draw = (input: Omit<RateLawInput, 'id'>) => renderRateLaw({ id: 'chart', ...input });

describe('a rate-law chart', () => {
  it.each(EXAMPLES)('draws points, intervals and the line where its axes say (%s)', async (_name, input) => {
    const chart = await draw(input);
    for (const variant of VARIANTS) {
      const svg = chart[variant];
      const [intervalAt, latencyAt] = [axisScale(svg, 'x'), axisScale(svg, 'y')];
      const near = (scale: (px: number) => number, px: number, value: number) =>
        expect(Math.abs(scale(px) - value)).toBeLessThan(Math.abs(scale(PX) - scale(0)));
      const points = [...marksOf(svg, 'points'), ...marksOf(svg, 'bare')];
      const wanted = [
        ...input.points.filter(({ figure }) => figure.interval),
        ...input.points.filter(({ figure }) => !figure.interval),
      ];
      expect(points).toHaveLength(wanted.length);
      points.forEach(({ x, y }, i) => {
        near(intervalAt, x, wanted[i]?.intervalMs ?? NaN);
        near(latencyAt, y, wanted[i]?.figure.value ?? NaN);
      });
      marksOf(svg, 'intervals').forEach(({ y, element }, i) => {
        const ends = [latencyAt(y), latencyAt(y + numberAttribute(element, 'y2'))].sort((a, b) => a - b);
        expect(ends[0]).toBeCloseTo(wanted[i]?.figure.interval?.low ?? NaN, 0);
        expect(ends[1]).toBeCloseTo(wanted[i]?.figure.interval?.high ?? NaN, 0);
      });
      const [line] = marksOf(svg, 'line');
      const corners = [...(attribute(line?.element ?? fail(), 'd') ?? '').matchAll(/(-?[\d.]+),(-?[\d.]+)/g)];
      expect(corners).toHaveLength(input.line.length);
      corners.forEach(([, dx, dy], i) => {
        near(intervalAt, (line?.x ?? NaN) + Number(dx), input.line[i]?.intervalMs ?? NaN);
        near(latencyAt, (line?.y ?? NaN) + Number(dy), input.line[i]?.fitted ?? NaN);
      });
      expect(marksOf(svg, 'band')).toHaveLength(input.line.some(({ low }) => low !== undefined) ? 1 : 0);
    }
  });

  it.each(EXAMPLES)('names each rate once, above its frame interval (%s)', async (_name, input) => {
    const chart = await draw(input);
    for (const variant of VARIANTS) {
      const intervalAt = axisScale(chart[variant], 'x');
      for (const { rate, intervalMs } of input.points) {
        const leader = marksOf(chart[variant], 'leaders').filter(
          ({ x }) => Math.abs(intervalAt(x) - intervalMs) < 0.05,
        );
        expect(leader, rate).toHaveLength(1);
        const above = textsOf(chart[variant]).filter(
          ({ text, left, right, baseline }) =>
            text === rate &&
            left < (leader[0]?.x ?? NaN) &&
            right > (leader[0]?.x ?? NaN) &&
            baseline < (leader[0]?.y ?? NaN),
        );
        expect(above, rate).toHaveLength(1);
      }
    }
  });

  it.each(EXAMPLES)('starts both axes at zero or includes it (%s)', async (_name, input) => {
    const { wide } = await draw(input);
    expect(textsOf(wide).filter(({ text }) => text === '0').length).toBe(2);
  });

  it.each([
    ['no points', { points: [] }, "chart 'chart' has no figures: give it at least one"],
    ['a line of one point', { line: [{ intervalMs: 0, fitted: 1 }] }, "chart 'chart': a line has two points or more"],
    [
      'a line that is not finite',
      {
        line: [
          { intervalMs: 0, fitted: 1 },
          { intervalMs: 1, fitted: NaN },
        ],
      },
      "chart 'chart': the line is not finite",
    ],
    [
      'mixed units',
      {
        points: [
          { rate: '25', intervalMs: 40, figure: figure(1, 1) },
          { rate: '50', intervalMs: 20, figure: figure(2, 1, { unit: 'frames' }) },
        ],
      },
      "chart 'chart': figure total/2 is in frames, the axis in ms",
    ],
  ])('refuses %s', async (_case, over: Partial<RateLawInput>, message) => {
    await expect(draw({ ...(RATE_LAWS['six-rates'] ?? fail()), ...over })).rejects.toThrow(new RangeError(message));
  });
});

it('names its unit on the axis and in its description', async () => {
  const frames = await draw(RATE_LAWS['in-frames'] ?? fail());
  for (const variant of VARIANTS)
    expect(textsOf(frames[variant]).map(({ text }) => text)).toContain('Total latency, frames');
  expect(frames.description).toMatch(
    /^Total latency in frames against frame interval in ms, on axes that include zero/,
  );
  expect((await draw(RATE_LAWS['six-rates'] ?? fail())).description).toMatch(
    /^Total latency against frame interval, both in ms on axes that include zero/,
  );
});

function fail(): never {
  throw new Error('missing');
}
