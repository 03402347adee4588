/** What is known of a comparison of two displays → its front matter, as `schemas/display-pair.ts` reads it. */
import type { DisplayPair } from '../model/bench.ts';
import type { Rate } from '../model/rate.ts';
import { renderFrontMatter } from './render-front-matter.ts';

export type DescribedPair = Pick<
  DisplayPair,
  'method' | 'display' | 'against' | 'sourceTimer' | 'outputs' | 'observer' | 'digitsRow' | 'againstDigitsRow'
>;

/** @param more further keys; what is undefined is left out */
export function pairFront(
  { method, display, against, sourceTimer, outputs, observer, digitsRow, againstDigitsRow }: DescribedPair,
  more: Readonly<Record<string, unknown>> = {},
): string {
  const { planned, ...rest } = more;
  return renderFrontMatter(
    defined({
      planned,
      method,
      ...rest,
      display,
      against,
      'source-timer': defined({
        name: sourceTimer.name,
        refresh: plainRate(sourceTimer.refresh),
        resolution: ms(sourceTimer.resolutionMs),
        'wraps-after': ms(sourceTimer.wrapsAfterMs),
        'clock-tolerance': ppm(sourceTimer.clockTolerancePpm),
      }),
      outputs:
        outputs.standardUncertaintyMs === undefined
          ? 'unknown'
          : outputs.standardUncertaintyMs === 0
            ? 'splitter'
            : ms(outputs.standardUncertaintyMs),
      observer:
        observer &&
        defined({
          name: observer.name,
          rate: plainRate(observer.rate),
          exposure: ms(observer.exposureMs),
          readout: ms(observer.readoutMs),
          'source-row': observer.sourceRow,
          'display-row': observer.displayRow,
          'clock-tolerance': ppm(observer.clockTolerancePpm),
        }),
      'digits-row': digitsRow,
      'against-digits-row': againstDigitsRow,
    }),
  );
}

function defined(values: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
}

/** `60`, `60000/1001`: exactly. */
function plainRate(rate: Rate): string | number {
  return rate.seconds === 1 ? rate.frames : `${rate.frames}/${rate.seconds}`;
}

function ms(value: number | undefined): string | undefined {
  return value === undefined ? undefined : `${value} ms`;
}

function ppm(value: number | undefined): string | undefined {
  return value === undefined ? undefined : `${value} ppm`;
}
