/** The comparisons that the site publishes, held against what is true in the demonstration. */
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { compileSite } from '../../src/site/compile.ts';
import type { Figure } from '../../src/register/register.ts';
import { intervalMs } from '../../src/model/rate.ts';
import { rateOf } from './rigs.ts';
import { SESSIONS } from './sessions.ts';
import { BODIES, trueTotalMs } from './truth.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const truth = new Map(SESSIONS.map((session) => [session.id, trueTotalMs(session)]));
const trueDifference = ({ of }: Figure): number => truth.get(of['session']!)! - truth.get(of['than']!)!;
/** A session's own drift is no error of its mean, and its true mean is known only to the drift. */
const STEADY = (figure: Figure): boolean => ![figure.of['session'], figure.of['than']].includes('wexley-uhd60-cold');

let figures: readonly Figure[] = [];
beforeAll(async () => {
  ({
    register: { figures },
  } = await compileSite({ root: ROOT, dataDir: `${ROOT}data`, contentDir: `${ROOT}content` }));
});
const ofKind = (kind: string): readonly Figure[] => figures.filter((figure) => figure.kind === kind);

describe('matched pairs', () => {
  it.each([
    ['orrin-uhd60-audio', 'orrin-uhd60-a', 'embedded audio'],
    ['orrin-hd60-audio', 'orrin-hd60-a', 'embedded audio'],
    ['tamsel-uhd25-audio', 'tamsel-uhd25-a', 'embedded audio'],
    ['tamsel-uhd50-a', 'tamsel-hd50-a', 'resolution'],
    ['wexley-hd60-a', 'wexley-hd60-8bit', 'bit depth'],
    ['wexley-hd120-a', 'wexley-hd60-a', 'frame rate'],
  ])('%s and %s differ in %s', (a, b, setting) => {
    const verdict = ofKind('verdict').find(({ id }) => id.startsWith('verdict/settings-') && id.endsWith(`/${a}/${b}`));
    expect(verdict?.inWords).toMatch(new RegExp(`The two differ in ${setting} \\(`));
  });

  it.each([
    ['orrin-uhd24-8bit', 'orrin-uhd24-a'],
    ['tamsel-uhd50-audio', 'tamsel-uhd50-a'],
    ['tamsel-uhd25-fw220', 'tamsel-uhd25-a'],
    ['orrin-pit-uhd60', 'orrin-uhd60-a'],
  ])('%s and %s are none: they differ in more, in firmware, or in rig', (a, b) =>
    expect(
      ofKind('verdict').filter(
        ({ id, of }) =>
          id.startsWith('verdict/settings-') && [of['session'], of['than']].sort().join() === [a, b].sort().join(),
      ),
    ).toEqual([]),
  );
});

it('the 95 % intervals of differences between different sessions cover the truth in a plausible share', () => {
  // One difference of each unordered pair that is compared, as those share sessions they are not independent: the bound is loose.
  const compared = [...ofKind('cost'), ...ofKind('difference')].filter(({ interval }) => interval !== undefined);
  const pairs = new Map(
    compared.filter(STEADY).map((figure) => [[figure.of['session'], figure.of['than']].sort().join(), figure]),
  );
  const covered = [...pairs.values()].filter(
    (figure) => figure.interval!.low <= trueDifference(figure) && trueDifference(figure) <= figure.interval!.high,
  );
  expect(pairs.size).toBeGreaterThan(50);
  // Binomial(n, 0.95): fewer than 0.95 n − 3.5 √(0.0475 n) come by chance once in 4,000, were they independent.
  expect(covered.length).toBeGreaterThanOrEqual(0.95 * pairs.size - 3.5 * Math.sqrt(0.0475 * pairs.size));
});

it('no verdict says slower or faster against the truth, nor the same of what differs by more than the margin', () => {
  const verdicts = ofKind('verdict').filter(STEADY);
  const decided = verdicts.filter(({ verdict }) => verdict?.word === 'slower' || verdict?.word === 'faster');
  const same = verdicts.filter(({ verdict }) => verdict?.word === 'same');
  expect(decided.length).toBeGreaterThan(20);
  expect(same.length).toBeGreaterThan(2);
  expect(
    decided.filter((figure) => (figure.verdict?.word === 'slower') !== trueDifference(figure) > 0).map(({ id }) => id),
  ).toEqual([]);
  expect(
    same.filter((figure) => Math.abs(trueDifference(figure)) > figure.verdict!.marginMs).map(({ id }) => id),
  ).toEqual([]);
});

it('no verdict says slower or faster where next to nothing is true: less than a day adds', () => {
  const none = ofKind('verdict')
    .filter(STEADY)
    .filter((figure) => Math.abs(trueDifference(figure)) < 2.5);
  expect(none.length).toBeGreaterThan(5);
  expect(
    none
      .filter(({ verdict }) => verdict?.word === 'slower' || verdict?.word === 'faster')
      .map(({ id, text }) => `${id}: ${text}`),
  ).toEqual([]);
});

describe('effects', () => {
  const covers = (id: string, value: number): void => {
    const { interval, text } = figures.find((figure) => figure.id === id)!;
    expect(interval!.low <= value && value <= interval!.high, `${id} is ${text}, truly ${value}`).toBe(true);
  };

  it('of embedded audio on the Orrin: frames, so less at a higher rate', () => {
    const intervals = ['23.976', '25', '29.97', '59.94'].map((rate) =>
      intervalMs(rateOf({ ...SESSIONS[0]!.settings, rate: rate as '25' })),
    );
    const cost = (ms: number): number => 2.9 * ms;
    covers(
      'effect/orrin-v2/balcony/audio-out/off/on',
      cost(intervals.reduce((sum, ms) => sum + ms, 0) / intervals.length),
    );
    covers(
      'interaction/orrin-v2/balcony/audio-out/off/on/rate/23.976/59.94',
      cost(intervals.at(-1)!) - cost(intervals[0]!),
    );
  });

  it('of embedded audio on the Tamsel: more in UHD than in HD', () => {
    const adds = (resolution: 'hd' | 'uhd', audio: 'off' | 'on'): number =>
      BODIES['tamsel-6'].settingsMs({ ...SESSIONS[0]!.settings, resolution, 'audio-out': audio });
    const inHd = adds('hd', 'on') - adds('hd', 'off');
    const inUhd = adds('uhd', 'on') - adds('uhd', 'off');
    covers('interaction/tamsel-6/balcony/resolution/hd/uhd/audio-out/off/on', inUhd - inHd);
    covers('effect/tamsel-6/balcony/audio-out/off/on', (inHd + inUhd) / 2);
  });

  it('of embedded audio on the Wexley: none, and the Orrin’s bit depth and chroma are not told apart', () => {
    expect(figures.find(({ id }) => id === 'effect-verdict/wexley-duo/balcony/audio-out/off/on')?.text).toMatch(
      /^none seen: at most /,
    );
    expect(figures.filter(({ id }) => /^effect\/orrin-v2\/balcony\/(?:bit-depth|chroma)/.test(id))).toEqual([]);
  });
});
