import { describe, expect, it } from 'vitest';
import type { Diagnostics } from '../../src/analysis/diagnostics.ts';
import { compileSession, type SessionFigures } from '../../src/register/session-figures.ts';
import { findingsOf, RULES } from '../../src/register/findings/findings.ts';
import { lookup } from '../../src/register/lookup.ts';
import type { Session } from '../../src/model/bench.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const AT_59_94 = { rate: '59.94', resolution: 'uhd', 'audio-out': 'off' };
/** Deviations in ms that look like nothing in particular. */
const PLAIN = [3, -7, 12, -2, 8, -11, 1, 6, -9, 4, -4, -1];

/** A moment as a timer of 60 Hz shows it: the begin of its refresh, cut to milliseconds. */
function shownAt(ms: number): number {
  return Math.floor((Math.floor((ms * 60) / 1000) * 1000) / 60);
}

function readings(latencies: readonly number[], run = 1, firstLine = 2) {
  return latencies.map((latencyMs, index) => {
    const moment = 7013 + 1709 * index + (index % 7) * 131;
    return reading(firstLine + index, latencyMs, {
      run,
      sourceMs: shownAt(moment),
      shownMs: shownAt(moment - latencyMs),
    });
  });
}

/** A session with diagnostics as a rule should meet them. */
function compiled(diagnostics: Partial<Diagnostics> = {}, more: Partial<Session> = {}): SessionFigures {
  const plain = session('a', AT_59_94, { readings: readings(PLAIN.map((ms) => 130 + ms)), ...more });
  const whole = compileSession(plain, lookup(bench([plain])));
  const calm: Diagnostics = {
    readings: plain.readings.filter(({ excluded }) => excluded === undefined).length,
    runs: 5,
    longestRunMs: 3000,
    beats: [],
    observedScatterMs: 8,
    scatterDegreesOfFreedom: 11,
    expectedScatterMs: 8,
    birgeRatio: 1,
    jitterProbability: 0.1,
    betweenRunsProbability: 0.1,
    stampsAgreeWithRates: true,
    misreads: [],
  };
  return { ...whole, estimate: { ...whole.estimate, diagnostics: { ...calm, ...diagnostics } } };
}

const beat = (periodMs: number, p = 1, q = 1) => [{ first: 'source', second: 'body', p, q, periodMs } as const];

