/** Invented figures, ordinary and extreme, for the gallery and the tests. */
import { type EstimateRow, renderEstimates } from '../../src/charts/estimates.ts';
import type { Chart } from '../../src/charts/chart.ts';
import type { Figure } from '../../src/figures/register.ts';

export function figure(value: number, half: number | undefined, over: Partial<Figure> = {}): Figure {
  const decimals = half === undefined ? 1 : half < 0.1 ? 3 : half < 10 ? 1 : 0;
  return {
    id: `total/${String(value)}`,
    kind: 'total',
    of: { session: 'invented' },
    unit: 'ms',
    value,
    ...(half === undefined ? {} : { interval: { low: value - half, high: value + half, level: 0.95 } }),
    readings: 10,
    runs: 1,
    excluded: 0,
    sources: [],
    text: half === undefined ? `${value.toFixed(decimals)} ms` : `${value.toFixed(decimals).replace('-', '−')} ± ${half.toFixed(decimals)} ms`,
    label: 'Total latency',
    entry: '/sessions/invented/#total',
    ...over,
  };
}

const BODIES = ['Orrin V2', 'Tamsel 6', 'Wexley Duo'];
const CONDITIONS = ['UHD 23.976p', 'UHD 59.94p', 'HD 59.94p', 'HD 119.88p, audio on', 'UHD 25p, recording', 'HD 50p, monitoring assist on'];

const grouped = (count: number): EstimateRow[] =>
  Array.from({ length: count }, (_, i) => ({
    group: BODIES[Math.floor((i * BODIES.length) / count)] ?? '',
    label: CONDITIONS[i % CONDITIONS.length] ?? '',
    figure: figure(90 + ((i * 37) % 230), 2 + ((i * 13) % 9) * 1.3),
  }));

const LONG = 'Tamsel 6 through the wireless link, UHD 23.976p, audio embedded';

export const ESTIMATES: Readonly<Record<string, readonly EstimateRow[]>> = {
  'one-row': [{ label: 'UHD 23.976p', figure: figure(300.8, 8.8) }],
  'six-rows': grouped(6).map(({ label, figure }) => ({ label, figure })),
  'six-grouped': grouped(6),
  'forty-grouped': grouped(40),
  'long-labels': [1, 2, 3, 4].map((i) => ({ label: LONG.slice(0, 12 * i + 12), figure: figure(200 + 20 * i, 6 * i) })),
  'one-word': [{ label: 'an-identifier_without_any_space_in_it_that_goes_on_and_on_for_60', figure: figure(120, 4) }],
  'all-equal': [1, 2, 3].map((i) => ({ label: `Session ${String(i)}`, figure: figure(42, 1.5) })),
  'interval-100-times': [{ label: 'Ten readings', figure: figure(100, 1.2) }, { label: 'Two readings', figure: figure(104, 120) }],
  'hair-thin': [{ label: 'Light sensor', figure: figure(210.5, 0.012) }, { label: 'Two timers', figure: figure(203, 5.4) }],
  'five-digits': [{ label: 'Recorder loop', figure: figure(48_312, 127) }, { label: 'Direct', figure: figure(312, 11) }],
  'below-zero': [{ label: 'Assist on less off', figure: figure(-14.2, 6.1, { label: 'Difference' }) }, { label: 'Audio on less off', figure: figure(33.4, 7.7, { label: 'Difference' }) }],
  zero: [{ label: 'Same cable', figure: figure(0, 0) }],
  'no-interval': [{ label: 'One reading', figure: figure(251, undefined) }, { label: 'Ten readings', figure: figure(244, 9) }],
  'in-frames': [{ label: 'UHD 59.94p', figure: figure(7.2, 0.4, { unit: 'frames', text: '7.20 ± 0.40 frames', label: 'Latency in frames' }) }],
  script: [{ label: '<script>alert("x")</script> & co', figure: figure(100, 5) }],
};

export const GALLERY: Readonly<Record<string, (id: string) => Promise<Chart>>> = {
  ...Object.fromEntries(Object.entries(ESTIMATES).map(([name, rows]) => [`estimates-${name}`, (id: string) => renderEstimates({ id, rows })])),
};
