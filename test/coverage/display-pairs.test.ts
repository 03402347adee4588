import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { estimateDisplayPair } from '../../src/analysis/display-pair.ts';
import { PAIR_ROWS, PAIR_SPACING_MS, inputOf } from './pair-rows.ts';
import {
  firstPair,
  isAcceptedPair,
  judgePairs,
  PAIR_SESSIONS,
  PAIR_TABLE_FILE,
  pairSeedOf,
  type PairCoverageTable,
  type PairTableRow,
} from './pair-table.ts';
import { LEVEL } from './table.ts';
import { worldRandom } from './world.ts';

describe('the published table of displays side by side', () => {
  const { level, rows } = JSON.parse(readFileSync(PAIR_TABLE_FILE, 'utf8')) as PairCoverageTable;

  it('has every row of the bench, with as many sessions as it promises', () => {
    expect(level).toBe(LEVEL);
    expect(
      rows.map(({ rig, runs, readings, spacingMs, fault }) => ({ rig, runs, readings, spacingMs, fault })),
    ).toEqual(
      PAIR_ROWS.map(({ name, runs, readings, fault }) => ({
        rig: name,
        runs,
        readings,
        spacingMs: PAIR_SPACING_MS,
        fault,
      })),
    );
    for (const { sessions } of rows) expect(sessions).toBeGreaterThanOrEqual(PAIR_SESSIONS);
  });

  it.each(PAIR_ROWS.map(({ name }, index) => ({ name, index })))(
    'is up to date: $name (else: npm run coverage -- displays)',
    ({ index }) => {
      const first = firstPair(index);
      expect(first.valueMs).toBeCloseTo(rows[index]!.first.valueMs, 6);
      expect(first.halfWidthMs).toBeCloseTo(rows[index]!.first.halfWidthMs, 6);
    },
  );

  it('accepts every row, and would not accept a coverage that is clearly off', () => {
    expect(rows.filter((row) => !isAcceptedPair(row)).map(({ rig }) => rig)).toEqual([]);
    const withCoverage = (coverage: number, fault?: true): PairTableRow => ({
      ...rows[0]!,
      ...(fault && { fault }),
      sessions: 600,
      difference: { coverage, halfWidthMs: 1 },
    });
    expect([0.9, 0.93, 0.98, 1].map((coverage) => isAcceptedPair(withCoverage(coverage)))).toEqual([
      false,
      true,
      true,
      false,
    ]);
    expect([0.89, 0.92, 1].map((coverage) => isAcceptedPair(withCoverage(coverage, true)))).toEqual([
      false,
      true,
      true,
    ]);
  });

  it('reaches back to the seeds that made it', () =>
    expect(new Set(PAIR_ROWS.map((_, index) => pairSeedOf(index))).size).toBe(PAIR_ROWS.length));

  it('counts as the bench does: few sessions of one row, once more', () => {
    const [row, draw] = [PAIR_ROWS[0]!, worldRandom(pairSeedOf(0))];
    const held = Array.from({ length: 20 }, () => {
      const { world, session } = row.draw(draw);
      const { interval } = estimateDisplayPair(inputOf(row, world, session));
      return Number(session.differenceMs >= interval.low && session.differenceMs <= interval.high);
    });
    expect(judgePairs(0, 20).difference.coverage).toBe(held.reduce((sum, one) => sum + one, 0) / 20);
  });

  it('would notice intervals half as wide', () => {
    const row = PAIR_ROWS.find(({ name }) => name.startsWith('both follow, observer 59.94'))!;
    const draw = worldRandom(77);
    let held = 0;
    for (let i = 0; i < 60; i += 1) {
      const { world, session } = row.draw(draw);
      const { value, expandedUncertainty } = estimateDisplayPair(inputOf(row, world, session));
      held += Number(Math.abs(value - session.differenceMs) <= expandedUncertainty / 2);
    }
    expect(held / 60).toBeLessThan(0.9);
  }, 60_000);
});
