/** Invented figures, ordinary and extreme, for the gallery and the tests. */
import { type EstimateRow, renderEstimates } from '../../src/charts/estimates.ts';
import { type BracketsInput, renderBrackets } from '../../src/charts/brackets.ts';
import { type DifferencesInput, renderDifferences } from '../../src/charts/differences.ts';
import { type PrecisionInput, renderPrecision } from '../../src/charts/precision.ts';
import { type ReadingsInput, renderReadings } from '../../src/charts/readings.ts';
import { type RateLawInput, renderRateLaw } from '../../src/charts/rate-law.ts';
import type { Chart } from '../../src/charts/chart.ts';
import type { Figure } from '../../src/register/register.ts';

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
    text:
      half === undefined
        ? `${value.toFixed(decimals)} ms`
        : `${value.toFixed(decimals).replace('-', '−')} ± ${half.toFixed(decimals)} ms`,
    label: 'Total latency',
    entry: '/sessions/invented/#total',
    ...over,
  };
}

const BODIES = ['Vennick Q4', 'Dunmere 30', 'Skelby Dome'];
const CONDITIONS = [
  'UHD 23.976p',
  'UHD 59.94p',
  'HD 59.94p',
  'HD 119.88p, audio on',
  'UHD 25p, recording',
  'HD 50p, monitoring assist on',
];

const grouped = (count: number): EstimateRow[] =>
  Array.from({ length: count }, (_, i) => ({
    group: BODIES[Math.floor((i * BODIES.length) / count)] ?? '',
    label: CONDITIONS[i % CONDITIONS.length] ?? '',
    figure: figure(90 + ((i * 37) % 230), 2 + ((i * 13) % 9) * 1.3),
  }));

const LONG = 'Dunmere 30 through the wireless link, UHD 23.976p, audio embedded';

export const ESTIMATES: Readonly<Record<string, readonly EstimateRow[]>> = {
  'one-row': [{ label: 'UHD 23.976p', figure: figure(300.8, 8.8) }],
  'six-rows': grouped(6).map(({ label, figure }) => ({ label, figure })),
  'six-grouped': grouped(6),
  'forty-grouped': grouped(40),
  'long-labels': [1, 2, 3, 4].map((i) => ({ label: LONG.slice(0, 12 * i + 12), figure: figure(200 + 20 * i, 6 * i) })),
  'one-word': [{ label: 'an-identifier_without_any_space_in_it_that_goes_on_and_on_for_60', figure: figure(120, 4) }],
  'all-equal': [1, 2, 3].map((i) => ({ label: `Session ${String(i)}`, figure: figure(42, 1.5) })),
  'interval-100-times': [
    { label: 'Ten readings', figure: figure(100, 1.2) },
    { label: 'Two readings', figure: figure(104, 120) },
  ],
  'hair-thin': [
    { label: 'Light sensor', figure: figure(210.5, 0.012) },
    { label: 'Two timers', figure: figure(203, 5.4) },
  ],
  'five-digits': [
    { label: 'Recorder loop', figure: figure(48_312, 127) },
    { label: 'Direct', figure: figure(312, 11) },
  ],
  'below-zero': [
    { label: 'Assist on less off', figure: figure(-14.2, 6.1, { label: 'Difference' }) },
    { label: 'Audio on less off', figure: figure(33.4, 7.7, { label: 'Difference' }) },
  ],
  zero: [{ label: 'Same cable', figure: figure(0, 0) }],
  'no-interval': [
    { label: 'One reading', figure: figure(251, undefined) },
    { label: 'Ten readings', figure: figure(244, 9) },
  ],
  'in-frames': [
    {
      label: 'UHD 59.94p',
      figure: figure(7.2, 0.4, { unit: 'frames', text: '7.20 ± 0.40 frames', label: 'Latency in frames' }),
    },
  ],
  'long-quantity': [
    {
      label: 'UHD 25p',
      figure: figure(300.8, 8.8, {
        label: 'Total latency of the whole chain from source timer to display, links included, at the rate set',
      }),
    },
  ],
  script: [{ label: '<script>alert("x")</script> & co', figure: figure(100, 5) }],
};

type Readings = ReadingsInput['readings'];

/** A fixed sequence in [0, 1) that looks disordered. */
const scatter = (i: number): number => Math.abs(Math.sin(i * 12.9898) * 43_758.5453) % 1;

const session = (
  count: number,
  runs: number,
  centre: number,
  spread: number,
  excluded: readonly number[] = [],
): Readings =>
  Array.from({ length: count }, (_, i) => ({
    run: 1 + Math.floor((i * runs) / count),
    latencyMs: Math.round(centre + spread * (scatter(i + 1) + scatter(7 * i + 3) - 1)),
    ...(excluded.includes(i + 1) ? { excluded: 'source digits overlap' } : {}),
  }));

