/** The comparisons that the site publishes, held against what is true in the demonstration. */
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { compileBench } from '../../src/site/compile.ts';
import type { Figure } from '../../src/register/register.ts';
import type { BodyId, PlannedSettings } from './plan.ts';
import { SESSIONS, USUAL } from './sessions.ts';
import { readBench } from '../../src/ingest/read-bench.ts';
import type { Level } from '../../src/analysis/variation.ts';
import { BODIES, trueTotalMs } from './truth.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** A session's own drift is no error of its mean, and its true mean is known only to the drift. */
const STEADY = (figure: Figure): boolean =>
  ![figure.of['session'], figure.of['than']].includes('skelby-pit-uhd60-quiet');

/** Of what the figures of the bench speak: of their own clips where it does not know how days vary. */
let level: Level = 'clips';
const truth = (id = ''): number => trueTotalMs(SESSIONS.find((session) => session.id === id)!, level);
const trueDifference = ({ of }: Figure): number => truth(of['session']) - truth(of['than']);

let figures: readonly Figure[] = [];
beforeAll(async () => {
  const bench = await readBench({ root: ROOT, dataDir: 'data', contentDir: 'content' });
  level = bench.variation?.knows ?? 'clips';
  ({
    register: { figures },
  } = compileBench(bench));
}, 120_000);
const ofKind = (kind: string): readonly Figure[] => figures.filter((figure) => figure.kind === kind);

describe('matched pairs', () => {
  it.each([
    ['vennick-uhd25-genlock', 'vennick-uhd25-a', 'sync'],
    ['vennick-uhd60-assist', 'vennick-uhd60-a', 'viewing assist'],
    ['dunmere-uhd25-steady', 'dunmere-uhd25-a', 'stabiliser'],
    ['dunmere-hd25-nr', 'dunmere-hd25-a', 'noise reduction'],
    ['skelby-uhd50-a', 'skelby-hd50-a', 'output'],
    ['skelby-uhd50-quiet', 'skelby-uhd50-a', 'fan'],
    ['skelby-hd100-a', 'skelby-hd50-a', 'frame rate'],
  ])('%s and %s differ in %s', (a, b, setting) => {
    const verdict = ofKind('verdict').find(({ id }) => id.startsWith('verdict/settings-') && id.endsWith(`/${a}/${b}`));
    expect(verdict?.inWords).toMatch(new RegExp(`The two differ in ${setting} \\(`));
  });

  it.each([
    ['skelby-uhd50-smooth', 'skelby-uhd50-a'],
    ['dunmere-uhd50-steady', 'dunmere-uhd25-a'],
    ['dunmere-uhd25-fw53', 'dunmere-uhd25-a'],
    ['vennick-pit-uhd60', 'vennick-uhd60-a'],
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
  // One difference of each unordered pair that is compared, as those share sessions they are not independent: the bound
  // is loose.
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
  expect(same.length).toBeGreaterThan(0);
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
  expect(none.length).toBeGreaterThan(2);
  expect(
    none
      .filter(({ verdict }) => verdict?.word === 'slower' || verdict?.word === 'faster')
      .map(({ id, text }) => `${id}: ${text}`),
  ).toEqual([]);
});

describe('effects', () => {
  /**
   * Effects rest on many sessions, so that what days and clips add to one of them is no truth of theirs; nor do their
   * intervals know of it yet. In the interval, twice as wide: of intervals at 95 %, 1 in 20 misses, one so wide 1 in 10
   * 000.
   */
  const covers = (id: string, value: number): void => {
    const { interval, text, value: found } = figures.find((figure) => figure.id === id)!;
    expect(Math.abs(found - value), `${id} is ${text}, truly ${value}`).toBeLessThanOrEqual(
      interval!.high - interval!.low,
    );
  };
  const adds = (body: BodyId, settings: Partial<PlannedSettings>): number =>
    BODIES[body].settingsMs({ ...USUAL, ...settings });

  it('of genlock on the Vennick: frames, so less at a higher rate', () => {
    const cost = (rate: PlannedSettings['rate']): number =>
      adds('vennick-q4', { rate, sync: 'genlock' }) - adds('vennick-q4', { rate });
    covers('effect/vennick-q4/balcony/sync/free/genlock', (cost('25') + cost('59.94')) / 2);
    covers('interaction/vennick-q4/balcony/sync/free/genlock/rate/25/59.94', cost('59.94') - cost('25'));
    covers('effect/vennick-q4/balcony/assist/off/on', adds('vennick-q4', { assist: 'on' }) - adds('vennick-q4', {}));
  });

  it('of noise reduction on the Dunmere: more in UHD than in HD', () => {
    const cost = (output: PlannedSettings['output']): number =>
      adds('dunmere-30', { output, 'noise-reduction': '3' }) - adds('dunmere-30', { output });
    covers('interaction/dunmere-30/balcony/output/hd/uhd/noise-reduction/0/3', cost('uhd') - cost('hd'));
    covers('effect/dunmere-30/balcony/noise-reduction/0/3', (cost('hd') + cost('uhd')) / 2);
    covers(
      'effect/dunmere-30/balcony/stabiliser/off/on',
      adds('dunmere-30', { stabiliser: 'on' }) - adds('dunmere-30', {}),
    );
  });

  it('of the output on the Skelby: scaling down costs; of its quiet fan: none; and what changed together is not told apart', () => {
    covers('effect/skelby-dome/balcony/output/hd/uhd', -adds('skelby-dome', { output: 'hd' }));
    expect(figures.find(({ id }) => id === 'effect-verdict/skelby-dome/balcony/fan/auto/quiet')?.text).toMatch(
      /^no effect found; if there is one, under /,
    );
    expect(figures.filter(({ id }) => /^effect\/skelby-dome\/balcony\/(?:stabiliser|noise)/.test(id))).toEqual([]);
  });
});
