import type { ConfigurationLaw } from '../register/rate-law/rate-laws.ts';
import { intervalMs } from '../model/rate.ts';
import { labelSessions } from '../register/labels.ts';
import { plural } from '../register/provenance.ts';
import type { Published } from '../register/published.ts';
import { countRates } from '../register/rate-law/rate-laws.ts';
import type { Figure } from '../register/register.ts';
import type { Sentence } from '../register/sentence.ts';
import { lawInFrames, lawInMs, type CurvePoint } from './law-curve.ts';
import { placeOfBody } from './body-place.ts';
import { namedSession, type NamedSession } from './named-session.ts';
import { describeLaw } from './rate-law-words.ts';

export interface LawPlate {
  /** Of the configuration. */
  readonly name: string;
  readonly sentence: Sentence;
  /** How well the rates bear it out, for who wants to know; empty where there is nothing to say. */
  readonly evidence: Sentence;
  /** The sessions behind the line; none where there is no line. */
  readonly rows: readonly LawRow[];
  /** What all of them share. */
  readonly shared: string;
  /** What no rate changes, and frame intervals on top; absent where there is no line. */
  readonly line: { readonly fixed: Figure; readonly frames: Figure } | undefined;
  /** What is drawn; absent where there is no line. */
  readonly drawn: DrawnLaw | undefined;
}

export interface LawRow {
  readonly session: NamedSession;
  readonly total: Figure | undefined;
  readonly frames: Figure | undefined;
}

export interface DrawnLaw {
  readonly ms: LawDrawing;
  readonly frames: LawDrawing;
  /** `61.2 ms, and 2.49 frames; not below 70 ms`. */
  readonly lineText: string;
  readonly level: number;
  /** Of the body, among all. */
  readonly place: number;
  /** `5 sessions at 4 rates`. */
  readonly basis: string;
  /** Figures that are drawn, by id. */
  readonly from: readonly string[];
}

export interface LawDrawing {
  readonly points: readonly { readonly rate: string; readonly intervalMs: number; readonly figure: Figure }[];
  readonly line: readonly CurvePoint[];
}

/** What is said, drawn and listed of one rate law. */
export function lawPlate(site: Published, law: ConfigurationLaw): LawPlate {
  const { bench, find, figure } = site;
  const labels = labelSessions(bench, law.sessions);
  const [fixed, frames] = [figure(`rate-law-fixed/${law.name}`), figure(`rate-law-frames/${law.name}`)];
  const sessions = law.law.kind === 'rate-law' ? law.sessions : [];
  const line = law.law.kind === 'rate-law' && fixed && frames ? { fixed, frames } : undefined;
  const { says, evidence } = describeLaw(law, figure, find);
  return {
    name: law.name,
    sentence: says,
    evidence,
    rows: sessions.map(({ id }) => ({
      session: namedSession(bench, id, labels.of.get(id)),
      total: figure(`total/${id}`),
      frames: figure(`frames/${id}`),
    })),
    shared: labels.shared,
    line,
    drawn: drawnLaw(site, law, line),
  };
}

function drawnLaw(
  { bench, find, figure }: Published,
  { name, sessions, law, floor }: ConfigurationLaw,
  line: LawPlate['line'],
): DrawnLaw | undefined {
  if (law.kind !== 'rate-law') return undefined;
  const points = (kind: 'total' | 'frames'): LawDrawing['points'] =>
    sessions.flatMap(({ id, rate, settings }) => {
      const of = figure(`${kind}/${id}`);
      return of ? [{ rate: find.level('rate', settings['rate'] ?? ''), intervalMs: intervalMs(rate), figure: of }] : [];
    });
  const floorFigure = figure(`rate-law-floor/${name}`);
  const [totals, frames] = [points('total'), points('frames')];
  const stated = [line?.fixed, line?.frames, floorFigure].filter((each) => each !== undefined);
  const notBelow = floorFigure ? `; not below ${floorFigure.text}` : '';
  return {
    ms: { points: totals, line: lawInMs(law, floor) },
    frames: {
      points: frames,
      line: lawInFrames(law, floor, Math.min(...sessions.map(({ rate }) => intervalMs(rate)))),
    },
    lineText: line ? `${line.fixed.text}, and ${line.frames.text}${notBelow}` : '',
    level: law.level,
    place: placeOfBody(bench, sessions[0]?.body ?? ''),
    basis: `${plural(sessions.length, 'session')} at ${plural(countRates(sessions), 'rate')}`,
    from: [...[...totals, ...frames].map((point) => point.figure), ...stated].map(({ id }) => id),
  };
}

/** Every figure whose text stands on the plate. */
export function figuresOfPlate({ sentence, evidence, rows, line }: LawPlate): readonly Figure[] {
  return [
    ...figuresIn(sentence),
    ...figuresIn(evidence),
    ...rows.flatMap(({ total, frames }) => [total ?? [], frames ?? []].flat()),
    ...(line === undefined ? [] : [line.fixed, line.frames]),
  ];
}

export function figuresIn(sentence: Sentence): readonly Figure[] {
  return sentence.filter((piece) => typeof piece !== 'string');
}
