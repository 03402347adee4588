/**
 * The uncertainty budget of two displays side by side, and what is corrected: as for totals (`session-budget.ts`,
 * `corrections.ts`), but that each display has a scan-out and a row of digits, and that two outputs may not be alike.
 *
 *     correction = readout·(row of shown − row of source) + scan-out·(1/2 − row) of shown − the same of source − output offset
 */
import { intervalMs } from '../model/rate.ts';
import { freeRunningIntervalMs, type ChainDisplay } from './chain.ts';
import { combineComponents, type CombinedUncertainty } from './components.ts';
import { correctionsFor } from './corrections.ts';
import type { DelayPosterior } from './delay-posterior.ts';
import { varianceOf } from './distribution.ts';
import type { PairInput } from './pair-input.ts';
import { shareOut } from './session-budget.ts';
import { DEFAULT_TOLERANCE_PPM } from './two-timers.ts';

/** Whose error a part is: of this session alone, of one of the displays, or of the outputs. */
export type PairShare = 'source' | 'shown' | 'outputs' | null;

export interface PairLine {
  readonly name: string;
  readonly type: 'A' | 'B';
  readonly distribution: string;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  readonly shared: PairShare;
  /** Whether the digits' row is known, so that an unknown scan-out is the same wherever the display stands. */
  readonly anyPlace?: boolean;
}

interface PairBudget extends CombinedUncertainty {
  readonly correctionMs: number;
  readonly components: readonly (PairLine & { readonly varianceShare: number })[];
  /** Those that the posterior does not hold. */
  readonly others: readonly PairLine[];
}

export function pairBudget(input: PairInput, delay: DelayPosterior): PairBudget {
  const { picture, outputs, runs } = input;
  const frameMs = intervalMs(picture.rate);
  const whole = varianceOf(delay.distribution);
  const phases = Math.min(whole, delay.ratesOnly ? varianceOf(delay.ratesOnly) : whole);
  const oneDelay = runs.length > 1 && delay.sameDelay ? clamp(varianceOf(delay.sameDelay), phases, whole) : whole;
  const readings = runs.reduce((sum, { latenciesMs }) => sum + latenciesMs.length, 0);
  const numerical = (name: string, variance: number, degreesOfFreedom: number): PairLine => ({
    name,
    type: 'A',
    distribution: 'numerical',
    standardUncertainty: Math.sqrt(variance),
    degreesOfFreedom: Math.max(1, degreesOfFreedom),
    shared: null,
  });
  const within: PairLine[] = [
    ...shareOut(phases, singleReading(input)).map(({ sharedKey: _, ...line }) => ({ ...line, shared: null })),
    numerical('repeatability', oneDelay - phases, readings - runs.length),
    ...(runs.length > 1 ? [numerical('between runs', whole - oneDelay, runs.length - 1)] : []),
  ];

  const stated = outputs.kind === 'stated' ? outputs : { valueMs: 0, standardUncertaintyMs: frameMs / Math.sqrt(3) };
  const [skew, ownScan] = scanned(input, input.shown);
  const [, otherScan] = scanned(input, input.source);
  const largest = runs.flatMap(({ latenciesMs }) => latenciesMs).reduce((top, ms) => Math.max(top, Math.abs(ms)), 0);
  const clock = (largest * (picture.clockTolerancePpm ?? DEFAULT_TOLERANCE_PPM) * 1e-6) / Math.sqrt(3);
  const others: PairLine[] = [
    rectangularLine('source clock', clock, null),
    ...(skew ? [rectangularLine('observer row skew', skew.standardUncertaintyMs, null)] : []),
    scanLine(ownScan?.standardUncertaintyMs ?? 0, 'shown', input.shown),
    scanLine(otherScan?.standardUncertaintyMs ?? 0, 'source', input.source),
    {
      ...rectangularLine('output offset', stated.standardUncertaintyMs, 'outputs'),
      distribution: outputs.kind === 'stated' ? 'normal' : 'rectangular',
    },
  ].filter(({ standardUncertainty }) => standardUncertainty > 0);
  const lines = [...within, ...others];
  const combined = combineComponents(lines);
  return {
    ...combined,
    correctionMs: (skew?.valueMs ?? 0) + (ownScan?.valueMs ?? 0) - (otherScan?.valueMs ?? 0) - stated.valueMs,
    components: lines.map((line) => ({
      ...line,
      varianceShare: (line.standardUncertainty / combined.standardUncertainty) ** 2,
    })),
    others,
  };
}

/** Row skew of the observer, where a camera took the readings, and scan-out of one display. */
function scanned({ observer, picture }: PairInput, display: ChainDisplay) {
  const found = correctionsFor(
    { body: { rate: picture.rate }, display, ...(observer ? { observer } : { observerUnstated: true as const }) },
    'two-timers',
  );
  return [
    found.find(({ name }) => name === 'observer row skew'),
    found.find(({ name }) => name === 'display scan-out'),
  ] as const;
}

function rectangularLine(name: string, standardUncertainty: number, shared: PairShare): PairLine {
  return { name, type: 'B', distribution: 'rectangular', standardUncertainty, degreesOfFreedom: Infinity, shared };
}

function scanLine(standardUncertainty: number, shared: 'source' | 'shown', { digitsRow }: ChainDisplay): PairLine {
  return { ...rectangularLine('display scan-out', standardUncertainty, shared), anyPlace: digitsRow !== undefined };
}

/** Variances in one reading, by device, in ms². */
function singleReading({
  picture,
  source,
  shown,
  observer,
  resolutionMs,
}: PairInput): Readonly<Record<string, number>> {
  const pictureMs2 = intervalMs(picture.rate) ** 2 / 6;
  const displaysMs2 = [source, shown].reduce((sum, display) => sum + freeRunningIntervalMs(display) ** 2 / 12, 0);
  return {
    'phase of the picture': pictureMs2,
    ...(displaysMs2 > 0 && { 'phase of the displays': displaysMs2 }),
    ...(observer && { 'phase of the observer': Math.min(intervalMs(observer.rate) ** 2 / 12, pictureMs2) }),
    'timer resolution': resolutionMs ** 2 / 6,
  };
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
