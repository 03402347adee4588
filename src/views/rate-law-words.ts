/** What a rate law says, as a computed statement: where between a constant number of frames and of milliseconds a body lies. */
import type { RateFloor } from '../analysis/rate-floor.ts';
import type { Session } from '../model/bench.ts';
import { intervalMs } from '../model/rate.ts';
import type { NoRateLaw, RateLaw } from '../analysis/rate-law.ts';
import { INCONSISTENT_BELOW } from '../analysis/birge.ts';
import type { Lookup } from '../register/lookup.ts';
import type { Figure } from '../register/register.ts';
import type { Sentence } from '../register/sentence.ts';
import { holdsZero, WAITING_FRAMES } from '../register/rate-law/rate-law-figures.ts';
import type { ConfigurationLaw } from '../register/rate-law/rate-laws.ts';

/** What counts as no part at all: half a frame. Of the part that no rate changes, half a frame of the fastest rate. */
const HALF_A_FRAME = 0.5;

const NO_LAW: Readonly<Record<NoRateLaw['reason'], string>> = {
  'no-sessions': 'Not measured yet.',
  'one-rate': 'Measured at one rate only; a session at another rate, alike in everything else, would give its law.',
  'no-uncertainty':
    'One of the sessions has no scatter at all, so nothing can say how far to trust it; further readings would.',
};

export interface LawWords {
  /** What a faster rate does, and where that ends; or why nothing is known of it. */
  readonly says: Sentence;
  /** How well the rates bear it out; empty where there is no law. */
  readonly evidence: Sentence;
}

export function describeLaw(
  { name, sessions, law, straight, floor }: ConfigurationLaw,
  figure: (id: string) => Figure | undefined,
  find: Lookup,
): LawWords {
  if (law.kind !== 'rate-law') return { says: [NO_LAW[law.reason]], evidence: [] };
  const the = (kind: string): Figure | string => figure(`${kind}/${name}`) ?? '';
  const isLine = straight.kind === 'rate-law' && floor.kind !== 'floor';
  return {
    says: [
      ...describeShape(law, Math.min(...sessions.map(({ rate }) => intervalMs(rate))), the),
      ...describeFloor(floor, sessions, the, find),
      ...(isLine ? describeFit(straight.lackOfFit?.p) : []),
    ],
    evidence: [
      ...(isLine && straight.lackOfFit !== undefined
        ? [
            'If these rates lay on one line, they would stray from it as far as this with probability ',
            the('rate-law-lack-of-fit'),
            '. ',
          ]
        : []),
      ...describeFloorTest(floor, the),
    ],
  };
}

/** What is not told from none is stated by how large it can still be, never as none. */
function describeShape(
  { fixedMs: { interval: fixedMs }, frames: { interval: frames } }: RateLaw,
  fastestMs: number,
  the: (kind: string) => Figure | string,
): Sentence {
  const [fixed, slope] = [the('rate-law-fixed'), the('rate-law-frames')];
  const [fixedWithin, slopeWithin] = [the('rate-law-fixed-within'), the('rate-law-frames-within')];
  const noFixedPart = holdsZero(fixedMs);
  const noFrames = frames.low <= WAITING_FRAMES;
  if (noFixedPart && noFrames) {
    return [
      'Not settled: these data agree with a constant number of frames and with a constant number of milliseconds alike (',
      slope,
      ' and ',
      fixed,
      '). A session at a rate further from the others would settle it.',
    ];
  }
  if (noFixedPart)
    return [
      slope,
      isAtMost(fixedWithin, HALF_A_FRAME * fastestMs)
        ? ' at every rate measured, so a faster rate always helps: a part that no rate changes is within ± '
        : ' at every rate measured, for the most part, so a faster rate helps: a part that no rate changes is within ± ',
      fixedWithin,
      '.',
    ];
  if (noFrames) {
    return [
      fixed,
      isAtMost(slopeWithin, HALF_A_FRAME)
        ? ' at every rate measured, so a faster rate hardly helps: beside the wait of each frame on the display, it takes off '
        : ' at every rate measured, for the most part, so a faster rate helps little: beside the wait of each frame on the display, it takes off ',
      slopeWithin,
      ' at most.',
    ];
  }
  if (fixedMs.high < 0)
    return [
      'A faster rate helps more than in proportion: ',
      slope,
      ' along a line that would meet an interval of zero below zero, at ',
      fixed,
      '.',
    ];
  return [
    slope,
    ' at every rate measured, and ',
    fixed,
    ' on top that no rate changes: a faster rate helps, though less than in proportion.',
  ];
}

function isAtMost(bound: Figure | string, most: number): boolean {
  return typeof bound !== 'string' && bound.value <= most;
}

function describeFit(p: number | undefined): Sentence {
  if (p === undefined) return [' Two rates cannot show whether that holds at others: a third would.'];
  return p < INCONSISTENT_BELOW
    ? [' The rates stray further from this than their intervals allow: take it as a summary, not as a rule.']
    : [];
}

function describeFloor(
  floor: RateFloor,
  sessions: readonly Session[],
  the: (kind: string) => Figure | string,
  find: Lookup,
): Sentence {
  switch (floor.kind) {
    case 'not-estimable':
    case 'no-floor-seen':
      return [];
    case 'other-shape':
      return [' The fastest rates lie above what the slower ones promise, but not at one level.'];
    case 'floor': {
      const { breakSet } = floor;
      const reached =
        breakSet.kind === 'bounded' ? sessions.findLast(({ rate }) => intervalMs(rate) > breakSet.high) : undefined;
      const next = reached && sessions[sessions.indexOf(reached) + 1];
      return [
        ' That holds down to a floor: no faster rate goes below ',
        the('rate-law-floor'),
        ...(breakSet.kind === 'bounded'
          ? [', which the line reaches at a frame interval of ', the('rate-law-break')]
          : []),
        next === undefined
          ? '.'
          : `. At ${find.level('rate', next.settings['rate'] ?? '')} frames/s these data see no more to be gained.`,
      ];
    }
  }
}

function describeFloorTest(floor: RateFloor, the: (kind: string) => Figure | string): Sentence {
  const test: Sentence = [
    'the fastest rates would lie as far above it as they do with probability ',
    the('rate-law-floor-test'),
  ];
  switch (floor.kind) {
    case 'not-estimable':
      return [];
    case 'no-floor-seen':
      return [
        'If it went on like this at every rate, ',
        ...test,
        ': a rate beyond which a faster one helps no longer is not seen.',
      ];
    default:
      return ['If it went on like this at every rate, ', ...test, '.'];
  }
}
