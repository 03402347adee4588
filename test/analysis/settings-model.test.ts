import { describe, expect, it } from 'vitest';
import type { FactorLevels, Factor, Term } from '../../src/analysis/design-matrix.ts';
import { fitSettings, type SettingsFit, type SettingsObservation } from '../../src/analysis/settings-model.ts';
import { proposeTerms } from '../../src/analysis/settings-terms.ts';
import { normalError } from '../support/budgeted.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { SI_RSTV } from '../support/nist-strd.ts';
import { NPK, NPK_FACTORS, WARPBREAKS, WARPBREAKS_FACTORS } from '../support/r-datasets.ts';
import { readReference } from '../support/r-reference.ts';

const r = readReference('linear-models');

function observations(
  rows: readonly { condition: FactorLevels; value: number }[],
  u: (i: number) => number = () => 1,
): SettingsObservation[] {
  return rows.map((row, i) => ({ ...row, standardUncertainty: u(i), error: normalError(u(i)) }));
}

function fitted(...args: Parameters<typeof fitSettings>): SettingsFit {
  const got = fitSettings(...args);
  if (got.kind !== 'fit') throw new Error(got.reason);
  return got;
}

/** Compares every line of R's anova, in its order: df, SS, MS, F, p. */
function expectAnova(got: SettingsFit, name: string, rows: readonly string[], digits: number): void {
  expect(got.anova.map((row) => row.term.join(':'))).toEqual(rows);
  got.anova.forEach((row) => {
    const label = row.term.join(':').replace('instrument', 'factor(instrument)');
    const [df = 0, sum = 0, mean = 0, f = 0, p = 0] = r(`${name}.${label}`);
    expect(row.degreesOfFreedom, label).toBe(df);
    expectDigits(row.sumOfSquares, sum, digits, `${label} SS`);
    expectDigits(row.meanSquare, mean, digits, `${label} MS`);
    expectDigits(row.statistic, f, digits, `${label} F`);
    expectDigits(row.p, p, digits, `${label} p`);
  });
  expectDigits(got.residual.sumOfSquares, r(`${name}.Residuals`)[1] ?? 0, digits, 'residual SS');
  expect(got.residual.degreesOfFreedom).toBe(r(`${name}.Residuals`)[0]);
}

const NPK_TERMS: readonly Term[] = [
  ['block'],
  ['N'],
  ['P'],
  ['K'],
  ['N', 'P'],
  ['N', 'K'],
  ['P', 'K'],
  ['N', 'P', 'K'],
];

