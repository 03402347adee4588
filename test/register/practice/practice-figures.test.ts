/** Distances by the arithmetic written beside them, from the published speeds: not from the code. */
import { describe, expect, it } from 'vitest';
import { plainSentence } from '../../../src/register/sentence.ts';
import { compileBench } from '../../../src/site/compile.ts';
import { inPractice } from '../../../src/views/in-practice.ts';
import { bench, reading, session } from '../../support/small-bench.ts';

const at = (middle: number) =>
  [0, 1, 2, 3, 4, 5].map((n) =>
    reading(n + 2, middle + 6 * ((n % 3) - 1), { run: 1 + (n % 3), sourceMs: 3001 * n + 7 * n * n }),
  );
const hd = (rate: string) => ({ resolution: 'hd', rate, 'audio-out': 'off' });
const site = compileBench(
  bench([session('slow', hd('24'), { readings: at(400) }), session('fast', hd('59.94'), { readings: at(200) })]),
);
const figure = (id: string) => {
  const found = site.figure(id);
  if (found === undefined) throw new Error(`no figure ${id}`);
  return found;
};
const total = figure('total/fast');
const seconds = total.value / 1000;

describe('what a total means in practice', () => {
  it.each([
    // MUTCD 2009, 4E.06: 3.5 ft/s; a foot is 0.3048 m
    ['walking', 3.5 * 0.3048 * seconds],
    // World Athletics: 100 m in 9.58 s
    ['sprinting', (100 / 9.58) * seconds],
    // s = g t²/2, g = 9.80665 m/s² (3rd CGPM, 1901)
    ['falling', 0.5 * 9.80665 * seconds * seconds],
    // ISO 9613-1:1993: 343.2 m/s at 20 °C
    ['sound', 343.2 * seconds],
  ])('%s: the distance gone in the lowest total of the body', (movement, metres) => {
    const moved = figure(`moved/${movement}/alba-one`);
    expect(moved.value).toBeCloseTo(metres, 12);
    expect(moved.unit).toBe('m');
    expect(moved.inWords).toContain('the session fast, the lowest of this body');
  });

  it('the interval of a steady movement is the total’s times the speed, and its budget with it', () => {
    const moved = figure('moved/sound/alba-one');
    expect(moved.interval?.low).toBeCloseTo(0.3432 * (total.interval?.low ?? 0), 9);
    expect(moved.interval?.high).toBeCloseTo(0.3432 * (total.interval?.high ?? 0), 9);
    const variance = (moved.components ?? []).reduce((sum, one) => sum + one.standardUncertainty ** 2, 0);
    expect(Math.sqrt(variance)).toBeCloseTo(moved.standardUncertainty ?? 0, 6);
    expect(moved.standardUncertainty).toBeCloseTo(0.3432 * (total.standardUncertainty ?? 0), 9);
  });

  it('of a fall, each end of the total falls for its own time', () => {
    const { interval } = figure('moved/falling/alba-one');
    // ½ · 9.80665 · (t/1000)² = 4.903325e-6 t²
    expect(interval?.low).toBeCloseTo(4.903325e-6 * (total.interval?.low ?? 0) ** 2, 12);
    expect(interval?.high).toBeCloseTo(4.903325e-6 * (total.interval?.high ?? 0) ** 2, 12);
  });

  it('is said in one sentence, with where the speeds are from', () => {
    const practice = inPractice(site, 'alba-one');
    expect(plainSentence(practice?.sentence ?? [])).toMatch(
      /^At its lowest total, the picture of the Alba One is [\d.]+ ± [\d.]+ ms late, or [\d.]+ ± [\d.]+ frames, at .*59\.94 frames\/s.*\. Before it shows a moment, someone walking has gone 2\d\.?\d* ± [\d.]+ cm, a sprinter 2\.\d+ ± [\d.]+ m, and a ball let go has fallen \d+\.?\d* ± [\d.]+ cm\. Sound needs as long for \d\d\.?\d* ± [\d.]+ m: that far from the stage/,
    );
    expect(practice?.sources).toContain('MUTCD 2009, 4E.06');
    expect(practice?.sources).toContain('ISO 9613-1:1993');
  });

  it('is of no session that is not ordinary, however low, where an ordinary one stands', () => {
    const lucky = session('lucky', hd('25'), {
      readings: at(90).map((each) => ({ ...each, run: 1 })),
    });
    const both = compileBench(bench([session('fast', hd('59.94'), { readings: at(200) }), lucky]));
    expect(both.figure('moved/walking/alba-one')?.inWords).toContain('the session fast');
    const alone = compileBench(bench([lucky]));
    expect(alone.figure('moved/walking/alba-one')?.inWords).toContain('the session lucky');
  });

  it('is said by speeds of the publication’s own too, with whose they are', () => {
    const file = { path: 'data/speeds.yaml', sha256: 'ab', bytes: 1 };
    const own = compileBench({
      ...bench([session('fast', hd('59.94'), { readings: at(200) })]),
      speeds: {
        list: [
          { id: 'cart', name: 'the camera cart', stated: '0.9 m/s', metresPerSecond: 0.9, source: 'our stopwatch' },
          // 9 km/h are 2.5 m/s
          { id: 'lunge', name: 'a lunge', stated: '9 km/h', metresPerSecond: 2.5 },
        ],
        file,
      },
    });
    const lunge = own.figure('moved/lunge/alba-one');
    expect(lunge?.value).toBeCloseTo((9000 / 3600) * ((own.figure('total/fast')?.value ?? NaN) / 1000), 12);
    expect(lunge?.sources).toContainEqual({ file: 'data/speeds.yaml', sha256: 'ab' });
    expect(own.figure('moved/walking/alba-one')?.sources.map((source) => source.file)).not.toContain(
      'data/speeds.yaml',
    );
    const practice = inPractice(own, 'alba-one');
    expect(plainSentence(practice?.sentence ?? [])).toMatch(
      / Meanwhile the camera cart has gone [\d.]+ ± [\d.]+ cm\. Meanwhile a lunge has gone [\d.]+ ± [\d.]+ cm\.$/,
    );
    expect(practice?.own).toEqual({
      sources:
        'This publication’s own: the camera cart at 0.9 m/s (our stopwatch); a lunge at 9 km/h (the author’s own).',
      file: 'data/speeds.yaml',
    });
  });

  it('says nothing of a body that nobody measured', () => {
    expect(inPractice(site, 'brae')).toBeUndefined();
    expect(site.figure('moved/walking/brae')).toBeUndefined();
  });
});
