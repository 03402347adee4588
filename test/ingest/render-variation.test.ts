import { expect, it } from 'vitest';
import { renderVariation } from '../../src/ingest/render-variation.ts';
import type { VariationStatement } from '../../src/model/variation-statement.ts';
import { readChanged } from '../support/bench-folder.ts';

const LEVELS = {
  clip: {
    change: [
      { size: 0, weight: 0.75 },
      { size: 0.25, weight: 0.25 },
    ],
    step: [{ size: 0, weight: 1 }],
  },
  day: { change: [{ size: 0.125, weight: 1 }], step: [0, 0.2, 0.5].map((size) => ({ size, weight: 1 / 3 })) },
};
const STATEMENT: VariationStatement = {
  date: '2026-05-02',
  analysis: '1',
  knows: 'condition',
  reading: { jitter: [{ size: 0, weight: 1 }], repeat: [{ size: 0, weight: 1 }], misread: [{ size: 0.01, weight: 1 }] },
  bodies: { vennick: LEVELS, dunmere: LEVELS },
  others: LEVELS,
  sessions: { b: '0123456789ab 0123456789ab', a: '123456789012 1234e5678901' },
};

it('writes a list of sizes a line, names sorted, weights that sum to 1 as written', () => {
  const text = renderVariation(STATEMENT);
  expect(text.split('\n').slice(2).join('\n')).toBe(`
date: 2026-05-02
analysis: "1"
knows: condition
reading:
  jitter: { 0: 1 }
  repeat: { 0: 1 }
  misread: { 0.01: 1 }
bodies:
  dunmere:
    clip:
      change: { 0: 0.75, 0.25: 0.25 }
      step: { 0: 1 }
    day:
      change: { 0.125: 1 }
      step: { 0: 0.3334, 0.2: 0.3333, 0.5: 0.3333 }
  vennick:
    clip:
      change: { 0: 0.75, 0.25: 0.25 }
      step: { 0: 1 }
    day:
      change: { 0.125: 1 }
      step: { 0: 0.3334, 0.2: 0.3333, 0.5: 0.3333 }
others:
  clip:
    change: { 0: 0.75, 0.25: 0.25 }
    step: { 0: 1 }
  day:
    change: { 0.125: 1 }
    step: { 0: 0.3334, 0.2: 0.3333, 0.5: 0.3333 }
sessions:
  a: 123456789012 1234e5678901
  b: 0123456789ab 0123456789ab
`);
});

it('is read back as it was, and written again byte for byte', async () => {
  const text = renderVariation(STATEMENT);
  const { variation } = await readChanged({ 'data/variation.yaml': text });
  const { file, ...read } = variation!;
  expect(file.path).toMatch(/data\/variation\.yaml$/);
  expect(renderVariation(read)).toBe(text);
  expect(read.knows).toBe('condition');
  expect(read.sessions).toEqual(STATEMENT.sessions);
  expect(read.bodies['dunmere']!.day.step.map(({ size }) => size)).toEqual([0, 0.2, 0.5]);
  expect(read.bodies['dunmere']!.day.step.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 14);
});
