import { describe, expect, it } from 'vitest';
import { compileCarried } from '../../src/register/carried/carried-figures.ts';
import { compileChain } from '../../src/register/chain/chain-figures.ts';
import { publish } from '../../src/register/published.ts';
import { carriedPage } from '../../src/views/carried-page.ts';
import { compilationOf, given, settings, type GivenTotal } from '../support/joint-bench.ts';
import { display } from '../support/displays.ts';

const LOUD = settings('60', { 'audio-out': 'on' });
const on = (id: string, body: string, screen: string, value: number, more: Parameters<typeof given>[4] = {}) =>
  given(id, '60', value, 1, { body, display: screen, ...more });
const TOTALS = [
  on('a-hall', 'alba-one', 'hall', 120),
  on('b-stage', 'brae', 'stage', 90),
  on('a-hall-loud', 'alba-one', 'hall', 130, { settings: LOUD }),
  on('a-stage-loud', 'alba-one', 'stage', 155, { settings: LOUD }),
];

function page(totals: readonly GivenTotal[]) {
  const displays = [
    display('hall', 'Hall', { valueMs: 14, standardUncertaintyMs: 0.5, source: 'A light sensor' }),
    display('stage', 'Stage'),
    display('foyer', 'Foyer'),
  ];
  const compilation = compilationOf(totals, { displays });
  const parts = [compileChain(compilation), compileCarried(compilation)];
  const figures = [...compilation.sessions.flatMap((one) => one.figures), ...parts.flatMap((part) => part.figures)];
  const findings = parts.flatMap((part) => part.findings);
  return carriedPage(publish(compilation, { analysis: '', figures, findings }, []));
}

describe('what the page of carried totals prints', () => {
  it('a column for each display that says something, and beside what is carried what was measured', () => {
    const { displays, bodies } = page(TOTALS);
    expect(displays).toEqual(['a display of 5\u00a0ms', 'Hall', 'Stage']);
    // by hand: Alba 120 − 14 + 5, 120 as read, 120 + 25; Brae 90 − 39 + 5, 90 − 25, 90 as read
    expect(
      bodies.map(({ name, cells }) => [
        name,
        ...cells.map(({ figure, isMeasured }) => `${figure?.text}${isMeasured ? ', measured' : ''}`),
      ]),
    ).toEqual([
      ['Alba One', '111.0 ± 2.2 ms', '120 ms, measured', '145.0 ± 3.4 ms'],
      ['Brae', '56.0 ± 3.5 ms', '65.0 ± 3.4 ms', '90 ms, measured'],
    ]);
  });

  it('the bodies of a condition, lowest first, and how they compare', () => {
    const [condition] = page(TOTALS).conditions;
    expect(condition?.totals.map(({ name }) => name)).toEqual(['Brae', 'Alba One']);
    expect(condition?.compared.rows.map(({ label, verdict }) => `${label}: ${verdict.text}`)).toEqual([
      'Alba One against Brae: slower by 55.0 ± 3.9 ms',
    ]);
  });

  it('what nothing joins, with what would', () => {
    const { conditions, findings } = page(TOTALS.slice(0, 2));
    expect(conditions).toEqual([]);
    expect(findings.map(({ rule }) => rule)).toEqual(['carried-not-joined']);
  });
});