export const READINGS: Readonly<Record<string, Omit<ReadingsInput, 'id'>>> = {
  'ten-in-one-run': { readings: session(10, 1, 300, 40), total: figure(300.8, 8.8) },
  'thirty-in-three-runs': { readings: session(30, 3, 300, 40, [7, 22]), total: figure(300.8, 5.1) },
  'hundred-in-six-runs': { readings: session(100, 6, 212, 30, [1, 50, 100]), total: figure(212.4, 2.2) },
  'off-the-scale': {
    readings: [
      ...session(20, 2, 300, 40),
      { run: 2, latencyMs: 5012, excluded: 'minute misread' },
      { run: 2, latencyMs: 12, excluded: 'digit missing' },
      { run: 2, excluded: 'source out of the picture' },
    ],
    total: figure(300.8, 6.4),
  },
  'all-equal': { readings: session(12, 1, 42, 0), total: figure(42, 0) },
  'one-reading': { readings: session(1, 1, 251, 0), total: figure(251, undefined) },
  'two-readings': { readings: session(2, 1, 251, 20), total: figure(249, 127) },
  'five-digits': { readings: session(24, 2, 48_312, 300), total: figure(48_312, 127) },
  'twelve-runs': { readings: session(60, 12, 180, 50), total: figure(180.4, 4.4) },
  'twenty-four-runs': { readings: session(72, 24, 180, 50), total: figure(180.4, 6.4) },
  'uneven-runs': {
    readings: [1, 1, 1, 40, 1, 30, 1].flatMap((length, i) =>
      session(length, 1, 180, 50).map((reading) => ({ ...reading, run: i + 1 })),
    ),
    total: figure(180.4, 6.4),
  },
  'runs-interleaved': {
    readings: session(24, 1, 180, 50).map((reading, i) => ({ ...reading, run: 1 + (i % 3) })),
    total: figure(180.4, 6.4),
  },
  'four-hundred': { readings: session(400, 4, 180, 50, [9, 14, 77, 78, 79, 200, 201, 399]), total: figure(180.4, 1.4) },
  'ten-thousand': { readings: session(10_000, 2, 180, 50, [4000, 9000]), total: figure(180.1, 0.4) },
  'many-runs': { readings: session(60, 30, 180, 50), total: figure(180.4, 4.4) },
};

/** Straight lines with a band that widens away from the middle. */
const law = (intercept: number, slope: number, half: number): RateLawInput['line'] =>
  Array.from({ length: 10 }, (_, i) => {
    const intervalMs = i * 5;
    const fitted = intercept + slope * intervalMs;
    const width = half * (1 + ((intervalMs - 25) / 20) ** 2);
    return { intervalMs, fitted, low: fitted - width, high: fitted + width };
  });

const RATES = [
  ['23.976', 1001 / 24],
  ['25', 40],
  ['29.97', 1001 / 30],
  ['50', 20],
  ['59.94', 1001 / 60],
  ['119.88', 1001 / 120],
] as const;

export const RATE_LAWS: Readonly<Record<string, Omit<RateLawInput, 'id'>>> = {
  'six-rates': {
    points: RATES.map(([rate, intervalMs], i) => ({
      rate,
      intervalMs,
      figure: figure(61 + 2.5 * intervalMs + (i % 3) - 1, 4 + i / 2),
    })),
    line: law(61, 2.5, 2),
    lineText: '61.2 ms + 2.49 frames',
    level: 0.95,
  },
  'two-rates': {
    points: RATES.slice(0, 1)
      .concat(RATES.slice(4, 5))
      .map(([rate, intervalMs]) => ({ rate, intervalMs, figure: figure(20 + 3 * intervalMs, 40) })),
    line: law(20, 3, 60),
    lineText: '20 ms + 3.0 frames',
    level: 0.95,
  },
  'in-frames': {
    points: RATES.map(([rate, intervalMs]) => ({
      rate,
      intervalMs,
      figure: figure(61 / intervalMs + 2.5, 0.3, { unit: 'frames' }),
    })),
    line: Array.from({ length: 20 }, (_, i) => 8 + 2 * i).map((intervalMs) => ({
      intervalMs,
      fitted: 61 / intervalMs + 2.5,
      low: 61 / intervalMs + 2.3,
      high: 61 / intervalMs + 2.7,
    })),
    lineText: '61.2 ms + 2.49 frames',
    level: 0.95,
  },
  'without-a-band': {
    points: RATES.slice(2).map(([rate, intervalMs]) => ({
      rate,
      intervalMs,
      figure: figure(12 * intervalMs, undefined),
    })),
    line: law(0, 12, 0).map(({ intervalMs, fitted }) => ({ intervalMs, fitted })),
    lineText: '12 frames',
  },
};

