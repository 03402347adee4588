import { describe, expect, it } from 'vitest';
import { estimateDisplayPair } from '../../src/analysis/display-pair.ts';
import type { PairInput } from '../../src/analysis/pair-input.ts';
import { evenSteps } from '../../src/analysis/even-steps.ts';
import { rate } from '../../src/model/rate.ts';

const T = 1000 / 60;
const LOCKED = { refresh: rate(60), sync: 'input', scanOutMs: 12, digitsRow: 0.5 } as const;
const FREE = { ...LOCKED, sync: 'free' } as const;
const OBSERVER = { rate: rate(50), readoutMs: 10, sourceRow: 0.5, displayRow: 0.5 } as const;
const SPLITTER = { kind: 'stated', valueMs: 0, standardUncertaintyMs: 0 } as const;

/** Frames of a 60 Hz picture: the source shows frame n, the other one `late` frames older. Values cut to 1 ms. */
function readingsOf(frames: readonly number[], late: readonly number[]): PairInput['runs'][number] {
  const stamp = (n: number): number => Math.floor(n * T);
  return {
    sourceMs: frames.map(stamp),
    latenciesMs: frames.map((n, i) => stamp(n) - stamp(n - late[i]!)),
  };
}
const FRAMES = [
  [211, 303, 379, 482],
  [190, 287, 361, 477],
  [233, 318, 399, 513],
  [205, 296, 414, 509],
] as const;
const input = (late: readonly (readonly number[])[], more: Partial<PairInput> = {}): PairInput => ({
  picture: { rate: rate(60) },
  source: LOCKED,
  shown: LOCKED,
  observer: OBSERVER,
  outputs: SPLITTER,
  runs: FRAMES.map((frames, run) => readingsOf(frames, late[run]!)),
  resolutionMs: 1,
  ...more,
});
const alike = (late: number): readonly (readonly number[])[] => FRAMES.map(() => [late, late, late, late]);
const HALF = [
  [0, 1, 0, 1],
  [1, 0, 1, 0],
  [0, 1, 1, 0],
  [1, 0, 0, 1],
] as const;

describe('two displays side by side', () => {
  it('that always show the same frame differ by less than a frame, and by nothing on the mean', () => {
    const { value, interval } = estimateDisplayPair(input(alike(0)));
    expect(Math.abs(value)).toBeLessThan(1.5);
    expect(interval.high).toBeLessThan(T);
  });

  it('half of whose readings are one frame apart differ by about half a frame', () => {
    const { value, expandedUncertainty } = estimateDisplayPair(input(HALF));
    expect(Math.abs(value - T / 2)).toBeLessThan(expandedUncertainty);
    expect(expandedUncertainty).toBeLessThan(T / 2);
  });

  it('give the opposite the other way round', () => {
    const there = estimateDisplayPair(input(HALF, { shown: FREE }));
    const turned = input(HALF, { source: FREE });
    const back = estimateDisplayPair({
      ...turned,
      runs: turned.runs.map(({ sourceMs = [], latenciesMs }) => ({
        sourceMs: sourceMs.map((ms, i) => ms - latenciesMs[i]!),
        latenciesMs: latenciesMs.map((ms) => -ms),
      })),
    });
    expect(back.value).toBeCloseTo(-there.value, 9);
    expect(back.expandedUncertainty).toBeCloseTo(there.expandedUncertainty, 9);
  });

  it('add half a refresh where the shown one has its own clock', () => {
    const [locked, free] = [input(alike(1)), input(alike(1), { shown: FREE })].map(estimateDisplayPair);
    // every frame waits T_m/2 on the mean; what is read is the same
    expect(free!.uncorrectedValue).toBeGreaterThan(locked!.interval.low);
    expect(free!.standardUncertainty).toBeGreaterThan(locked!.standardUncertainty);
  });

  it('are corrected to mid-screen on both, with sign: 12 ms of scan-out, a quarter of the height each way', () => {
    const { value, uncorrectedValue } = estimateDisplayPair(
      input(HALF, { shown: { ...LOCKED, digitsRow: 0.25 }, source: { ...LOCKED, digitsRow: 0.75 } }),
    );
    // 12·(0.5 − 0.25) − 12·(0.5 − 0.75) = 6
    expect(value - uncorrectedValue).toBeCloseTo(6, 9);
  });

  it('are corrected for what stands lower in the observer’s picture: 10 ms of readout, 0.3 of the height', () => {
    const { value, uncorrectedValue } = estimateDisplayPair(
      input(HALF, { observer: { ...OBSERVER, sourceRow: 0.4, displayRow: 0.7 } }),
    );
    expect(value - uncorrectedValue).toBeCloseTo(3, 9);
  });

  it('on two outputs that nobody compared are uncertain by a frame either way: u = T/√3', () => {
    const { components } = estimateDisplayPair(input(HALF, { outputs: { kind: 'unknown' } }));
    expect(components.find(({ name }) => name === 'output offset')).toMatchObject({
      standardUncertainty: T / Math.sqrt(3),
      shared: 'outputs',
    });
  });

  it('is told of a misread pair', () => {
    const wrong = input(HALF);
    const [first, ...rest] = wrong.runs;
    const runs = [{ ...first!, latenciesMs: first!.latenciesMs.with(2, first!.latenciesMs[2]! + 300) }, ...rest];
    const { misreads, value } = estimateDisplayPair({ ...wrong, runs });
    expect(misreads[0]![2]).toBeGreaterThan(0.9);
    expect(Math.abs(value - T / 2)).toBeLessThan(T / 2);
  });

  it.each([
    ['no run', { runs: [] }, /at least one run/],
    ['no step', { resolutionMs: 0 }, /give resolutionMs/],
    ['no stamps', { runs: [{ latenciesMs: [1] }] }, /give sourceMs/],
  ] as const)('refuse %s', (_name, more, message) =>
    expect(() => estimateDisplayPair(input(HALF, more))).toThrow(message),
  );
});

describe('even steps', () => {
  it('are found over several short clips', () =>
    expect(
      evenSteps([
        [0, 1303, 2600, 3897],
        [500, 1797, 3100],
      ]),
    ).toBe(true));
  it('are none where steps differ, or where there are few', () => {
    expect(
      evenSteps([
        [0, 1303, 2600],
        [0, 1500, 2600, 4000],
      ]),
    ).toBe(false);
    expect(evenSteps([[0, 1300, 2600]])).toBe(false);
  });
});
