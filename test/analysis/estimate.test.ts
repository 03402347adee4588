import { describe, expect, it } from 'vitest';
import { totalFromPipelineMs, type Chain } from '../../src/analysis/chain.ts';
import { estimateSession, runLikelihoods } from '../../src/analysis/estimate.ts';
import type { RunInput, SessionInput } from '../../src/analysis/session-input.ts';
import { halfWidthAbout } from '../../src/analysis/distribution.ts';
import { seededRandom } from '../../src/analysis/random.ts';
import { simulateFrameCounts, simulateTwoTimers, type Sampling, type Truth } from '../../src/analysis/simulate.ts';
import { rate, type Rate } from '../../src/model/rate.ts';

const PIPELINE_MS = 184.2;
const MIDDLE = { scanOutMs: 0, digitsRow: 0.5 };

function chainOf(body: Rate, more: Partial<Chain> = {}): Chain {
  return {
    source: { refresh: rate(60) },
    body: { rate: body },
    display: { refresh: rate(60), sync: 'input', ...MIDDLE },
    ...more,
  };
}

function twoTimers(
  chain: Chain,
  runs: number,
  sampling: Sampling,
  seed: number,
  truth: Partial<Truth> = {},
): SessionInput {
  const random = seededRandom(seed);
  return {
    method: 'two-timers',
    chain,
    resolutionMs: 1,
    runs: Array.from({ length: runs }, (): RunInput => {
      const stamps = simulateTwoTimers(chain, { pipelineMs: PIPELINE_MS, ...truth }, sampling, 1, random);
      return {
        sourceMs: stamps.map(({ sourceMs }) => sourceMs),
        latenciesMs: stamps.map(({ sourceMs, shownMs }) => sourceMs - shownMs),
      };
    }),
  };
}

const TEN = { readings: 10, spacingMs: 2000 };

