import { testEquivalence } from '../../analysis/equivalence.ts';
import type { Interval } from '../../analysis/interval.ts';
import type { RateLaw } from '../../analysis/rate-law.ts';
import type { Compilation, Contribution } from '../compilation.ts';
import { anchorOf } from '../entry-groups.ts';
import {
  describeProbability,
  measuredFigure,
  plainFigure,
  type EntryPage,
  type JointSubject,
} from '../joint-figure.ts';
import type { KindName } from '../kinds.ts';
import type { Figure } from '../register.ts';
import { describeInterval, describeSignificant, describeValue, placeOfUncertainty } from '../text.ts';
import type { ConfigurationLaw } from './rate-laws.ts';

/**
 * A frame stays for one interval, so on the mean it is half an interval old at least: the slope of a constant delay.
 */
export const WAITING_FRAMES = 0.5;

const PAGE: EntryPage = { name: 'rate-laws', title: 'Rate laws' };

/** Figures of every rate law: `rate-law-fixed/…`, `rate-law-frames/…`, its lack of fit, its floor. */
export function compileRateLaws(compilation: Compilation, laws: readonly ConfigurationLaw[]): Contribution {
  return { figures: laws.flatMap((law) => figuresOf(law, compilation)), findings: [] };
}

function figuresOf(
  { name, body, subject, sessions, law, straight, floor }: ConfigurationLaw,
  { find, session }: Compilation,
): readonly Figure[] {
  if (law.kind !== 'rate-law') return [];
  const totals = sessions.map(({ id }) => session(id).total);
  const subjectOf = (kind: KindName): JointSubject => ({
    kind,
    name,
    of: { law: name, body },
    subject: [find.body(body).name, subject].filter((part, at, all) => all.indexOf(part) === at).join(', '),
    page: { ...PAGE, section: anchorOf(name) },
    totals,
  });
  const probability = (kind: KindName, p: number): Figure => plainFigure(subjectOf(kind), p, describeProbability(p));
  return [
    measuredFigure(subjectOf('rate-law-fixed'), law.fixedMs),
    measuredFigure(subjectOf('rate-law-frames'), law.frames),
    ...boundsOf(law).map(({ kind, value, unit }) =>
      plainFigure(subjectOf(kind), value, describeSignificant(value, 2, unit)),
    ),
    ...(straight.kind === 'not-estimable' || straight.lackOfFit === undefined
      ? []
      : [probability('rate-law-lack-of-fit', straight.lackOfFit.p)]),
    ...(floor.kind === 'floor'
      ? [
          measuredFigure(subjectOf('rate-law-floor'), {
            value: floor.floorMs,
            standardUncertainty: floor.floorStandardUncertainty,
            interval: floor.floorInterval,
          }),
        ]
      : []),
    ...(floor.kind === 'floor' && floor.breakSet.kind === 'bounded'
      ? [breakFigure(subjectOf('rate-law-break'), floor.breakIntervalMs, floor.breakSet)]
      : []),
    ...(floor.kind === 'not-estimable' ? [] : [probability('rate-law-floor-test', floor.p)]),
  ];
}

/** How large a part of a law can be that is not told from none, at 5 %; nothing of one that is. */
function boundsOf({
  fixedMs,
  frames,
}: RateLaw): readonly { readonly kind: KindName; readonly value: number; readonly unit: string }[] {
  const beyond = { ...frames, value: frames.value - WAITING_FRAMES };
  return [
    ...(holdsZero(fixedMs.interval)
      ? [{ kind: 'rate-law-fixed-within' as const, value: testEquivalence(fixedMs, 1).smallestMargin, unit: 'ms' }]
      : []),
    ...(frames.interval.low <= WAITING_FRAMES
      ? [
          {
            kind: 'rate-law-frames-within' as const,
            value: Math.max(0, testEquivalence(beyond, 1).interval.high),
            unit: 'frames',
          },
        ]
      : []),
  ];
}

export function holdsZero({ low, high }: Interval): boolean {
  return low <= 0 && high >= 0;
}

/** A ratio has no standard uncertainty of its own: its interval need not lie evenly about the value. */
function breakFigure(subject: JointSubject, value: number, { low, high, level }: Interval): Figure {
  const place = Math.max(0, placeOfUncertainty((high - low) / 2));
  return {
    ...plainFigure(subject, value, `${describeValue(value, place, 'ms')} (${describeInterval(low, high, 'ms')})`),
    interval: { low, high, level },
  };
}
