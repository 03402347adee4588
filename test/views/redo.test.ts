import { describe, expect, it } from 'vitest';
import type { Bench } from '../../src/model/bench.ts';
import type { Figure } from '../../src/register/register.ts';
import { exactLines, redoOf } from '../../src/views/redo.ts';

const READINGS = 'data/display-pairs/hall-beside-stage.csv';
const figure = (id: string, kind: Figure['kind'], rest: Partial<Figure>): Figure => ({
  id,
  kind,
  of: {},
  unit: 'ms',
  value: 0,
  readings: 0,
  runs: 0,
  excluded: 0,
  sources: [{ file: READINGS, sha256: '' }],
  text: '',
  label: '',
  entry: '',
  ...rest,
});
const part = (name: string, standardUncertainty: number, shared: string | null) => ({
  name,
  type: 'B' as const,
  distribution: 'rectangular',
  standardUncertainty,
  degreesOfFreedom: null,
  share: 0,
  shared,
});

const PAIR = figure('display-difference/hall-beside-stage', 'display-difference', {
  value: 25,
  label: 'Delay of one display over another: Hall less Stage',
  components: [
    part('phase of the picture', 3, null),
    part('phase of the displays', 4, null),
    part('output offset', 2, 'outputs:Laptop'),
    part('display scan-out', 0, 'display:hall'),
  ],
});
const bench = {
  sessions: [],
  displayPairs: [{ id: 'hall-beside-stage', readingsFile: { path: READINGS } }],
} as unknown as Bench;
const site = { bench, figure: (id: string) => (id === PAIR.id ? PAIR : undefined) };

describe('what a part of the chain is computed from', () => {
  it('lists displays read side by side: the difference, its own u = √(3² + 4²), and what is shared', () => {
    const element = figure('element/display/hall/than/stage', 'element', { value: 24.5 });
    expect(redoOf(site, element)?.inputs).toEqual([
      {
        id: PAIR.id,
        title: PAIR.label,
        path: '/display-pairs/hall-beside-stage/',
        line: 'y = 25 ms, own u = 5 ms',
        shared: ['output offset 2 ms (outputs:Laptop)'],
      },
    ]);
  });

  it('leaves out pairs whose readings it does not rest on', () => {
    const element = figure('element/display/hall', 'element', { sources: [] });
    expect(redoOf(site, element)?.inputs).toEqual([]);
  });

  it('may be printed as an exact line of the pair', () => {
    expect(exactLines(PAIR)).toContain('y = 25 ms, own u = 5 ms');
    expect(exactLines(PAIR)).toContain('output offset 2 ms (outputs:Laptop)');
  });
});

describe('what an effect is computed from', () => {
  const withWeight = (weights: NonNullable<Figure['weights']>) =>
    redoOf(site, figure('effect/made-up/hall/gain/low/high', 'effect', { weights }));

  it('lists each, and the weight of those that have one in the sum', () => {
    const redo = withWeight([{ figure: PAIR.id, weight: -0.25 }]);
    expect(redo?.inputs.map(({ line }) => line)).toEqual(['y = 25 ms, own u = 5 ms']);
    expect(redo?.weights).toEqual([{ id: PAIR.id, weight: -0.25 }]);
    expect(withWeight([])?.weights).toEqual([]);
  });
});
