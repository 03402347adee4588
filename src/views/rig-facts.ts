import type { Rig, StatedLatency } from '../model/bench.ts';
import { rateLabel } from '../model/rate.ts';
import type { Lookup } from '../register/lookup.ts';

export interface RigFact {
  readonly part: string;
  readonly says: string;
  /** Path of the file that states it. */
  readonly file: string;
}

/** What a rig is made of, as its author stated it; what nobody stated is said to be unstated where it matters. */
export function rigFacts(
  { sourceTimer, observer, instrument, links, display, digitsRow, file: { path: file } }: Rig,
  find: Lookup,
): readonly RigFact[] {
  const screen = find.display(display);
  return [
    sourceTimer && {
      part: 'Source timer',
      file,
      says: list([
        sourceTimer.name,
        `refreshes at ${rateLabel(sourceTimer.refresh)} Hz`,
        sourceTimer.resolutionMs !== undefined && `counts in steps of ${sourceTimer.resolutionMs} ms`,
        sourceTimer.wrapsAfterMs !== undefined && `starts again after ${describeSpan(sourceTimer.wrapsAfterMs)}`,
        sourceTimer.clockTolerancePpm !== undefined && `clock within ${sourceTimer.clockTolerancePpm} ppm`,
      ]),
    },
    instrument && {
      part: 'Instrument',
      file,
      says: `${instrument.name}, expanded uncertainty ${instrument.expandedUncertaintyMs} ms (k = 2), as stated`,
    },
    observer && {
      part: 'Observer',
      file,
      says: list([
        observer.name,
        `${rateLabel(observer.rate)} frames/s`,
        observer.exposureMs === undefined ? 'exposure not stated' : `exposure ${trim(observer.exposureMs)} ms`,
        observer.readoutMs === undefined ? 'readout not stated' : `readout ${trim(observer.readoutMs)} ms`,
        observer.sourceRow !== undefined &&
          `timer at ${percent(observer.sourceRow)} of the picture’s height from the top`,
        observer.displayRow !== undefined && `display’s digits at ${percent(observer.displayRow)}`,
      ]),
    },
    ...links.map(find.link).map(({ name, latency, file: of }) => ({
      part: 'Link',
      file: of.path,
      says: list([name, statedLatency(latency)]),
    })),
    {
      part: 'Display',
      file: screen.file.path,
      says: list([
        screen.name,
        `refreshes at ${rateLabel(screen.refresh)} Hz`,
        screen.sync === 'input' ? 'in step with its input' : 'on its own clock',
        screen.scanOutMs === undefined ? 'scan-out not stated' : `scan-out ${trim(screen.scanOutMs)} ms`,
        digitsRow !== undefined && `digits at ${percent(digitsRow)} of its height from the top`,
        statedLatency(screen.latency),
      ]),
    },
  ].filter((fact) => fact !== undefined);
}

function list(parts: readonly (string | false | undefined)[]): string {
  return parts.filter(Boolean).join('; ');
}

function statedLatency(latency: StatedLatency | undefined): string | undefined {
  return (
    latency &&
    `stated latency ${latency.valueMs} ms, standard uncertainty ${latency.standardUncertaintyMs} ms (${latency.source})`
  );
}

/** `60 min`, `100 s`: in minutes where they are whole. */
function describeSpan(ms: number): string {
  return ms % 60_000 === 0 ? `${ms / 60_000} min` : `${ms / 1000} s`;
}

function trim(ms: number): string {
  return String(Number(ms.toFixed(2)));
}

function percent(fraction: number): string {
  return `${Number((fraction * 100).toFixed(1))} %`;
}
