/** One session's readings → its figures. */
import type { SharedKey } from '../analysis/budget.ts';
import type { OwnError } from '../analysis/components.ts';
import { estimateSession, type Estimate } from '../analysis/estimate.ts';
import type { SessionInput } from '../analysis/session-input.ts';
import { summarize } from '../analysis/summary.ts';
import type { Level } from '../analysis/variation.ts';
import type { Session } from '../model/bench.ts';
import { rateHz } from '../model/rate.ts';
import { KINDS, type KindName } from './kinds.ts';
import type { Lookup } from './lookup.ts';
import { sessionPath } from './paths.ts';
import { finiteOrNull, type Component, type Figure } from './register.ts';
import { countedReadings, sessionInput } from './session-input.ts';
import {
  decimalsOfStep,
  describeCount,
  describeMeasured,
  describeSignificant,
  describeValue,
  placeOfUncertainty,
} from './text.ts';
import { sourceOf } from './joint-figure.ts';

/** `estimateSession`, or one that remembers: an estimate depends on its input alone. */
export type Estimator = (input: SessionInput) => Estimate;

export interface SessionFigures {
  readonly session: Session;
  readonly find: Lookup;
  readonly estimate: Estimate;
  readonly figures: readonly Figure[];
  /** Its total latency, which is among its figures. */
  readonly total: Figure;
}

/** Every figure of one session, total first. */
export function compileSession(session: Session, find: Lookup, estimator: Estimator = estimateSession): SessionFigures {
  const counted = countedReadings(session);
  const estimate = estimator(sessionInput(session, find));
  const summary = summarize(counted.map(({ latencyMs }) => latencyMs));
  const runs = new Set(counted.map(({ run }) => run)).size;
  const excluded = session.readings.length - counted.length;

  const described = [find.rig(session.rig), find.display(session.display), ...session.links.map(find.link)];
  const sources = [{ file: session.readingsFile }, session, ...described].map(sourceOf);

  const figure = (kind: KindName, value: number, text: string, uncertainty: Partial<Figure> = {}): Figure => ({
    id: `${kind}/${session.id}`,
    kind,
    of: { session: session.id },
    unit: KINDS[kind].unit,
    value,
    ...uncertainty,
    readings: counted.length,
    runs,
    excluded,
    sources,
    text,
    label: KINDS[kind].label,
    entry: `${sessionPath(session.id)}#${KINDS[kind].anchor}`,
  });
  const measured = (kind: 'total' | 'frames', scale: number): Figure => {
    const value = estimate.value * scale;
    const text = describeMeasured(value, estimate.expandedUncertainty * scale, KINDS[kind].unit);
    const own = { ...sessionError(session.id, estimate), scale };
    return {
      ...figure(kind, value, text, { ...uncertaintyOf(estimate, scale, session), own }),
      sources: [...sources, ...(find.variationFile === undefined ? [] : [sourceOf({ file: find.variationFile })])],
    };
  };
  // Readings are printed as finely as they were taken; what is computed from several, to two digits of its scatter.
  const decimals = decimalsOfStep(session.resolutionMs);
  const meanPlace = summary.standardError ? Math.max(0, placeOfUncertainty(summary.standardError)) : decimals;
  const plain = (kind: KindName, value: number): Figure => figure(kind, value, describeValue(value, decimals, 'ms'));
  const scatter = (kind: KindName, value: number | undefined): readonly Figure[] =>
    value === undefined ? [] : [figure(kind, value, describeSignificant(value, 2, 'ms'))];
  const count = (kind: KindName, value: number): Figure => figure(kind, value, describeCount(value));

  const total = measured('total', 1);
  return {
    session,
    find,
    estimate,
    total,
    figures: [
      total,
      // The exact rational rate, so that 23.976 does not drift into 24 over a long latency.
      measured('frames', rateHz(session.rate) / 1000),
      figure('mean', summary.mean, describeValue(summary.mean, meanPlace, 'ms')),
      ...scatter('standard-deviation', summary.standardDeviation),
      ...scatter('standard-error', summary.standardError),
      figure(
        'median',
        summary.median,
        describeValue(
          summary.median,
          Number.isInteger(summary.median * 10 ** decimals) ? decimals : decimals + 1,
          'ms',
        ),
      ),
      plain('minimum', summary.minimum),
      plain('maximum', summary.maximum),
      plain('range', summary.range),
      count('readings', counted.length),
      count('runs', runs),
      count('excluded', excluded),
    ],
  };
}

/** The error that a session shares with no other, under its name. */
function sessionError(session: string, { errors, speaksOf }: Estimate): OwnError {
  return { key: session, error: errors[speaksOf] };
}

function uncertaintyOf(estimate: Estimate, scale: number, session: Session): Partial<Figure> {
  const { low, high, level } = estimate.interval;
  return {
    standardUncertainty: estimate.standardUncertainty * scale,
    interval: { low: low * scale, high: high * scale, level },
    coverageFactor: estimate.coverageFactor,
    speaksOf: estimate.speaksOf,
    components: estimate.components.map(
      (component): Component => ({
        name: component.name,
        type: component.type,
        distribution: component.distribution,
        standardUncertainty: component.standardUncertainty * scale,
        degreesOfFreedom: finiteOrNull(component.degreesOfFreedom),
        share: component.varianceShare,
        shared: keyOf(component.sharedKey, session),
      }),
    ),
    uncorrected: estimate.uncorrectedValue * scale,
    corrections: estimate.corrections.map(({ name, valueMs, standardUncertaintyMs }) => ({
      name,
      value: valueMs * scale,
      standardUncertainty: standardUncertaintyMs * scale,
    })),
  };
}

/** Names what a component is the same for: `rig:balcony`, `display:stage-screen`, `display:stage-screen@balcony`. */
export function keyOf(shared: SharedKey, { rig, display }: Session): string | null {
  if (shared === null) return null;
  if (shared === 'display') return `display:${display}`;
  return shared === 'display-on-rig' ? `display:${display}@${rig}` : `${shared}:${rig}`;
}

/** Of which level the interval of a total speaks. */
export function levelOf({ id, speaksOf }: Figure): Level {
  if (speaksOf === undefined) throw new Error(`${id} does not say of what its interval speaks`);
  return speaksOf;
}
