/** Between which times the next stamps must lie, so that digits that cannot have changed need not be typed. In ms. */

export interface Between {
  readonly lowMs: number;
  readonly highMs: number;
}

/** A reading and the frame of the open clip on which it was taken. */
export interface Placed {
  readonly frame: number;
  readonly fileMs: number;
  readonly sourceMs: number;
}

/** Clocks of timers and observers may differ by so much; far more than any states. */
const OFF = 0.002;
/** Without a clip, time that may pass from one reading to the next. */
const LONGEST_PAUSE_MS = 9000;

/**
 * The next source stamp. A clip may have been filmed faster than it plays: as long as a clip has one reading only, its frames may
 * be as far apart as the file says or as the observer's rate does; two readings tell.
 */
export function nextSource(
  placed: readonly Placed[],
  here: Pick<Placed, 'frame' | 'fileMs'> | undefined,
  lastMs: number | undefined,
  { refreshMs, observerFrameMs }: { readonly refreshMs: number; readonly observerFrameMs: number | undefined },
): Between | undefined {
  const [first, last] = [placed[0], placed.at(-1)];
  if (here === undefined || first === undefined || last === undefined)
    return lastMs === undefined ? undefined : { lowMs: lastMs, highMs: lastMs + LONGEST_PAUSE_MS };
  const frames = here.frame - last.frame;
  const passed =
    first.frame !== last.frame
      ? [(frames * (last.sourceMs - first.sourceMs)) / (last.frame - first.frame)]
      : [here.fileMs - last.fileMs, ...(observerFrameMs === undefined ? [] : [frames * observerFrameMs])];
  const doubt = first.frame !== last.frame ? refreshMs * Math.abs(frames / (last.frame - first.frame)) : 0;
  const slackMs = (ms: number): number => 2 * refreshMs + doubt + OFF * Math.abs(ms);
  return {
    lowMs: last.sourceMs + Math.min(...passed.map((ms) => ms - slackMs(ms))),
    highMs: last.sourceMs + Math.max(...passed.map((ms) => ms + slackMs(ms))),
  };
}

/** Latencies that were read lie within a range of each other; before the first, none is known. */
const FIRST: Between = { lowMs: 0, highMs: 1000 };
const FIRST_EITHER_WAY: Between = { lowMs: -500, highMs: 500 };

/** The shown stamp that goes with a source stamp; where it is signed, it may be the later one. */
export function nextShown(
  sourceMs: number,
  latenciesMs: readonly number[],
  rangeMs: number,
  isSigned: boolean,
): Between {
  const latency =
    latenciesMs.length === 0
      ? isSigned
        ? FIRST_EITHER_WAY
        : FIRST
      : { lowMs: Math.max(...latenciesMs) - rangeMs, highMs: Math.min(...latenciesMs) + rangeMs };
  return {
    lowMs: sourceMs - Math.max(latency.lowMs, latency.highMs),
    highMs: sourceMs - Math.min(latency.lowMs, latency.highMs),
  };
}
