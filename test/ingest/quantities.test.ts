import { expect, it } from 'vitest';
import { parseDurationMs, parseRowHeight, parseTolerancePpm } from '../../src/ingest/quantities.ts';

it.each([
  ['14 ms', 14],
  ['14ms', 14],
  ['1.1 ms', 1.1],
  ['1/500 s', 2],
  ['1 / 60 s', 1000 / 60],
  ['0.3 s', 300],
  ['250 µs', 0.25],
  ['250 μs', 0.25],
  ['250 us', 0.25],
  ['60 s', 60_000],
  ['60 min', 3_600_000],
  ['24 h', 86_400_000],
  ['0 ms', 0],
])('%s is %d ms', (text, ms) => expect(parseDurationMs(text)).toBe(ms));

it.each([
  '',
  '14',
  'ms',
  '-1 ms',
  '+1 ms',
  '1e3 ms',
  '1/0 s',
  '1.5/2 s',
  'NaN ms',
  'Infinity s',
  '1,5 ms',
  '14 MS',
  '1 m',
  '1 d',
  '1 ms 2',
  '1 s ± 2 ms',
])('%j is no duration', (text) => expect(parseDurationMs(text)).toBeUndefined());

it.each([
  ['50 ppm', 50],
  ['± 0.5 ppm', 0.5],
  ['0ppm', 0],
])('%s is %d parts per million', (text, ppm) => expect(parseTolerancePpm(text)).toBe(ppm));

it.each(['50', '-50 ppm', '50 ppb', '50 %', ''])('%j is no tolerance', (text) =>
  expect(parseTolerancePpm(text)).toBeUndefined(),
);

it.each([
  ['0', 0],
  ['0.25', 0.25],
  ['1', 1],
  ['1.0', 1],
])('%s is a height in the picture', (text, height) => expect(parseRowHeight(text)).toBe(height));

it.each(['1.01', '-0', '25 %', '.5', ''])('%j is no height in the picture', (text) =>
  expect(parseRowHeight(text)).toBeUndefined(),
);
