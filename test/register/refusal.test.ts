import { expect, it } from 'vitest';
import { estimateSession } from '../../src/analysis/estimate.ts';
import type { Estimator } from '../../src/register/session-figures.ts';
import { compileSessions } from '../../src/register/compilation.ts';
import { located } from '../../src/register/located.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const AT_59_94 = { rate: '59.94', resolution: 'uhd', 'audio-out': 'off' };
const stamp = (ms: number): string => (ms / 1000).toFixed(3);

function row(line: number, sourceMs: number, latencyMs: number) {
  const shownMs = sourceMs - latencyMs;
  return reading(line, latencyMs, {
    sourceMs,
    shownMs,
    cells: { run: '1', source: stamp(sourceMs), shown: stamp(shownMs) },
  });
}

const SOUND = [row(2, 7013, 133), row(3, 9019, 127), row(4, 11_044, 121), row(5, 13_069, 134), row(6, 15_081, 129)];

function messageOf(run: () => unknown): string {
  try {
    run();
    return 'nothing';
  } catch (error) {
    return (error as Error).message;
  }
}

/** Refuses whatever scatters by more than this, as an analysis of a rig does. */
const strict: Estimator = (input) => {
  const latencies = input.runs.flatMap(({ latenciesMs }) => latenciesMs);
  if (Math.max(...latencies) - Math.min(...latencies) > 60) throw new RangeError('no delay gives these readings');
  return estimateSession(input);
};

it('names the row without which a session can be estimated, and the digit that would fit', () => {
  const slipped = session('a', AT_59_94, { readings: [...SOUND, row(7, 17_129, 1128)] });
  expect(messageOf(() => compileSessions(bench([slipped]), { estimator: strict }))).toBe(
    [
      '1 problem in 1 file:',
      '',
      'data/sessions/a.csv:7  the readings of this session cannot be analysed (no delay gives these readings). Without this reading the others can be analysed, and it would fit as source 16.129 or shown 17.001: look at the film again, correct it, or say under exclude why it does not count.',
    ].join('\n'),
  );
});

it('names the session alone where no single row explains it', () => {
  const estimator: Estimator = () => {
    throw new RangeError('Maximum call stack size exceeded');
  };
  expect(messageOf(() => compileSessions(bench([session('a', AT_59_94, { readings: SOUND })]), { estimator }))).toBe(
    [
      '1 problem in 1 file:',
      '',
      'data/sessions/a.csv  the readings of this session cannot be analysed (the numbers are out of all proportion). Check the readings against the film, and the rates in the rig, the display and the session.',
    ].join('\n'),
  );
});

it('reports every session that is refused, in one go', () => {
  const slipped = (id: string) => session(id, AT_59_94, { readings: [...SOUND, row(7, 17_129, 1128)] });
  expect(messageOf(() => compileSessions(bench([slipped('a'), slipped('b')]), { estimator: strict }))).toMatch(
    /^2 problems in 2 files:/,
  );
});

it('names the session without which several can be compiled together', () => {
  const compilation = compileSessions(bench(['a', 'b', 'c'].map((id) => session(id, AT_59_94, { readings: SOUND }))));
  const failsWithB = () =>
    located(
      'rate laws',
      ({ sessions }) => {
        if (sessions.some(({ session: { id } }) => id === 'b')) throw new Error('Invalid array length');
        return { figures: [], findings: [] };
      },
      compilation,
    );
  expect(messageOf(failsWithB)).toBe(
    [
      '1 problem in 1 file:',
      '',
      'data/sessions/b.md  rate laws cannot be computed from these files (the numbers are out of all proportion). Check what the session and its rig state, or take the session out.',
    ].join('\n'),
  );
});