export const DIFFERENCES: Readonly<Record<string, Omit<DifferencesInput, 'id'>>> = {
  'with-a-margin': {
    rows: [
      ['Audio on less off', 33.4, 7.7],
      ['Assist on less off', -14.2, 6.1],
      ['Recording less idle', 1.2, 3.9],
      ['10 bit less 8 bit', -0.4, 12.8],
    ].map(([label, value, half]) => ({
      label: String(label),
      group: Number(value) > 0 ? 'Vennick Q4' : 'Dunmere 30',
      figure: figure(Number(value), Number(half), { label: 'Difference in total latency' }),
    })),
    margin: { halfWidth: 8.4, text: '8.4 ms' },
  },
  'inside-a-wide-margin': {
    rows: [{ label: 'Second day less first', figure: figure(0.3, 1.1, { label: 'Difference' }) }],
    margin: { halfWidth: 20, text: '20 ms' },
  },
  'without-a-margin': { rows: [{ label: 'Direct less wireless', figure: figure(-48, 12, { label: 'Difference' }) }] },
};

export const BRACKETS: Readonly<Record<string, Omit<BracketsInput, 'id'>>> = {
  chains: {
    quantity: 'Latency of the chain',
    unit: 'ms',
    rows: [
      { label: 'Body', range: { low: 62, high: 104 }, text: '62 ms to 104 ms' },
      { label: 'Wireless link, either converter', range: { low: 18, high: 35 }, text: '18 ms to 35 ms' },
      { label: 'Display', range: { low: 22, high: 22 }, text: '22 ms to 22 ms' },
      { label: 'Whole chain', range: { low: 102, high: 161 }, text: '102 ms to 161 ms' },
    ],
  },
};

const falling = (label: string, atOne: number, floor: number): PrecisionInput['lines'][number] => ({
  label,
  points: [3, 5, 10, 20, 30, 60, 100, 200, 300].map((readings) => {
    const halfWidth = Math.hypot(atOne / Math.sqrt(readings), floor);
    return { readings, halfWidth, text: `${halfWidth.toPrecision(2)} ms` };
  }),
});

export const PRECISIONS: Readonly<Record<string, Omit<PrecisionInput, 'id'>>> = {
  'four-ways': {
    unit: 'ms',
    lines: [
      falling('1 run, 0.3 s apart', 24, 7.4),
      falling('1 run, 2.1 s apart', 24, 3.9),
      falling('5 runs, 0.3 s apart', 24, 3.3),
      falling('every reading its own run', 24, 0),
    ],
  },
  'one-way': { unit: 'ms', lines: [falling('1 run', 24, 7.4)] },
  'flat-at-the-top': {
    unit: 'ms',
    lines: ['one', 'two', 'three'].map((label) => ({
      label,
      points: [1, 10].map((readings) => ({ readings, halfWidth: 10, text: '10 ms' })),
    })),
  },
  'all-alike': {
    unit: 'ms',
    lines: ['a', 'b', 'c', 'd', 'e', 'f'].map((way) =>
      falling(`the same way of taking readings, called ${way}`, 24, 1),
    ),
  },
};

export const GALLERY: Readonly<Record<string, (id: string) => Promise<Chart>>> = {
  ...Object.fromEntries(
    Object.entries(ESTIMATES).map(([name, rows]) => [
      `estimates-${name}`,
      (id: string) => renderEstimates({ id, rows }),
    ]),
  ),
  ...Object.fromEntries(
    Object.entries(READINGS).map(([name, input]) => [
      `readings-${name}`,
      (id: string) => renderReadings({ id, ...input }),
    ]),
  ),
  ...Object.fromEntries(
    Object.entries(RATE_LAWS).map(([name, input]) => [
      `rate-law-${name}`,
      (id: string) => renderRateLaw({ id, ...input }),
    ]),
  ),
  ...Object.fromEntries(
    Object.entries(DIFFERENCES).map(([name, input]) => [
      `differences-${name}`,
      (id: string) => renderDifferences({ id, ...input }),
    ]),
  ),
  ...Object.fromEntries(
    Object.entries(BRACKETS).map(([name, input]) => [
      `brackets-${name}`,
      (id: string) => renderBrackets({ id, ...input }),
    ]),
  ),
  ...Object.fromEntries(
    Object.entries(PRECISIONS).map(([name, input]) => [
      `precision-${name}`,
      (id: string) => renderPrecision({ id, ...input }),
    ]),
  ),
};