describe("R's anova", () => {
  it('npk: a replicated factorial in blocks, one interaction confounded with them', () => {
    const got = fitted(observations(NPK), NPK_FACTORS, NPK_TERMS, { scale: 'residual' });
    expectAnova(got, 'npk', ['block', 'N', 'P', 'K', 'N:P', 'N:K', 'P:K'], 11);
  });

  it('warpbreaks: two factors and their interaction', () => {
    const terms = [['wool'], ['tension'], ['wool', 'tension']];
    const got = fitted(observations(WARPBREAKS), WARPBREAKS_FACTORS, terms, { scale: 'residual' });
    expectAnova(got, 'warpbreaks', ['wool', 'tension', 'wool:tension'], 12);
    // R's treatment-coded coefficients of wool:tension are the differences of differences, after four others
    expect(
      got.interactions.map(
        (one) => `${one.setting} ${one.from} → ${one.to}, ${one.with.setting} ${one.with.from} → ${one.with.to}`,
      ),
    ).toEqual(['wool 1 → 2, tension 1 → 2', 'wool 1 → 2, tension 1 → 3']);
    got.interactions.forEach((interaction, k) => {
      if (interaction.kind !== 'effect') throw new Error(interaction.reason);
      expectDigits(interaction.value, r('warpbreaks.full.estimate')[k + 4] ?? 0, 12);
      expectDigits(interaction.standardUncertainty, r('warpbreaks.full.se')[k + 4] ?? 0, 12);
      expectDigits(interaction.interval.low, r('warpbreaks.full.confint')[2 * (k + 4)] ?? 0, 11);
    });
  });

  it('warpbreaks with weights that differ from row to row', () => {
    const u = (i: number): number => Math.sqrt(3 / ((i % 6) + 1));
    const got = fitted(observations(WARPBREAKS, u), WARPBREAKS_FACTORS, [['wool'], ['tension']], { scale: 'residual' });
    expectAnova(got, 'warpbreaks.weighted', ['wool', 'tension'], 12);
    got.effects.forEach((effect, k) => {
      if (effect.kind !== 'effect') throw new Error(effect.reason);
      expectDigits(effect.value, r('warpbreaks.weighted.estimate')[k + 1] ?? 0, 12);
      expectDigits(effect.standardUncertainty, r('warpbreaks.weighted.se')[k + 1] ?? 0, 12);
      expectDigits(effect.interval.low, r('warpbreaks.weighted.confint')[2 * k + 2] ?? 0, 12);
      expectDigits(effect.interval.high, r('warpbreaks.weighted.confint')[2 * k + 3] ?? 0, 11);
    });
  });

  it('NIST StRD SiRstv (certified F 1.18046237440255)', () => {
    const rows = SI_RSTV.flatMap((values, i) =>
      values.map((value) => ({ value, condition: { instrument: String(i) } })),
    );
    const factors: Factor[] = [{ id: 'instrument', kind: 'unordered', levels: ['0', '1', '2', '3', '4'] }];
    const got = fitted(observations(rows), factors, [['instrument']], { scale: 'residual' });
    expectDigits(got.anova[0]?.sumOfSquares, 5.11462616e-2, 12);
    expectDigits(got.residual.sumOfSquares, 2.1663656e-1, 12);
    expectDigits(got.anova[0]?.statistic, 1.18046237440255, 12);
  });
});

it('npk: main effects are differences of marginal means (R 4.2.2, mean with − mean without)', () => {
  const got = fitted(observations(NPK), NPK_FACTORS, NPK_TERMS.slice(0, -1), { scale: 'residual' });
  const values = new Map(
    got.effects.map((effect) => [effect.setting, effect.kind === 'effect' ? effect.value : undefined]),
  );
  expectDigits(values.get('N'), 5.616666667, 9.5);
  expectDigits(values.get('P'), -1.183333333, 9.5);
  expectDigits(values.get('K'), -3.983333333, 9.5);
});

