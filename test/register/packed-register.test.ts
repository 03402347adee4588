import { describe, expect, it } from 'vitest';
import { readRegister, renderPacked } from '../../src/register/packed-register.ts';
import type { Component, Figure, Register } from '../../src/register/register.ts';
import { renderRegister } from '../../src/register/render-register.ts';

const [A, B] = ['a', 'b'].map((name) => ({ file: `data/${name}.csv`, sha256: name.repeat(64) }));
const PHASE: Component = {
  name: 'phase',
  type: 'B',
  distribution: 'rectangular',
  standardUncertainty: 0.1,
  degreesOfFreedom: null,
  share: 0.25,
  shared: null,
};

function figureOf(id: string, rest: Partial<Figure>): Figure {
  const counted = { readings: 3, runs: 1, excluded: 0, text: '1 ms', label: 'Total', entry: `/a/#${id}` };
  return { id, kind: 'total', of: { session: id }, unit: 'ms', value: 1 / 3, sources: [A!], ...counted, ...rest };
}

const REGISTER: Register = {
  analysis: '9',
  figures: [
    figureOf('total/a', { components: [PHASE, { ...PHASE, degreesOfFreedom: 4.5, standardUncertainty: 0.2 }] }),
    figureOf('total/b', { components: [PHASE, { ...PHASE, shared: 'rig:balcony' }], sources: [A!, B!] }),
    figureOf('ratio/a/b', { inWords: 'A over B. On 2.5 Hz. ', group: 'Pairs', sources: [B!, A!], components: [] }),
    figureOf('ratio/b/a', { inWords: 'B over A. On 2.5 Hz. ', group: 'Pairs', sources: [A!, B!] }),
    figureOf('mean/a', { interval: { low: -1e-9, high: 0.1 + 0.2, level: 0.95 } }),
  ],
  findings: [{ rule: 'drift', severity: 'note', where: { session: 'a' }, message: 'It drifts.', hint: 'Look.' }],
};

describe('the packed register', () => {
  it('is read as what was packed, to the last digit', () => {
    expect(readRegister(renderPacked(REGISTER))).toStrictEqual(REGISTER);
    const none = { analysis: '9', figures: [], findings: [] };
    expect(readRegister(renderPacked(none))).toStrictEqual(none);
  });

  it('states what figures have in common once, and leaves out what is never published', () => {
    const own = { kind: 'normal', standardDeviation: 1 } as unknown as NonNullable<Figure['own']>;
    const text = renderPacked({ ...REGISTER, figures: REGISTER.figures.map((figure) => ({ ...figure, own })) });
    const stated = JSON.parse(text) as Readonly<Record<string, unknown>>;
    expect(stated).toMatchObject({
      $schema: 'figures.schema.json',
      format: 2,
      files: [A, B],
      sources: [[0], [0, 1], [1, 0]],
      words: ['Pairs', 'A over B.', 'On 2.5 Hz.', '', 'B over A.'],
    });
    expect((stated['lines'] as readonly unknown[]).length).toBe(3);
    expect(text).not.toContain('"own"');
  });

  it('has a line for each figure', () => {
    const lines = renderPacked(REGISTER).split('\n');
    expect(lines.filter((line) => line.startsWith('{"id":')).length).toBe(REGISTER.figures.length);
  });

  it('is read spelled out as well', () => {
    expect(readRegister(renderRegister(REGISTER))).toStrictEqual(REGISTER);
  });

  it.each([
    ['[]', 'it states no figures'],
    ['{"format":3,"figures":[]}', 'it is of format 3, and only 2 can be read'],
    [renderPacked(REGISTER).replace('"sources":2', '"sources":7'), 'it refers to item 7 of 3'],
  ])('is refused where it makes no sense: %#', (text, says) => {
    expect(() => readRegister(text)).toThrow(says);
  });
});
