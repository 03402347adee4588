import { describe, expect, it } from 'vitest';
import { planSession, powerOfPairs } from '../../src/analysis/plan.ts';
import { advisedSpacingMs, precisionTable, simulateTrials, type Setup } from '../../src/analysis/precision.ts';
import { rate } from '../../src/model/rate.ts';
import { setupOf } from '../support/rig-setup.ts';

describe('advisedSpacingMs', () => {
  it.each([
    {
      name: '59.94 against 60 beat every 16.68 s: nine gaps of 1.9 s',
      setup: setupOf(rate(60000, 1001)),
      readings: 10,
      spacingMs: 1900,
    },
    { name: 'locked rates never come round: no need to wait', setup: setupOf(rate(60)), readings: 10, spacingMs: 500 },
    { name: 'few readings: waiting has its end', setup: setupOf(rate(60000, 1001)), readings: 3, spacingMs: 4000 },
  ])('$name', ({ setup, readings, spacingMs }) => {
    expect(advisedSpacingMs(setup, readings)).toBe(spacingMs);
  });
});

describe('precisionTable', () => {
  it('shows restarts doing what readings cannot where rates are locked', () => {
    const [ten, sixty, restarts] = precisionTable(setupOf(rate(60)), [
      { runs: 1, readings: 10, spacingMs: 500 },
      { runs: 1, readings: 60, spacingMs: 500 },
      { runs: 6, readings: 5, spacingMs: 500 },
    ]);
    expect(sixty!.halfWidthMs).toBeGreaterThan(0.7 * ten!.halfWidthMs);
    expect(restarts!.halfWidthMs).toBeLessThan(0.65 * sixty!.halfWidthMs);
  });

  it('is the same every time', () => {
    const design = [{ runs: 2, readings: 4, spacingMs: 700 }];
    expect(precisionTable(setupOf(rate(25)), design, 3)).toEqual(precisionTable(setupOf(rate(25)), design, 3));
  });
});

describe('simulateTrials', () => {
  it('has errors that fit the uncertainties, for every method', () => {
    const counted: Setup = {
      method: 'frame-count',
      chain: {
        body: { rate: rate(25) },
        display: { refresh: rate(60), sync: 'free', digitsRow: 0.5 },
        observer: { rate: rate(240), readoutMs: 4, sourceRow: 0.2, displayRow: 0.9 },
      },
    };
    const sensed: Setup = {
      method: 'instrument',
      chain: { body: { rate: rate(25) }, display: { refresh: rate(60), sync: 'input' } },
    };
    for (const setup of [setupOf(rate(50)), counted, sensed]) {
      const trials = simulateTrials(setup, { runs: 1, readings: 10, spacingMs: 800 }, 20);
      const inside = trials.filter(({ estimate, errorMs }) => Math.abs(errorMs) <= estimate.expandedUncertainty).length;
      // P(fewer than 15 of 20 at 95 %) is below 1 in 1000
      expect(inside, setup.method).toBeGreaterThanOrEqual(15);
    }
  });
});

describe('planSession', () => {
  it('asks for more as more is wanted', () => {
    const setup = setupOf(rate(50));
    const rough = planSession(setup, { kind: 'half-width', halfWidthMs: 12 });
    const fine = planSession(setup, { kind: 'half-width', halfWidthMs: 3 });
    expect(rough).toMatchObject({ reached: true });
    expect(fine).toMatchObject({ reached: true });
    expect(rough.halfWidthMs).toBeLessThanOrEqual(12);
    expect(fine.halfWidthMs).toBeLessThanOrEqual(3);
    expect(fine.runs * fine.readings).toBeGreaterThan(rough.runs * rough.readings);
  });

  it('plans for a difference by its power', () => {
    const plan = planSession(setupOf(rate(50)), { kind: 'difference', differenceMs: 20, power: 0.8 });
    expect(plan.reached).toBe(true);
    expect(plan.power).toBeGreaterThanOrEqual(0.8);
    // a difference of two is told from 0 half the time at √2·U: 80 % takes more than that
    expect(plan.halfWidthMs * Math.SQRT2).toBeLessThan(20);
  });

  it('counts a difference as seen only where its interval leaves 0 out', () => {
    const trials = simulateTrials(setupOf(rate(50)), { runs: 1, readings: 8, spacingMs: 800 }, 16);
    // no difference: at most the upper tail of 2.5 %, and pairs share trials
    expect(powerOfPairs(trials, 0)).toBeLessThan(0.12);
    expect(powerOfPairs(trials, 100)).toBe(1);
  });

  it('refuses wishes that no plan can have', () => {
    expect(() => planSession(setupOf(rate(50)), { kind: 'half-width', halfWidthMs: 0 })).toThrow(/above 0 ms/);
    expect(() => planSession(setupOf(rate(50)), { kind: 'difference', differenceMs: 3, power: 1 })).toThrow(
      /between 0 and 1/,
    );
  });
});