describe('estimateSession', () => {
  it('gives equal results for equal input, whatever the order of the runs', () => {
    const input = twoTimers(chainOf(rate(25)), 3, { readings: 4, spacingMs: 900 }, 1);
    const once = estimateSession(input);
    expect(estimateSession(structuredClone(input))).toEqual(once);
    const turned = estimateSession({ ...input, runs: [...input.runs].reverse() });
    expect(Math.abs(turned.value - once.value)).toBeLessThan(1e-6);
    expect(Math.abs(turned.expandedUncertainty - once.expandedUncertainty)).toBeLessThan(1e-3);
  });

  it('moves with the timer: a later start of the same clip changes nothing', () => {
    const input = twoTimers(chainOf(rate(30000, 1001)), 1, TEN, 2);
    const later = {
      ...input,
      runs: input.runs.map(({ sourceMs, latenciesMs }) => ({
        latenciesMs,
        sourceMs: sourceMs!.map((ms) => ms + 3_600_000),
      })),
    };
    expect(Math.abs(estimateSession(later).value - estimateSession(input).value)).toBeLessThan(1e-3);
  });

  it('holds its own books: components add up to u, U = k·u, value ± U is the interval', () => {
    const observer = { rate: rate(240), readoutMs: 4, sourceRow: 0.4, displayRow: 0.6, clockTolerancePpm: 50 };
    const estimate = estimateSession(
      twoTimers(chainOf(rate(50), { observer, display: { refresh: rate(60), sync: 'free' } }), 2, TEN, 3),
    );
    const {
      components,
      standardUncertainty,
      coverageFactor,
      expandedUncertainty,
      value,
      interval,
      uncorrectedValue,
      corrections,
    } = estimate;
    expect(Math.hypot(...components.map((c) => c.standardUncertainty))).toBeCloseTo(standardUncertainty, 9);
    expect(coverageFactor * standardUncertainty).toBeCloseTo(expandedUncertainty, 9);
    // 95 % of a rectangular law take 0.95·√3 standard uncertainties, of Student's law on 9 degrees of freedom 2.26
    expect(coverageFactor).toBeGreaterThan(1.645);
    expect(coverageFactor).toBeLessThan(2.26);
    expect([interval.low, interval.high]).toEqual([value - expandedUncertainty, value + expandedUncertainty]);
    expect(uncorrectedValue + corrections.reduce((sum, c) => sum + c.valueMs, 0)).toBeCloseTo(value, 9);
    expect(components.map(({ name }) => name)).toEqual([
      'phase of the source',
      'phase of the body',
      'phase of the display',
      'phase of the observer',
      'timer resolution',
      'repeatability',
      'between runs',
      'source clock',
      'observer row skew',
      'display scan-out',
    ]);
    expect(components.flatMap(({ name, sharedKey }) => (sharedKey ? [[sharedKey, name]] : []))).toEqual([
      ['rig', 'source clock'],
      ['rig', 'observer row skew'],
      ['display-on-rig', 'display scan-out'],
    ]);
  });

  it('corrects a row-by-row observer, with its sign', () => {
    const skewed = { rate: rate(240), readoutMs: 4, sourceRow: 0.25, displayRow: 0.75 };
    const input = twoTimers(chainOf(rate(25), { observer: skewed }), 1, TEN, 4);
    const estimate = estimateSession(input);
    expect(estimate.value - estimate.uncorrectedValue).toBeCloseTo(2, 12);
    const upside = estimateSession({
      ...input,
      chain: chainOf(rate(25), { observer: { ...skewed, sourceRow: 0.75, displayRow: 0.25 } }),
    });
    expect(upside.value - upside.uncorrectedValue).toBeCloseTo(-2, 12);
  });

  it('stays wide however many readings share one locked phase, and narrows with restarts', () => {
    const locked = chainOf(rate(60), {
      body: { rate: rate(60), clockTolerancePpm: 0 },
      source: { refresh: rate(60), clockTolerancePpm: 0 },
    });
    const sixty = estimateSession(twoTimers(locked, 1, { readings: 60, spacingMs: 400 }, 5));
    // one phase, rectangular over a refresh: 95 % of it is ± 0.475 × 16.67 ms
    expect(sixty.expandedUncertainty).toBeGreaterThan(0.93 * 0.475 * (1000 / 60));
    expect(sixty.diagnostics.beats[0]).toMatchObject({ first: 'source', second: 'body', periodMs: Infinity });
    const restarted = estimateSession(twoTimers(locked, 6, { readings: 10, spacingMs: 400 }, 5));
    expect(restarted.expandedUncertainty).toBeLessThan(0.6 * sixty.expandedUncertainty);
  });

  it('says more than the mean of as many independent readings can, where rates drift past each other', () => {
    const drifting = chainOf(rate(24000, 1001), { source: { refresh: rate(3001, 50) } });
    const oneReading = Math.sqrt((1001 / 24) ** 2 / 12 + (1000 / 60.02) ** 2 / 6);
    const { expandedUncertainty } = estimateSession(twoTimers(drifting, 1, { readings: 90, spacingMs: 700 }, 6));
    expect(expandedUncertainty).toBeLessThan((0.9 * 1.96 * oneReading) / Math.sqrt(90));
  });

  it('speaks of these clips, and widens for a day where delays differ between clips', () => {
    const chain = chainOf(rate(25));
    const same = twoTimers(chain, 3, { readings: 5, spacingMs: 900 }, 7);
    const apart = {
      ...same,
      runs: same.runs.map(({ sourceMs, latenciesMs }, i) => ({
        sourceMs: sourceMs!.map((ms) => ms + 40 * i),
        latenciesMs: latenciesMs.map((ms) => ms + 40 * i),
      })),
    };
    const [agreeing, disagreeing] = [estimateSession(same), estimateSession(apart)];
    // the statement's own prior is 0.36: three clips that agree take from it
    expect(agreeing.diagnostics.betweenRunsProbability).toBeLessThan(0.36);
    expect(disagreeing.diagnostics.betweenRunsProbability).toBeGreaterThan(0.95);
    // each clip's own reading says as much as before, their mean moves with them
    expect(Math.abs(disagreeing.value - agreeing.value - 40)).toBeLessThan(agreeing.expandedUncertainty);
    expect(disagreeing.speaksOf).toBe('clips');
    // three means 40 ms apart: their standard error alone is 40/√3 ms
    expect(halfWidthAbout(disagreeing.errors.day, 0, 0.95)).toBeGreaterThan((2 * 40) / Math.sqrt(3));
    expect(halfWidthAbout(agreeing.errors.day, 0, 0.95)).toBeLessThan(40);
  });

  it('widens for jitter that the rates do not explain, and says so', () => {
    const chain = chainOf(rate(25));
    const calm = estimateSession(twoTimers(chain, 1, { readings: 20, spacingMs: 900 }, 8));
    const shaken = estimateSession(twoTimers(chain, 1, { readings: 20, spacingMs: 900 }, 8, { jitterMs: 80 }));
    expect(calm.diagnostics.jitterProbability).toBeLessThan(0.5);
    expect(shaken.diagnostics.jitterProbability).toBeGreaterThan(0.99);
    expect(shaken.diagnostics.birgeRatio!).toBeGreaterThan(1.5);
    expect(shaken.expandedUncertainty).toBeGreaterThan(2 * calm.expandedUncertainty);
    // repeatability is what is left beside the phases: k stays a coverage factor
    expect(shaken.components.find(({ name }) => name === 'repeatability')!.varianceShare).toBeGreaterThan(0.5);
    for (const { coverageFactor } of [calm, shaken]) expect(Math.abs(coverageFactor - 1.96)).toBeLessThan(0.3);
  });

  it('neither believes a misread stamp nor throws, and names it', () => {
    const input = twoTimers(chainOf(rate(24000, 1001)), 1, TEN, 9);
    const clean = estimateSession(input);
    expect(Math.max(...clean.diagnostics.misreads.flat())).toBeLessThan(0.1);
    for (const offMs of [-1000, -90, 300, 1000, 100_000]) {
      const runs = input.runs.map(({ sourceMs, latenciesMs }) => ({
        sourceMs: sourceMs!,
        latenciesMs: latenciesMs.map((ms, i) => (i === 3 ? ms + offMs : ms)),
      }));
      const { value, expandedUncertainty, diagnostics } = estimateSession({ ...input, runs });
      // what nine readings say lies within what ten said
      expect(Math.abs(value - clean.value)).toBeLessThan(clean.expandedUncertainty);
      expect(expandedUncertainty).toBeLessThan(2 * clean.expandedUncertainty);
      expect(diagnostics.misreads[0]![3]).toBeGreaterThan(0.95);
      expect(Math.max(...diagnostics.misreads[0]!.filter((_, i) => i !== 3))).toBeLessThan(0.2);
    }
  });

  it('takes readings at regular steps for what they are: one phase, seen again and again', () => {
    const regular = { readings: 10, spacingMs: 1000, spacingScatter: 0 };
    const { expandedUncertainty } = estimateSession(twoTimers(chainOf(rate(25)), 1, regular, 15));
    // one phase of the body (rectangular over 40 ms), of the source and of the reading (over 16.67 ms each): 95 % of
    // the sum of the three, whose standard deviation is 13.4 ms, take about ± 24 ms; ten fresh readings would give a
    // third of that
    expect(expandedUncertainty).toBeGreaterThan(18);
    expect(expandedUncertainty).toBeLessThan(27);
  });

  it('estimates from a single reading, as widely as one reading deserves', () => {
    const { expandedUncertainty, diagnostics } = estimateSession(
      twoTimers(chainOf(rate(25)), 1, { readings: 1, spacingMs: 900 }, 10),
    );
    // the trapezoid-like law of one reading has a standard deviation of √(40²/12 + 16.67²/6) = 13.4 ms
    expect(expandedUncertainty).toBeGreaterThan(1.6 * 13.4);
    expect(diagnostics.observedScatterMs).toBeUndefined();
    expect(diagnostics.birgeRatio).toBeUndefined();
  });

  it('takes frame counts and light-sensor readings through the same machinery', () => {
    const chain: Chain = {
      body: { rate: rate(25) },
      display: { refresh: rate(60), sync: 'input', ...MIDDLE },
      observer: { rate: rate(240), readoutMs: 0, sourceRow: 0.5, displayRow: 0.5 },
    };
    const random = seededRandom(11);
    const counts = simulateFrameCounts(chain, { pipelineMs: PIPELINE_MS }, { readings: 40, spacingMs: 1000 }, random);
    const counted = estimateSession({
      method: 'frame-count',
      chain,
      runs: [{ latenciesMs: counts.map((frames) => (frames * 1000) / 240) }],
    });
    const truth = totalFromPipelineMs(PIPELINE_MS, chain);
    expect(Math.abs(counted.value - truth)).toBeLessThan(counted.expandedUncertainty);
    // capture waits are uniform over 40 ms: 40 of them put the bounds within a few ms, the mean only ± 3.6 ms
    expect(counted.expandedUncertainty).toBeLessThan(3.6);
    const sensed = Array.from({ length: 40 }, () => PIPELINE_MS + random.uniform() * 40);
    const input = { method: 'instrument', chain, runs: [{ latenciesMs: sensed }] } as const;
    const exact = estimateSession(input);
    const stated = estimateSession({ ...input, instrumentUncertaintyMs: 5 });
    expect(Math.abs(exact.value - truth)).toBeLessThan(exact.expandedUncertainty);
    expect(stated.standardUncertainty).toBeCloseTo(Math.hypot(exact.standardUncertainty, 5), 9);
    // nearly all of it normal by now: k close to 1.96
    expect(stated.coverageFactor).toBeGreaterThan(1.9);
    expect(stated.coverageFactor).toBeLessThan(2.05);
    expect(stated.components.at(-1)).toMatchObject({ name: 'instrument', sharedKey: 'instrument' });
  });

  it('keeps the error of the session’s own part about 0', () => {
    const { errors, expandedUncertainty } = estimateSession(twoTimers(chainOf(rate(25)), 1, TEN, 12));
    const { clips: ownError } = errors;
    expect(ownError.masses.reduce((sum, mass, i) => sum + mass * (ownError.low + i * ownError.step), 0)).toBeCloseTo(
      0,
      9,
    );
    expect(halfWidthAbout(ownError, 0, 0.95)).toBeCloseTo(expandedUncertainty, 2);
  });

  const good = twoTimers(chainOf(rate(25)), 1, TEN, 13);
  const { source: _source, ...noSource } = good.chain;
  const { resolutionMs: _resolution, ...noResolution } = good;
  const REFUSED: { name: string; input: SessionInput; message: RegExp }[] = [
    { name: 'no run', input: { ...good, runs: [] }, message: /at least one run/ },
    {
      name: 'an empty run',
      input: { ...good, runs: [{ latenciesMs: [], sourceMs: [] }] },
      message: /at least one reading/,
    },
    { name: 'no source', input: { ...good, chain: noSource }, message: /give chain\.source/ },
    { name: 'no resolution', input: noResolution, message: /give resolutionMs/ },
    { name: 'missing stamps', input: { ...good, runs: [{ latenciesMs: [200] }] }, message: /give sourceMs/ },
    { name: 'no observer', input: { ...good, method: 'frame-count' }, message: /give chain\.observer/ },
    { name: 'no number', input: { ...good, runs: [{ latenciesMs: [NaN], sourceMs: [1] }] }, message: /finite/ },
    { name: 'an impossible level', input: { ...good, level: 95 }, message: /between 0 and 1/ },
  ];

  it.each(REFUSED)('says what to do about $name', ({ input, message }) => {
    expect(() => estimateSession(input)).toThrow(message);
  });
});

describe('runLikelihoods', () => {
  it('says of each run where its own total lies', () => {
    const same = twoTimers(chainOf(rate(25)), 2, TEN, 14);
    const [first, second] = same.runs as [RunInput, RunInput];
    const later = { ...second, latenciesMs: second.latenciesMs.map((ms) => ms + 100) };
    const apart = { ...same, runs: [first, { ...later, sourceMs: second.sourceMs!.map((ms) => ms + 100) }] };
    const best = runLikelihoods(apart).map(
      ({ lowMs, stepMs, logLikelihood }) => lowMs + stepMs * logLikelihood.indexOf(Math.max(...logLikelihood)),
    );
    // each within a third of a refresh of its truth, ten readings being enough to say so
    expect(Math.abs(best[0]! - (PIPELINE_MS + 20))).toBeLessThan(6);
    expect(Math.abs(best[1]! - (PIPELINE_MS + 120))).toBeLessThan(6);
  });
});
