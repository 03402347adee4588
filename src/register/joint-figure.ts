/** Figures that rest on several sessions: what they share with a session's figure, written once. */
import type { Interval } from '../analysis/interval.ts';
import { LEVELS, type Level } from '../analysis/variation.ts';
import type { SourceFile } from '../model/bench.ts';
import { groupEntry } from './entry-groups.ts';
import { KINDS, type KindName } from './kinds.ts';
import type { Figure, FigureSource, Subject } from './register.ts';
import { describeMeasured } from './text.ts';

/** A page of entries: `/figures/NAME/`, or `/figures/NAME/SECTION/`. */
export interface EntryPage {
  readonly name: string;
  readonly section?: string;
  readonly title: string;
}

export interface JointSubject {
  readonly kind: KindName;
  /** After the kind: `vennick-q4/1.40/balcony/uhd-off-0-off-auto-free`. */
  readonly name: string;
  readonly of: Subject;
  /** What it is of, in words, after the label of its kind. */
  readonly subject: string;
  readonly page: EntryPage;
  /** The totals that it was computed from. */
  readonly totals: readonly Figure[];
  /** Files used beside the sessions' own. */
  readonly files?: readonly FigureSource[];
  readonly inWords?: string;
  readonly level?: Level;
}

export interface Measured {
  readonly value: number;
  readonly standardUncertainty: number;
  readonly interval: Interval;
  readonly errorTail?: (x: number) => number;
}

/** A figure with its interval. */
export function measuredFigure(
  subject: JointSubject,
  { value, standardUncertainty, interval, errorTail }: Measured,
): Figure {
  return {
    ...plainFigure(
      subject,
      value,
      describeMeasured(value, (interval.high - interval.low) / 2, KINDS[subject.kind].unit),
    ),
    standardUncertainty,
    interval: { low: interval.low, high: interval.high, level: interval.level },
    ...(standardUncertainty > 0 ? { coverageFactor: (interval.high - interval.low) / 2 / standardUncertainty } : {}),
    ...speaksOf(subject),
    ...(errorTail && { errorTail }),
  };
}

/** The level that it is said to speak of, or else the least that any of its totals does. */
function speaksOf({ level, totals }: JointSubject): Pick<Figure, 'speaksOf'> {
  const found = level ?? leastLevel(totals);
  return found === undefined ? {} : { speaksOf: found };
}

/** The least of the levels that figures speak of. */
export function leastLevel(totals: readonly Figure[]): Level | undefined {
  return LEVELS.find((level) => totals.some((total) => total.speaksOf === level));
}

/** A figure without one, with the text that says it. */
export function plainFigure(
  { kind, name, of, subject, page, totals, files = [], inWords }: JointSubject,
  value: number,
  text: string,
): Figure {
  const id = `${kind}/${name}`;
  const sum = (count: (figure: Figure) => number): number => totals.reduce((all, figure) => all + count(figure), 0);
  return {
    id,
    kind,
    of,
    unit: KINDS[kind].unit,
    value,
    readings: sum(({ readings }) => readings),
    runs: sum(({ runs }) => runs),
    excluded: sum(({ excluded }) => excluded),
    sources: unique([...totals.flatMap(({ sources }) => sources), ...files]),
    text,
    label: subject === '' ? KINDS[kind].label : `${KINDS[kind].label}: ${subject}`,
    entry: groupEntry(page.name, id, page.section),
    group: page.title,
    ...(inWords === undefined ? {} : { inWords }),
  };
}

/** `0.43`, `0.012`, `below 0.001`: as small as anyone needs it. */
export function describeProbability(p: number): string {
  if (p < 0.001) return 'below 0.001';
  return p.toFixed(p < 0.1 ? 3 : 2);
}

function unique(sources: readonly FigureSource[]): readonly FigureSource[] {
  return [...new Map(sources.map((source) => [source.file, source])).values()];
}

/** The raw file of something that a figure was computed from. */
export function sourceOf({ file: { path, sha256 } }: { readonly file: SourceFile }): FigureSource {
  return { file: path, sha256 };
}