describe('what cannot be separated', () => {
  it('npk: the three-way interaction and the blocks, named, with conditions that would separate them', () => {
    const [alias, ...more] = fitted(observations(NPK), NPK_FACTORS, NPK_TERMS, { scale: 'residual' }).aliases;
    expect(more).toEqual([]);
    expect(alias?.terms.map((term) => term.join(':'))).toContain('block');
    expect(alias?.terms.map((term) => term.join(':'))).toContain('N:P:K');
    expect(alias?.separatedBy).toHaveLength(3);
    // each block holds one half of the design: a plot from the other half is what is missing
    for (const condition of alias?.separatedBy ?? []) {
      expect(NPK.some((row) => JSON.stringify(row.condition) === JSON.stringify(condition))).toBe(false);
      const fit = fitted(observations([...NPK, { condition, value: 55 }]), NPK_FACTORS, NPK_TERMS, {
        scale: 'residual',
      });
      expect(fit.aliases).toEqual([]);
    }
  });

  it('a condition that is missing and would not separate them is no suggestion', () => {
    // plot 110 of block 5 belongs to the half that block holds anyway; with 110 of block 1 first it is the nearest
    // change
    const plotOf = ({ condition: { block, N, P, K } }: { condition: FactorLevels }): string => `${block} ${N}${P}${K}`;
    const rest = NPK.filter((row) => plotOf(row) !== '5 110').sort(
      (a, b) => Number(plotOf(b) === '1 110') - Number(plotOf(a) === '1 110'),
    );
    expect(rest).toHaveLength(NPK.length - 1);
    const blockFiveFirst = NPK_FACTORS.map((f) =>
      f.id === 'block' ? { ...f, levels: ['5', '1', '2', '3', '4', '6'] } : f,
    );
    const [alias] = fitted(observations(rest), blockFiveFirst, NPK_TERMS, { scale: 'residual' }).aliases;
    for (const condition of alias?.separatedBy ?? []) {
      const fit = fitted(observations([...rest, { condition, value: 55 }]), blockFiveFirst, NPK_TERMS, {
        scale: 'residual',
      });
      expect(fit.aliases, JSON.stringify(condition)).toEqual([]);
    }
    expect(alias?.separatedBy).toHaveLength(3);
  });

  const factors: Factor[] = [
    { id: 'rate', kind: 'ordered', levels: ['24', '60'] },
    { id: 'audio', kind: 'unordered', levels: ['off', 'on'] },
    { id: 'depth', kind: 'unordered', levels: ['8', '10'] },
  ];
  const rows = [
    { condition: { rate: '24', audio: 'off', depth: '8' }, value: 300 },
    { condition: { rate: '60', audio: 'on', depth: '8' }, value: 150 },
    { condition: { rate: '24', audio: 'off', depth: '10' }, value: 304 },
    { condition: { rate: '60', audio: 'on', depth: '10' }, value: 155 },
  ];
  const got = fitted(
    observations(rows, () => 2),
    factors,
    [['rate'], ['audio'], ['depth']],
    { scale: 'stated' },
  );

  it('two settings that always change together are both refused, a third is not', () => {
    expect(got.effects.map((effect) => [effect.setting, effect.kind])).toEqual([
      ['rate', 'not-estimable'],
      ['audio', 'not-estimable'],
      ['depth', 'effect'],
    ]);
    expect(got.aliases).toEqual([
      {
        kind: 'confounded',
        terms: [['rate'], ['audio']],
        separatedBy: [
          { rate: '60', audio: 'off', depth: '8' },
          { rate: '24', audio: 'on', depth: '8' },
          { rate: '60', audio: 'off', depth: '10' },
        ],
      },
    ]);
  });

  it('the suggested session separates them', () => {
    const extra = { condition: got.aliases[0]?.separatedBy[0] ?? {}, value: 120 };
    const fit = fitted(
      observations([...rows, extra], () => 2),
      factors,
      [['rate'], ['audio'], ['depth']],
      { scale: 'stated' },
    );
    expect(fit.aliases).toEqual([]);
    expect(fit.effects.every((effect) => effect.kind === 'effect')).toBe(true);
  });
});

const names = (terms: readonly Term[]): string[] => terms.map((term) => term.join(':'));

describe('proposeTerms', () => {
  const withoutBlocks = NPK_FACTORS.slice(1);

  it('a full factorial of three supports all its interactions of two', () => {
    expect(
      names(
        proposeTerms(
          NPK.map((row) => row.condition),
          withoutBlocks,
        ),
      ),
    ).toEqual(['N', 'P', 'K', 'N:P', 'N:K', 'P:K']);
  });

  it('a half of it supports none: each is confounded with the third factor (NIST/SEMATECH e-Handbook 5.3.3.4)', () => {
    const half = NPK.filter((row) => ['1', '5', '6'].includes(row.condition['block'] ?? '')).map(
      (row) => row.condition,
    );
    expect(
      names(
        proposeTerms(
          half.filter(({ N, P, K }) => (Number(N) + Number(P) + Number(K)) % 2 === 0),
          withoutBlocks,
        ),
      ),
    ).toEqual(['N', 'P', 'K']);
  });

  it('takes small interactions before large ones', () => {
    expect(
      names(
        proposeTerms(
          NPK.map((row) => row.condition),
          NPK_FACTORS,
        ),
      ).slice(0, 7),
    ).toEqual(['block', 'N', 'P', 'K', 'N:P', 'N:K', 'P:K']);
  });

  it('keeps settings that cannot be separated, leaves out those that never vary, and spends no last condition', () => {
    const conditions = [
      ['24', 'off'],
      ['60', 'on'],
      ['24', 'off'],
    ].map(([rate = '', audio = '']) => ({ rate, audio, chroma: '420' }));
    const factors = ['rate', 'audio', 'chroma'].map(
      (id): Factor => ({ id, kind: 'unordered', levels: ['24', '60', 'off', 'on', '420'] }),
    );
    expect(proposeTerms(conditions, factors)).toEqual([['rate'], ['audio']]);
    const square = ['24', '60'].flatMap((rate) => ['off', 'on'].map((audio) => ({ rate, audio, chroma: '420' })));
    expect(proposeTerms(square, factors)).toEqual([['rate'], ['audio']]);
    expect(proposeTerms(square, factors, 0)).toEqual([['rate'], ['audio'], ['rate', 'audio']]);
    expect(proposeTerms([], factors)).toEqual([]);
  });
});