const CASES: readonly [rule: string, compiled: SessionFigures, message: string, hint: string][] = [
  [
    'beating-rates',
    compiled({ runs: 1, beats: beat(16_683.3) }),
    'The source timer’s 60 Hz and the body’s 59.94 frames/s beat every 16.7 s, and 12 readings here span 3.0 s: readings within one clip share their phase error.',
    'Spread the readings of a clip over at least 17 s, or restart the clip at least 4 times.',
  ],
  [
    'beating-rates',
    compiled({ runs: 2, beats: beat(Infinity) }),
    'The source timer’s 60 Hz and the body’s 59.94 frames/s stay locked: all readings of a clip share their phase error, however long it is.',
    'Restart the clip at least 4 times; more readings in one clip do not help.',
  ],
  [
    'one-run-only',
    compiled({ runs: 1 }),
    'All 12 readings come from one clip, so nothing here tells how much clips differ.',
    'Stop and start the recording between readings: every clip begins with phases of its own.',
  ],
  [
    'scatter-beyond-rig',
    compiled({ jitterProbability: 0.99, observedScatterMs: 19.4 }),
    'Readings scatter by 19 ms where the rates of the rig explain 8.0 ms: something else varies from reading to reading. The interval has been widened for it.',
    'Look for a body or link that drops or repeats frames, misread digits, and rates that are not what the rig’s file says.',
  ],
  [
    'scatter-too-small',
    compiled({ observedScatterMs: 1.2 }),
    'Readings scatter by only 1.2 ms where no rig with these rates gives less than about 8.0 ms.',
    'Check that the readings come from different moments of the clip, and that refresh and frame rates in the rig’s file are true.',
  ],
  [
    'runs-disagree',
    compiled({ betweenRunsProbability: 0.99 }),
    'The clips differ by more than their phases explain: the delay itself changes from clip to clip. The figure speaks of these clips; another clip may well lie outside its interval.',
    'Record more clips, and note what was done between them: restarts, menus, heat.',
  ],
  [
    'stamps-against-rates',
    compiled({ stampsAgreeWithRates: false }),
    'The stamps fit neither the rates that the rig and the session state nor one misread digit, so the interval takes every phase as unknown in every reading.',
    'Check the rate in the session’s file, source-timer refresh in the rig’s, and look for misread digits.',
  ],
  [
    'misread',
    compiled(
      { misreads: [[...PLAIN.map(() => 0.001), 0.97]] },
      { readings: readings([...PLAIN.map((ms) => 130 + ms), 230]) },
    ),
    'Most likely misread: line 14 (230 ms, probability 97 %). So unlikely a reading hardly moves the total.',
    'Look at the frame again. If it was misread, correct it or say so under exclude; if not, leave it.',
  ],
  [
    'coarse-digits',
    compiled(
      {},
      {
        readings: PLAIN.map((_, index) =>
          reading(2 + index, 130, { sourceMs: 7010 + 1720 * index, shownMs: 6880 + 1720 * index }),
        ),
      },
    ),
    'Nearly all stamps are multiples of 10 ms, though they are written in steps of 1.0 ms.',
    'If the timer counts in steps of 10 ms, state resolution: 10 ms in the rig’s source-timer; if not, read the last digit too.',
  ],
  [
    'many-excluded',
    compiled(
      {},
      {
        readings: [
          ...readings(PLAIN.map((ms) => 130 + ms)),
          ...[20, 21, 22, 23, 24].map((line) => reading(line, 130, { excluded: 'blurred' })),
        ],
      },
    ),
    '5 readings of 17 are excluded: choosing what counts may matter more here than the readings themselves.',
    'Film again with a shorter exposure or larger digits, so that fewer readings are in doubt.',
  ],
  [
    'cut-short',
    compiled({}, { cutShort: 'the body got hot.' }),
    'The session ended before it was complete: the body got hot.',
    'A body that overheats is a burn and battery hazard: let it cool, and repeat the session before a conclusion rests on it.',
  ],
];

describe('a finding says what was seen and what to do', () => {
  it.each(CASES)('%s: %#', (rule, session, message, hint) => {
    expect(findingsOf([session]).filter((finding) => finding.rule === rule)).toEqual([
      expect.objectContaining({ message, hint, where: { session: 'a' } }),
    ]);
  });

  it('drift names the change along the session', () => {
    const warming = PLAIN.map((ms, index) => 130 + ms / 4 - 5 * index);
    const [finding] = findingsOf([compiled({}, { readings: readings(warming) })]).filter(
      ({ rule }) => rule === 'drift',
    );
    expect(finding?.message).toMatch(
      /^Latency drifts along the session: −5\d(\.\d)? ± \d(\.\d)? ms from the first reading to the last \(95 %\)\.$/,
    );
  });

  it('every rule is shown above', () => {
    expect(Object.keys(RULES).filter((rule) => rule !== 'drift' && !CASES.some(([shown]) => shown === rule))).toEqual(
      [],
    );
  });
});

describe('nothing is said', () => {
  it('of a calm session', () => expect(findingsOf([compiled()])).toEqual([]));

  it.each([
    ['a clip that spans the beat', { runs: 1, longestRunMs: 17_000, beats: beat(16_683.3) }, 'beating-rates'],
    ['clips enough to make up for it', { runs: 4, beats: beat(16_683.3) }, 'beating-rates'],
    ['rates in so high a ratio that phases spread', { runs: 1, beats: beat(Infinity, 4, 1) }, 'beating-rates'],
    [
      'a scatter that is small because rates are locked',
      { observedScatterMs: 0.1, beats: beat(Infinity) },
      'scatter-too-small',
    ],
    [
      'frames that jitter without scattering more',
      { jitterProbability: 0.99, observedScatterMs: 7 },
      'scatter-beyond-rig',
    ],
  ])('of %s', (_name, diagnostics, rule) => {
    expect(findingsOf([compiled(diagnostics)]).map((finding) => finding.rule)).not.toContain(rule);
  });
});
