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

/** The statement, whether the rates lie on one line, and whether there is a floor; or why there is no law. */
export function describeLaw(
  { name, sessions, law, straight, floor }: ConfigurationLaw,
  figure: (id: string) => Figure | undefined,
  find: Lookup,
): Sentence {
  if (law.kind !== 'rate-law') return [NO_LAW[law.reason]];
  const the = (kind: string): Figure | string => figure(`${kind}/${name}`) ?? '';
  return [
    ...describeShape(law, Math.min(...sessions.map(({ rate }) => intervalMs(rate))), the),
    ...(straight.kind === 'rate-law' && floor.kind !== 'floor'
      ? describeFit(straight.lackOfFit?.p, the('rate-law-lack-of-fit'))
      : []),
    ...describeFloor(floor, sessions, the, find),
  ];
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
      ...(isAtMost(fixedWithin, HALF_A_FRAME * fastestMs)
        ? ['A constant number of frames, as near as half a frame: ']
        : ['Frames for the most part: ']),
      slope,
      ' at every rate measured; the part that no rate changes is within ± ',
      fixedWithin,
      '.',
    ];
  if (noFrames) {
    return [
      ...(isAtMost(slopeWithin, HALF_A_FRAME)
        ? ['A constant number of milliseconds, as near as half a frame: ']
        : ['Milliseconds for the most part: ']),
      fixed,
      ' whatever the rate; beyond the half interval for which every frame waits on the display, at most ',
      slopeWithin,
      ' go with it.',
    ];
  }
  if (fixedMs.high < 0)
    return [
      'More than in proportion to the frame interval: ',
      slope,
      ' along a line that would meet an interval of zero below zero, at ',
      fixed,
      '.',
    ];
  return [
    'Neither a constant number of frames nor a constant number of milliseconds: ',
    fixed,
    ' that no frame rate changes, and ',
    slope,
    ' on top.',
  ];
}

function isAtMost(bound: Figure | string, most: number): boolean {
  return typeof bound !== 'string' && bound.value <= most;
}

function describeFit(p: number | undefined, figure: Figure | string): Sentence {
  if (p === undefined)
    return [' Through two rates any line goes: a third would show whether it is straight, and whether it has a floor.'];
  if (p < INCONSISTENT_BELOW)
    return [' The rates do not lie on one line (lack of fit, p ', figure, '), so the line is a summary and no rule.'];
  return [' No rate is seen off one line (lack of fit, p ', figure, ').'];
}

function describeFloor(
  floor: RateFloor,
  sessions: readonly Session[],
  the: (kind: string) => Figure | string,
  find: Lookup,
): Sentence {
  const test: Sentence = [' (p ', the('rate-law-floor-test'), ')'];
  switch (floor.kind) {
    case 'not-estimable':
      return [];
    case 'no-floor-seen':
      return [' A rate beyond which going faster helps no longer is not seen', ...test, '.'];
    case 'other-shape':
      return [' The fastest rates lie above the line of the slower ones', ...test, ', but not at one level.'];
    case 'floor': {
      const { breakSet } = floor;
      const reached =
        breakSet.kind === 'bounded' ? sessions.findLast(({ rate }) => intervalMs(rate) > breakSet.high) : undefined;
      const next = reached && sessions[sessions.indexOf(reached) + 1];
      return [
        ' That holds down to a floor',
        ...test,
        ': no faster rate goes below ',
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
