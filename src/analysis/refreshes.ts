/**
 * When the refreshes began whose values were read, in the source's own time.
 *
 * A stamp S was cut to the resolution r, so its refresh began within [S, S + r). All refreshes of a run lie
 * on one grid of step T_s; only some starts of that grid agree with every stamp, or with as many as any. Where too few agree (the timer
 * shows moments of its own, not of its refreshes) the grid is given up, and a stamp stands for all of
 * [S, S + r).
 */
export interface Refreshes {
  /** Begin of the refresh whose value was read, or the earliest it can have been. */
  readonly sourceMs: readonly number[];
  /** The same for the refresh that the body captured. */
  readonly shownMs: readonly number[];
  /** How long after these beginnings the value can still have stood: T_s, or T_s + r without a grid. */
  readonly lastingMs: number;
}

const TRIED = 128;
const KEPT = 3;
const REFERENCES = 3;
/** Share of the stamps that a grid must agree with; the others may be misread. */
const AGREEING = 0.8;
/** Allowance for the last bit of a decimal stamp, in ms. */
const ROUNDING_MS = 1e-6;

/** A few alternatives, evenly chosen from those that agree with all stamps of a run; each as likely as the other. */
export function refreshAlternatives(
  sourceMs: readonly number[],
  shownMs: readonly number[],
  refreshMs: number,
  resolutionMs: number,
): Refreshes[] {
  const stamps = [...sourceMs, ...shownMs];
  const starts: number[] = [];
  let most = 0;
  // the grid is tried from more than one stamp: the first may be the misread one
  for (const from of resolutionMs < refreshMs ? stamps.slice(0, REFERENCES) : []) {
    if (most === stamps.length) break;
    for (let k = 0; k < TRIED; k += 1) {
      const startMs = from + ((k + 0.5) / TRIED) * resolutionMs;
      const agreeing = stamps.reduce(
        (sum, stampMs) => sum + Number(sinceStamp(stampMs, startMs, refreshMs) < resolutionMs + ROUNDING_MS),
        0,
      );
      if (agreeing < Math.max(AGREEING * stamps.length, most)) continue;
      if (agreeing > most) starts.length = 0;
      most = agreeing;
      starts.push(startMs);
    }
  }
  if (starts.length === 0) return [{ sourceMs, shownMs, lastingMs: refreshMs + resolutionMs }];
  const kept = Math.min(KEPT, starts.length);
  return Array.from({ length: kept }, (_, i) => {
    const startMs = starts[Math.floor(((i + 0.5) * starts.length) / kept)]!;
    const begin = (stampMs: number): number =>
      stampMs + Math.min(resolutionMs, sinceStamp(stampMs, startMs, refreshMs));
    return { sourceMs: sourceMs.map(begin), shownMs: shownMs.map(begin), lastingMs: refreshMs };
  });
}

/** From a stamp to the next refresh of a grid, in ms; a refresh just before the stamp counts as on it. */
function sinceStamp(stampMs: number, startMs: number, refreshMs: number): number {
  const steps = (stampMs - ROUNDING_MS - startMs) / refreshMs;
  return Math.max(0, (Math.ceil(steps) - steps) * refreshMs - ROUNDING_MS);
}