describe('an interaction with a cell nobody measured', () => {
  // audio adds 10 at 24 and 4 at 60 frames/s, and was not tried at 30
  const cells = [
    ['24', 'off', 100],
    ['24', 'on', 110],
    ['30', 'off', 80],
    ['60', 'off', 50],
    ['60', 'on', 54],
  ] as const;
  const rows = [...cells, ...cells].map(([rate, audio, value]) => ({ condition: { rate, audio }, value }));
  const factors: Factor[] = [
    { id: 'rate', kind: 'ordered', levels: ['24', '30', '60'] },
    { id: 'audio', kind: 'unordered', levels: ['off', 'on'] },
  ];
  const terms: Term[] = [['rate'], ['audio'], ['rate', 'audio']];
  const got = fitted(observations(rows), factors, terms, { scale: 'stated' });

  it('gives the effect over the levels that were measured, and names them', () => {
    const over = got.effects.find((effect) => effect.setting === 'audio');
    expect(over?.over).toEqual({ rate: ['24', '60'] });
    // (10 + 4)/2
    expectDigits(over?.kind === 'effect' ? over.value : undefined, 7, 12);
  });

  it('gives the interaction between levels that were measured: 4 − 10', () => {
    expect(
      got.interactions.map((one) => [
        one.from,
        one.to,
        one.kind === 'effect' ? Number(one.value.toFixed(9)) : one.reason,
      ]),
    ).toEqual([
      ['24', '30', 'not-separable'],
      ['24', '60', -6],
    ]);
  });

  it('names the cell', () => {
    expect(got.aliases).toEqual([
      { kind: 'empty-cells', terms: [['rate', 'audio']], separatedBy: [{ rate: '30', audio: 'on' }] },
    ]);
  });

  it('names it as such too where the cell belongs to the first level', () => {
    const others: Factor[] = [{ id: 'rate', kind: 'ordered', levels: ['30', '24', '60'] }, ...factors.slice(1)];
    expect(fitted(observations(rows), others, terms, { scale: 'stated' }).aliases.map((alias) => alias.kind)).toEqual([
      'empty-cells',
    ]);
  });
});

describe('stated uncertainties', () => {
  const factors: Factor[] = [{ id: 'audio', kind: 'unordered', levels: ['off', 'on'] }];
  const rows = [
    { condition: { audio: 'off' }, value: 100 },
    { condition: { audio: 'on' }, value: 112 },
  ];

  it('two sessions are a difference with both uncertainties, by arithmetic', () => {
    const [effect] = fitted(
      observations(rows, (i) => [3, 4][i] ?? 0),
      factors,
      [['audio']],
      { scale: 'stated' },
    ).effects;
    if (effect?.kind !== 'effect') throw new Error('an effect expected');
    expectDigits(effect.value, 12, 13);
    expectDigits(effect.standardUncertainty, 5, 13);
    expectDigits(effect.interval.low, 12 - 1.95996398454005 * 5, 13);
    // 90 % normal limits of 12 ± 5: at most 12 + 1.64485362695147·5
    expectDigits(effect.atMost, 20.22426813475735, 13);
  });

  it('are widened by the Birge ratio where they do not explain the scatter', () => {
    const four = [...rows, { condition: { audio: 'off' }, value: 130 }, { condition: { audio: 'on' }, value: 142 }];
    const got = fitted(
      observations(four, () => 5),
      factors,
      [['audio']],
      { scale: 'stated' },
    );
    // residuals ±15, u 5: χ² 36 on 2, ratio √18; effect 12 with u 5·√18 on 2
    expectDigits(got.consistency?.chiSquare, 36, 13);
    expectDigits(got.consistency?.inflation, Math.sqrt(18), 13);
    const [effect] = got.effects;
    if (effect?.kind !== 'effect') throw new Error('an effect expected');
    expectDigits(effect.standardUncertainty, 5 * Math.sqrt(18), 13);
    // t of 0.975 on 2 degrees of freedom, 4.30265272991
    expectDigits((effect.interval.high - effect.value) / effect.standardUncertainty, 4.30265272991, 10);
  });
});

