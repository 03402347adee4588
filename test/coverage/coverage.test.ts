import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { judge } from './judge.ts';
import { ROWS } from './rows.ts';
import {
  ACCEPTED,
  ALL_ROWS,
  firstSession,
  isAccepted,
  LEVEL,
  seedOf,
  SESSIONS,
  TABLE_FILE,
  type CoverageTable,
} from './table.ts';
import { xoshiro } from './world.ts';

/** Probability of at most `k` successes in `n` trials of probability `p`, in logarithms. */
function binomialCdf(k: number, n: number, p: number): number {
  let log = n * Math.log(1 - p);
  let sum = Math.exp(log);
  for (let i = 1; i <= k; i += 1) {
    log += Math.log((n - i + 1) / i) + Math.log(p / (1 - p));
    sum += Math.exp(log);
  }
  return sum;
}

describe('the world', () => {
  it('draws the numbers of xoshiro128**', () => {
    // from the state 1, 2, 3, 4: rotl(2·5, 7)·9 = 11520, then rotl(0, 7)·9 = 0 (by hand; the next two from memory of
    // the reference program's vector)
    const draw = xoshiro([1, 2, 3, 4]);
    expect([1, 2, 3, 4].map(() => draw() * 2 ** 32)).toEqual([11520, 0, 5927040, 70819200]);
  });
});

describe('the coverage bench, in short', () => {
  const SESSIONS = 12;

  it('finds the truth inside the interval as often as accepted, over all rows', () => {
    const held = ROWS.reduce((sum, row, i) => sum + judge(row, SESSIONS, 77_000 + i).total.coverage * SESSIONS, 0);
    const trials = ROWS.length * SESSIONS;
    // one in ten thousand would fall outside by chance if every row were just acceptable
    expect(binomialCdf(Math.round(held), trials, ACCEPTED.low)).toBeGreaterThan(1e-4);
    expect(1 - binomialCdf(Math.round(held) - 1, trials, ACCEPTED.high)).toBeGreaterThan(1e-4);
  }, 120_000);

  it('can tell a bad interval: the textbook’s fails where rates are locked', () => {
    const locked = ROWS.find(({ name, spacingMs }) => name === '60 against 60' && spacingMs === 300)!;
    const { textbook } = judge(locked, 100, 5);
    expect(binomialCdf(Math.round(textbook.coverage * 100), 100, ACCEPTED.low)).toBeLessThan(1e-4);
  });
});

describe('the published table', () => {
  const table = JSON.parse(readFileSync(TABLE_FILE, 'utf8')) as CoverageTable;

  it('has every row of the bench, with as many sessions as it promises', () => {
    expect(table.level).toBe(LEVEL);
    expect(
      table.rows.map(({ rig, spacingMs, runs, readings, method }) => ({
        name: rig,
        spacingMs,
        runs,
        readings,
        method,
      })),
    ).toEqual(
      ALL_ROWS.map(({ name, spacingMs, runs, readings, method }) => ({ name, spacingMs, runs, readings, method })),
    );
    for (const { sessions, fault } of table.rows)
      expect(sessions).toBeGreaterThanOrEqual(fault ? SESSIONS.faulty : SESSIONS.sound);
  });

  it.each(ALL_ROWS.map((row, index) => ({ row, index, name: row.name, spacingMs: row.spacingMs })))(
    'is up to date: $name, $spacingMs ms (else: npm run coverage)',
    ({ row, index }) => {
      const first = firstSession(row, index);
      expect(first.valueMs).toBeCloseTo(table.rows[index]!.first.valueMs, 6);
      expect(first.halfWidthMs).toBeCloseTo(table.rows[index]!.first.halfWidthMs, 6);
    },
  );

  it('accepts every row, for totals and for differences', () => {
    for (const row of table.rows) {
      const { rig, spacingMs, sessions, total, difference } = row;
      expect(isAccepted(total.coverage, sessions, row), `total: ${rig}, ${spacingMs} ms, ${total.coverage}`).toBe(true);
      expect(
        isAccepted(difference.coverage, sessions / 2, row),
        `difference: ${rig}, ${spacingMs} ms, ${difference.coverage}`,
      ).toBe(true);
    }
  });

  it('would not accept a coverage that is clearly off', () => {
    expect([0.9, 0.93, 0.98, 0.99].map((coverage) => isAccepted(coverage, 2000))).toEqual([false, true, true, false]);
    expect([0.9, 0.99].map((coverage) => isAccepted(coverage, 2000, { safeSide: true }))).toEqual([false, true]);
  });

  it('reaches back to the seeds that made it', () => {
    expect(new Set(ALL_ROWS.map((_, index) => seedOf(index))).size).toBe(ALL_ROWS.length);
  });
});
