/** What must change nothing about an estimate, and how little may change much (seeds of fast-check written out). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain } from '../../src/analysis/chain.ts';
import { estimateSession, type Estimate } from '../../src/analysis/estimate.ts';
import { seededRandom } from '../../src/analysis/random.ts';
import type { RunInput, SessionInput } from '../../src/analysis/session-input.ts';
import { simulateTwoTimers } from '../../src/analysis/simulate.ts';
import { rate, type Rate } from '../../src/model/rate.ts';

const RATES: readonly Rate[] = [rate(24), rate(25), rate(30000, 1001), rate(50), rate(60000, 1001)];

/**
 * Clips and readings as they would be taken on a bench that follows its rates, jitters, or differs from clip to clip.
 */
const sessions = fc
  .record({
    seed: fc.integer({ min: 1, max: 1e6 }),
    body: fc.constantFrom(...RATES),
    clips: fc.integer({ min: 1, max: 4 }),
    readings: fc.integer({ min: 2, max: 8 }),
    jitterMs: fc.constantFrom(0, 4),
    apartMs: fc.constantFrom(0, 0, 15),
  })
  .map(({ seed, body, clips, readings, jitterMs, apartMs }): SessionInput => {
    const chain: Chain = {
      source: { refresh: rate(60) },
      body: { rate: body },
      display: { refresh: rate(60), sync: 'input' },
    };
    const random = seededRandom(seed);
    const runs = Array.from({ length: clips }, (_, clip): RunInput => {
      const truth = { pipelineMs: 120 + clip * apartMs, jitterMs };
      const stamps = simulateTwoTimers(chain, truth, { readings, spacingMs: 900 }, 1, random);
      return {
        sourceMs: stamps.map(({ sourceMs }) => sourceMs),
        latenciesMs: stamps.map(({ sourceMs, shownMs }) => sourceMs - shownMs),
      };
    });
    return { method: 'two-timers', chain, resolutionMs: 1, runs };
  });

const RUNS = { seed: 20260, numRuns: 25 };

function expectAlike(a: Estimate, b: Estimate, scale = 1): void {
  expect(Math.abs(a.value - b.value / scale)).toBeLessThan(0.02);
  expect(Math.abs(a.expandedUncertainty - b.expandedUncertainty / scale)).toBeLessThan(0.02 * a.expandedUncertainty);
}

const inRuns = (input: SessionInput, of: (run: RunInput) => RunInput): SessionInput => ({
  ...input,
  runs: input.runs.map(of),
});

describe('an estimate does not depend on', () => {
  it('the order of readings within a clip, nor of clips', () => {
    fc.assert(
      fc.property(sessions, (input) => {
        const turned = inRuns(input, ({ sourceMs, latenciesMs }) => ({
          sourceMs: sourceMs!.toReversed(),
          latenciesMs: latenciesMs.toReversed(),
        }));
        expectAlike(estimateSession(input), estimateSession({ ...turned, runs: turned.runs.toReversed() }));
      }),
      RUNS,
    );
  });

  it('when the timer was started: a common shift of all stamps, by whole refreshes', () => {
    fc.assert(
      fc.property(sessions, fc.integer({ min: 1, max: 999 }), (input, refreshes) => {
        const later = inRuns(input, ({ sourceMs, latenciesMs }) => ({
          sourceMs: sourceMs!.map((ms) => ms + (refreshes * 1000) / 60),
          latenciesMs,
        }));
        expectAlike(estimateSession(input), estimateSession(later));
      }),
      RUNS,
    );
  });

  it('the unit of time: everything taken twice as slow is twice as long', () => {
    const half = ({ frames, seconds }: Rate): Rate => rate(frames, 2 * seconds);
    fc.assert(
      fc.property(sessions, (input) => {
        const { chain } = input;
        const slow = inRuns(
          {
            ...input,
            resolutionMs: 2,
            chain: {
              source: { refresh: half(chain.source!.refresh) },
              body: { rate: half(chain.body.rate) },
              display: { ...chain.display, refresh: half(chain.display.refresh) },
            },
          },
          ({ sourceMs, latenciesMs }) => ({
            sourceMs: sourceMs!.map((ms) => 2 * ms),
            latenciesMs: latenciesMs.map((ms) => 2 * ms),
          }),
        );
        expectAlike(estimateSession(input), estimateSession(slow), 2);
      }),
      RUNS,
    );
  });
});

describe('an estimate is smooth', () => {
  const halfWidth = (input: SessionInput): number => estimateSession(input).expandedUncertainty;
  const inFirst = (input: SessionInput, of: (values: readonly number[]) => number[]): SessionInput => ({
    ...input,
    runs: input.runs.map(({ sourceMs, latenciesMs }, i) =>
      i === 0 ? { sourceMs: of(sourceMs!), latenciesMs: of(latenciesMs) } : { sourceMs: sourceMs!, latenciesMs },
    ),
  });

  it('a further reading widens no interval by a fifth', () => {
    fc.assert(
      fc.property(sessions, (input) => {
        const less = halfWidth(inFirst(input, (values) => values.slice(0, -1)));
        expect(halfWidth(input)).toBeLessThan(1.2 * less);
      }),
      RUNS,
    );
  });

  it('one reading changed by 1 ms moves the half-width by less than 15 %', () => {
    fc.assert(
      fc.property(sessions, (input) => {
        const [first, ...others] = input.runs;
        const moved = { ...first!, latenciesMs: first!.latenciesMs.map((ms, i) => (i === 1 ? ms + 1 : ms)) };
        const [before, after] = [halfWidth(input), halfWidth({ ...input, runs: [moved, ...others] })];
        expect(Math.abs(after / before - 1)).toBeLessThan(0.15);
      }),
      RUNS,
    );
  });
});
