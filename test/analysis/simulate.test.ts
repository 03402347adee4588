import { describe, expect, it } from 'vitest';
import { totalFromPipelineMs, type Chain } from '../../src/analysis/chain.ts';
import { seededRandom } from '../../src/analysis/random.ts';
import { simulateFrameCounts, simulateTwoTimers } from '../../src/analysis/simulate.ts';
import { intervalMs, rate } from '../../src/model/rate.ts';

const PIPELINE_MS = 217.3;

/**
 * One reading a run, so that all phases are fresh and independent: the closed form of the model.
 * Variance `T_d²/12 + T_s²/6 + T_m²/12 + r²/6` and full range `T_d + 2·T_s (+ T_m) + 2·r`: sums of
 * independent rectangular variables, each of variance width²/12 (JCGM 100, 4.3.7); the source's age and
 * truncation enter twice. Coarse timers are left out: their truncation is not independent of the refresh.
 */
const CASES: { name: string; chain: Chain; resolutionMs: number }[] = [
  {
    name: '24000/1001 against 60.02, locked display',
    chain: chainOf(rate(24000, 1001), rate(3001, 50)),
    resolutionMs: 1,
  },
  { name: '50 against 120, free-running 60', chain: chainOf(rate(50), rate(120), 'free'), resolutionMs: 0.01 },
  { name: '60 against 60, locked display', chain: chainOf(rate(60), rate(60)), resolutionMs: 1 },
];
const RUNS = 20_000;

function chainOf(body: Chain['body']['rate'], source: Chain['body']['rate'], sync: 'input' | 'free' = 'input'): Chain {
  return { source: { refresh: source }, body: { rate: body }, display: { refresh: rate(60), sync } };
}

describe('simulateTwoTimers', () => {
  it.each(CASES)('has the mean, variance and range of the closed form: $name', ({ chain, resolutionMs }) => {
    const random = seededRandom(20_260_411);
    const sampling = { readings: 1, spacingMs: 1000 };
    // errors, for a fresh pipeline delay each time: at one fixed delay latencies are whole refreshes, and their range
    // is stepped
    const errors = Array.from({ length: RUNS }, () => {
      const pipelineMs = random.between(200, 300);
      const [stamp] = simulateTwoTimers(chain, { pipelineMs }, sampling, resolutionMs, random);
      return stamp!.sourceMs - stamp!.shownMs - totalFromPipelineMs(pipelineMs, chain);
    });
    const [bodyMs, sourceMs] = [intervalMs(chain.body.rate), intervalMs(chain.source!.refresh)];
    const displayMs = chain.display.sync === 'free' ? 1000 / 60 : 0;
    const variance = bodyMs ** 2 / 12 + sourceMs ** 2 / 6 + displayMs ** 2 / 12 + resolutionMs ** 2 / 6;
    const mean = errors.reduce((sum, value) => sum + value, 0) / RUNS;
    const spread = errors.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (RUNS - 1);
    // five standard errors: of a mean σ/√n, of a variance at most σ²·√(2/n) (kurtosis below the normal's)
    expect(Math.abs(mean)).toBeLessThan(5 * Math.sqrt(variance / RUNS));
    expect(Math.abs(spread / variance - 1)).toBeLessThan(5 * Math.sqrt(2 / RUNS));
    const range = Math.max(...errors) - Math.min(...errors);
    const full = bodyMs + 2 * sourceMs + displayMs + 2 * resolutionMs;
    expect(range).toBeLessThanOrEqual(full);
    expect(range).toBeGreaterThan(0.85 * full);
  });

  it('keeps one phase for a whole run where rates are locked', () => {
    const stamps = simulateTwoTimers(
      CASES[2]!.chain,
      { pipelineMs: PIPELINE_MS },
      { readings: 40, spacingMs: 313 },
      0.001,
      seededRandom(3),
    );
    // 60 against 60: latency is a whole number of refreshes, and the body's phase adds one more or none
    const refreshes = new Set(stamps.map(({ sourceMs, shownMs }) => Math.round((sourceMs - shownMs) * 0.06)));
    expect(refreshes.size).toBeLessThanOrEqual(2);
  });

  it('cuts stamps to the resolution and goes on from the start value', () => {
    const stamps = simulateTwoTimers(
      CASES[0]!.chain,
      { pipelineMs: 50 },
      { readings: 5, spacingMs: 500, startMs: 30_000 },
      10,
      seededRandom(4),
    );
    expect(stamps).toHaveLength(5);
    for (const { sourceMs, shownMs } of stamps) {
      expect(sourceMs % 10).toBe(0);
      expect(shownMs % 10).toBe(0);
      expect(sourceMs).toBeGreaterThan(30_000);
    }
  });

  it('reads too little where the shown digits stand lower in the observer’s picture', () => {
    const base = CASES[0]!.chain;
    const skewed: Chain = { ...base, observer: { rate: rate(240), readoutMs: 8, sourceRow: 0.25, displayRow: 0.75 } };
    const mean = (chain: Chain): number => {
      const random = seededRandom(11);
      let sum = 0;
      for (let i = 0; i < RUNS; i += 1) {
        const [stamp] = simulateTwoTimers(
          chain,
          { pipelineMs: PIPELINE_MS },
          { readings: 1, spacingMs: 1000 },
          1,
          random,
        );
        sum += stamp!.sourceMs - stamp!.shownMs;
      }
      return sum / RUNS;
    };
    const sd = Math.sqrt((1001 / 24) ** 2 / 12 + (1000 / 60.02) ** 2 / 6);
    expect(Math.abs(mean(skewed) - (mean(base) - 4))).toBeLessThan(5 * sd * Math.sqrt(2 / RUNS));
  });
});

describe('simulateFrameCounts', () => {
  it('has the total latency as its mean', () => {
    const chain: Chain = {
      body: { rate: rate(25) },
      display: { refresh: rate(60), sync: 'free' },
      observer: { rate: rate(240) },
    };
    const random = seededRandom(5);
    let sum = 0;
    for (let i = 0; i < RUNS; i += 1) {
      sum += simulateFrameCounts(chain, { pipelineMs: PIPELINE_MS }, { readings: 1, spacingMs: 1000 }, random)[0]!;
    }
    const variance = 40 ** 2 / 12 + (1000 / 60) ** 2 / 12 + (1000 / 240) ** 2 / 6;
    expect(Math.abs((sum / RUNS) * (1000 / 240) - totalFromPipelineMs(PIPELINE_MS, chain))).toBeLessThan(
      5 * Math.sqrt(variance / RUNS),
    );
  });

  it('says what is missing', () => {
    const chain: Chain = { body: { rate: rate(25) }, display: { refresh: rate(60), sync: 'free' } };
    expect(() => simulateFrameCounts(chain, { pipelineMs: 1 }, { readings: 1, spacingMs: 1 }, seededRandom(1))).toThrow(
      /give chain.observer/,
    );
    expect(() =>
      simulateTwoTimers(chain, { pipelineMs: 1 }, { readings: 1, spacingMs: 1 }, 1, seededRandom(1)),
    ).toThrow(/give chain.source/);
  });
});