it('an ordered setting is given step by step, an unordered one against its first level, a numeric one per unit', () => {
  const rows = ['a', 'b', 'c', 'a', 'b', 'c'].map((level, i) => ({
    condition: { x: level },
    value: [1, 4, 9, 1.5, 4.5, 9.5][i] ?? 0,
  }));
  const levels = ['a', 'b', 'c'];
  const steps = (factor: Factor): (readonly [string, string, number | undefined])[] =>
    fitted(observations(rows), [factor], [['x']], { scale: 'residual' }).effects.map((effect) => [
      effect.from,
      effect.to,
      effect.kind === 'effect' ? Number(effect.value.toFixed(9)) : undefined,
    ]);
  expect(steps({ id: 'x', kind: 'ordered', levels })).toEqual([
    ['a', 'b', 3],
    ['b', 'c', 5],
  ]);
  expect(steps({ id: 'x', kind: 'unordered', levels })).toEqual([
    ['a', 'b', 3],
    ['a', 'c', 8],
  ]);
  // least squares slope of means 1.25, 4.25, 9.25 on 2, 4, 6 by arithmetic: 8/4
  expect(steps({ id: 'x', kind: 'numeric', levels, numbers: [2, 4, 6] })).toEqual([['a', 'c', 2]]);
});

describe('bad questions get a reason', () => {
  const factors: Factor[] = [{ id: 'x', kind: 'unordered', levels: ['a', 'b'] }];
  const at = (level: string, value: number): { condition: FactorLevels; value: number } => ({
    condition: { x: level },
    value,
  });
  it.each([
    ['too-few', [at('a', 1)], 'stated'],
    ['nothing-varies', [at('a', 1), at('a', 2)], 'stated'],
    ['no-residual', [at('a', 1), at('b', 2)], 'residual'],
    ['no-scatter', [at('a', 1), at('b', 2), at('b', 2)], 'residual'],
    ['no-scatter', [at('a', 0.1), at('b', 0.1), at('b', 0.1)], 'residual'],
  ] as const)('%s', (reason, rows, scale) => {
    expect(fitSettings(observations(rows), factors, [['x']], { scale })).toEqual({ kind: 'not-estimable', reason });
  });

  it('names settings that never vary', () => {
    const both: Factor[] = [...factors, { id: 'y', kind: 'numeric', levels: ['5'], numbers: [5] }];
    const rows = [at('a', 1), at('b', 2)].map((row) => ({ ...row, condition: { ...row.condition, y: '5' } }));
    expect(fitted(observations(rows), both, [['x'], ['y']], { scale: 'stated' }).constant).toEqual(['y']);
  });

  it.each([
    ["'c' is no level of 'x': a, b", [at('a', 1), at('c', 2)], [['x']]],
    ["a condition says nothing of 'x'", [at('a', 1), { condition: {}, value: 2 }], [['x']]],
    ["a term names 'z', which is no declared factor", [at('a', 1), at('b', 2)], [['z']]],
  ] as const)('%s', (message, rows, terms) => {
    expect(() => fitSettings(observations(rows), factors, terms, { scale: 'stated' })).toThrow(message);
  });
});
