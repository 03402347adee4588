/**
 * Several bodies against the frame rate: every mark is read back from the drawing and set against what was asked for.
 */
import { describe, expect, it } from 'vitest';
import { renderRates } from '../../src/charts/rates.ts';
import { figure } from './examples.ts';
import { axisScale } from './scale.ts';
import { attribute, marksOf, numberAttribute, textsOf } from './svg.ts';

const at = (rate: string, value: number) => ({ rate, rateHz: Number(rate), figure: figure(value, 4) });
const BODIES = [
  { name: 'Alba One', place: 0, points: [at('24', 300), at('25', 290), at('29.97', 250), at('59.94', 130)] },
  { name: 'Brae', place: 1, points: [at('25', 200), at('59.94', 128)] },
  { name: 'Corrie', place: 4, points: [at('24', 310), at('59.94', 126)] },
];
const chart = await renderRates({ id: 'chart', title: 'Rates', bodies: BODIES });

describe.each(['wide', 'narrow'] as const)('several bodies against the frame rate, %s', (variant) => {
  const svg = chart[variant];
  const latencyAt = axisScale(svg, 'y');
  const points = marksOf(svg, 'points');
  const wanted = BODIES.flatMap(({ points: own }) => own);

  it('draws each total where the axis says, with its interval', () => {
    expect(points).toHaveLength(wanted.length);
    points.forEach(({ y }, index) => expect(latencyAt(y)).toBeCloseTo(wanted[index]?.figure.value ?? NaN, 0));
    marksOf(svg, 'intervals').forEach(({ y, element }, index) => {
      const ends = [latencyAt(y), latencyAt(y + numberAttribute(element, 'y2'))].sort((a, b) => a - b);
      expect(ends[0]).toBeCloseTo(wanted[index]?.figure.interval?.low ?? NaN, 0);
      expect(ends[1]).toBeCloseTo(wanted[index]?.figure.interval?.high ?? NaN, 0);
    });
  });

  it('has rates at the logarithm of their number, named under the axis, which says that it is one', () => {
    const [first, , third, last] = points;
    if (!first || !third || !last) throw new Error('the first body has four points');
    const share = (third.x - first.x) / (last.x - first.x);
    expect(share).toBeCloseTo(Math.log(29.97 / 24) / Math.log(59.94 / 24), 2);
    const texts = textsOf(svg);
    expect(texts.filter(({ text }) => ['24', '25', '29.97', '59.94'].includes(text))).toHaveLength(4);
    expect(texts.map(({ text }) => text)).toContain('frames per second, logarithmic');
  });

  it('gives each body a colour and a mark of its own, and its name beside the end of its line', () => {
    const looks = points.map(({ element }) => `${attribute(element, 'fill')} ${attribute(element, 'd')}`);
    expect(new Set(looks.slice(0, 4)).size).toBe(1);
    expect(new Set(looks).size).toBe(3);
    expect(looks[0]).toContain('--body-1');
    expect(looks.at(-1)).toContain('--body-5');
    const names = textsOf(svg).filter(({ text }) => ['Alba One', 'Brae', 'Corrie'].includes(text));
    // 130, 128 and 126 ms: in that order from above, and a line apart
    expect(names.toSorted((a, b) => a.baseline - b.baseline).map(({ text }) => text)).toEqual([
      'Alba One',
      'Brae',
      'Corrie',
    ]);
    const gaps = names.toSorted((a, b) => a.baseline - b.baseline).map(({ baseline }) => baseline);
    expect(Math.min(...gaps.slice(1).map((y, index) => y - (gaps[index] ?? 0)))).toBeGreaterThanOrEqual(16.9);
  });
});

it('tells every figure in words, and refuses what cannot be drawn', async () => {
  expect(chart.description).toContain('Brae: 200.0 ± 4.0 ms at 25, 128.0 ± 4.0 ms at 59.94.');
  await expect(renderRates({ id: 'a', title: '', bodies: [] })).rejects.toThrow('has a body without figures');
  const mixed = [
    { name: 'A', place: 0, points: [at('25', 1), { ...at('50', 2), figure: figure(2, 1, { unit: 'frames' }) }] },
  ];
  await expect(renderRates({ id: 'a', title: '', bodies: mixed })).rejects.toThrow('mixes the units ms, frames');
});
