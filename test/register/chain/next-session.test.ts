import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { estimateDisplayPair } from '../../../src/analysis/display-pair.ts';
import { compileChain } from '../../../src/register/chain/chain-figures.ts';
import { EXPECTED_U_MS, nextPair } from '../../../src/register/chain/next-session.ts';
import { findIslands } from '../../../src/register/chain/network.ts';
import { inputOf, PAIR_ROWS } from '../../coverage/pair-rows.ts';
import { PAIR_TABLE_FILE, type PairCoverageTable } from '../../coverage/pair-table.ts';
import { worldRandom } from '../../coverage/world.ts';
import { display } from '../../support/displays.ts';
import { compilationOf, figureOf, given, givenPair } from '../../support/joint-bench.ts';

const STATED = { valueMs: 14, standardUncertaintyMs: 0.5, source: 'A light sensor' };
const displays = [display('hall', 'Hall', STATED), display('stage', 'Stage')];
const on = (id: string, screen: string, value: number, u: number) =>
  given(id, '60', value, u, { body: 'alba-one', display: screen });
/** The stage's display is known, and badly: 14 + 25, ± 10 and a little. */
const TOTALS = [on('a-hall', 'hall', 120, 1), on('a-stage', 'stage', 145, 10)];
const follows = (): boolean => false;

describe('the session that would settle most', () => {
  it('narrows the part that is known worst, as far as sessions so simulated do', () => {
    const next = nextPair(findIslands(compilationOf(TOTALS, { displays })).islands, follows);
    expect(next?.gains).toEqual([]);
    expect(next?.narrows?.part).toBe('display/stage');
    const { fromMs = Number.NaN, toMs = Number.NaN } = next?.narrows ?? {};
    // by hand: √(10² + 1² + 0.5²) · 1.96
    expect(fromMs).toBeCloseTo(1.959964 * Math.hypot(10, 1, 0.5), 3);

    const row = PAIR_ROWS.find(({ name }) => name === 'both follow, observer 240/s')!;
    const draw = worldRandom(611);
    const widths = Array.from({ length: 24 }, () => {
      const { world, session } = row.draw(draw);
      const { value, standardUncertainty } = estimateDisplayPair(inputOf(row, world, session));
      const pair = givenPair(
        'stage-beside-hall',
        'stage',
        'hall',
        value - session.differenceMs + 25,
        standardUncertainty,
      );
      const { interval } = figureOf(
        compileChain(compilationOf(TOTALS, { displays }, [pair])).figures,
        'element/display/stage',
      );
      return ((interval?.high ?? Number.NaN) - (interval?.low ?? Number.NaN)) / 2;
    });
    const mean = widths.reduce((sum, width) => sum + width, 0) / widths.length;
    // half-widths of single sessions scatter by a quarter of themselves, so that 24 of them tell their mean to a
    // twentieth
    expect(Math.abs(mean / toMs - 1)).toBeLessThan(0.15);
  });

  it('expects of a session what the published table of simulated ones says, to a tenth', () => {
    const { rows } = JSON.parse(readFileSync(PAIR_TABLE_FILE, 'utf8')) as PairCoverageTable;
    const widthOf = (name: string): number =>
      rows.find(({ rig }) => rig === name)?.difference.halfWidthMs ?? Number.NaN;
    ['both follow, observer 240/s', 'shown free, observer 50/s', 'both free'].forEach((name, free) => {
      expect(Math.abs((1.96 * (EXPECTED_U_MS[free] ?? Number.NaN)) / widthOf(name) - 1), name).toBeLessThan(0.1);
    });
  });

  it('is not named where every part is known as well as two displays can tell', () => {
    const totals = [on('a-hall', 'hall', 120, 1), on('a-stage', 'stage', 145, 1)];
    expect(nextPair(findIslands(compilationOf(totals, { displays })).islands, follows)).toBeUndefined();
  });
});
