import { expect, it } from 'vitest';
import { findMethodExample } from '../../src/views/method-example.ts';
import type { Figure, Finding } from '../../src/register/register.ts';

const figure = (kind: string, session: string, value: number, half?: number): Figure => ({
  id: `${kind}/${session}`,
  kind,
  of: { session },
  unit: 'ms',
  value,
  readings: 10,
  runs: 1,
  excluded: 0,
  sources: [],
  text: '',
  label: kind,
  entry: '/',
  ...(half === undefined ? {} : { interval: { low: value - half, high: value + half, level: 0.95 } }),
});
const beating = (session: string): Finding => ({
  rule: 'beating-rates',
  severity: 'caution',
  where: { session },
  message: `${session} beats.`,
  hint: '',
});
const session = (id: string, half: number) => [
  figure('total', id, 130, half),
  figure('mean', id, 128),
  figure('standard-error', id, 2),
];

it('is the session whose textbook interval is furthest too narrow', () => {
  // t(0.975, 9) = 2.262 times 2 ms is 4.5 ms: too narrow by half at b, nearly right at a.
  const found = findMethodExample({
    analysis: '1',
    figures: [...session('a', 5), ...session('b', 9)],
    findings: [beating('a'), beating('b')],
  });
  expect(found?.session).toBe('b');
  expect(found?.total.id).toBe('total/b');
  expect(found?.beat).toBe('b beats.');
});

it('is none where no rates beat', () => {
  expect(findMethodExample({ analysis: '1', figures: session('a', 5), findings: [] })).toBeUndefined();
});
