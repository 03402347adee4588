import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planPair, planPairLadder, type PairSetup } from '../../src/analysis/plan-pairs.ts';
import { rate } from '../../src/model/rate.ts';
import { PAIR_TABLE_FILE, type PairCoverageTable } from '../coverage/pair-table.ts';

/** What a program that shares nothing with the analysis found: mean half-widths of 600 sessions of 4 × 4 readings. */
const { rows } = JSON.parse(readFileSync(PAIR_TABLE_FILE, 'utf8')) as PairCoverageTable;
const published = (name: string): number => rows.find(({ rig }) => rig === name)?.difference.halfWidthMs ?? Number.NaN;

const display = (isFree: boolean) =>
  ({ refresh: rate(60), sync: isFree ? 'free' : 'input', scanOutMs: 0, digitsRow: 0.5 }) as const;
const setup = (sourceFree: boolean, shownFree: boolean, observerHz: number): PairSetup => ({
  picture: { rate: rate(60) },
  source: display(sourceFree),
  shown: display(shownFree),
  observer: { rate: rate(observerHz), readoutMs: 0, sourceRow: 0.5, displayRow: 0.5 },
  outputs: { kind: 'stated', valueMs: 0, standardUncertaintyMs: 0 },
  resolutionMs: 1,
});

describe('what a comparison of two displays gives', () => {
  it.each([
    ['both follow, observer 240/s', setup(false, false, 240)],
    ['both follow, observer 50/s', setup(false, false, 50)],
    ['shown free, observer 50/s', setup(false, true, 50)],
  ] as const)('is expected as the published table has it: %s', (name, given) => {
    const planned = planPairLadder(given).rungs.find(({ runs, readings }) => runs === 4 && readings === 4);
    // half-widths of single sessions scatter by a quarter to a third of themselves: 16 of them, by a twelfth at most
    expect(Math.abs((planned?.halfWidthMs ?? Number.NaN) / published(name) - 1)).toBeLessThan(0.25);
  });

  it('narrows with every step of the ladder', () => {
    const widths = planPairLadder(setup(false, false, 50)).rungs.map(({ halfWidthMs }) => halfWidthMs);
    expect(widths).toEqual(widths.toSorted((a, b) => b - a));
    expect(new Set(widths).size).toBe(widths.length);
  });
});

describe('a plan for a half-width', () => {
  it('is the least work that reaches it', () => {
    const plan = planPair(setup(false, false, 50), 4);
    expect(plan).toMatchObject({ reached: true });
    expect(plan.halfWidthMs).toBeLessThanOrEqual(4);
    expect(plan.runs * plan.readings).toBeLessThanOrEqual(20);
  });

  it('says where outputs that nobody compared put it out of reach: a frame either way, rectangular', () => {
    const unknown: PairSetup = { ...setup(false, false, 50), outputs: { kind: 'unknown' } };
    const { floorMs } = planPairLadder(unknown).recommended;
    expect(floorMs).toBeCloseTo(1000 / 60 / Math.sqrt(3), 6);
  });

  it('refuses a wish that no plan can have', () =>
    expect(() => planPair(setup(false, false, 50), 0)).toThrow('above 0 ms'));
});
