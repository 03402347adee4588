/**
 * What a run of windows says about the phase of a device that ticks on its own clock: exactly, for one speed.
 *
 * A body that captures every T has a tick in each window [c, c + w) in which a value that it recorded stood. Each window
 * allows the phases [c, c + w) modulo T; their edges cut the circle of phases into cells, within each of which the same
 * ticks fall in the same windows. So a whole cell is one state of the device, and its width is its probability.
 */
export interface PhaseCell {
  readonly widthMs: number;
  /** Windows that contradict it. */
  readonly misses: number;
  /** For each window, the ticks in it with the phase in the middle of the cell; none where the window contradicts it. */
  readonly ticksMs: () => readonly (readonly number[])[];
}

/** Cells narrower than this share of T are joined with their neighbours. */
const FINEST = 1 / 24;
/** Contradicting windows beyond the fewest of any cell that are still of interest. */
const MORE = 1;

/**
 * All cells in which as few windows as anywhere, or one more, are contradicted. Begins in ms; `stepMs` is T at the speed
 * that is tried, counted from `middleMs`.
 */
export function phaseCells(
  beginsMs: readonly number[],
  lastingMs: number,
  stepMs: number,
  middleMs: number,
): PhaseCell[] {
  const wrap = (ms: number): number => ms - Math.floor(ms / stepMs) * stepMs;
  const starts = beginsMs.map((beginMs) => wrap(beginMs - middleMs));
  const edges = starts.flatMap((start) => [start, wrap(start + lastingMs)]);
  const sorted = Float64Array.from(edges).sort();
  const whole = Math.floor(lastingMs / stepMs);
  const rest = lastingMs - whole * stepMs;
  const misses = missesPerCell(sorted, starts, rest, stepMs, whole > 0);
  const fewest = misses.reduce((least, count) => Math.min(least, count), Infinity);
  const cells: { from: number; to: number; misses: number }[] = [];
  for (let c = 0; c < sorted.length; c += 1) {
    const from = sorted[c]!;
    const to = c + 1 < sorted.length ? sorted[c + 1]! : sorted[0]! + stepMs;
    if (from === to) continue;
    const before = cells.at(-1);
    const joins =
      before !== undefined &&
      before.to === from &&
      before.misses === misses[c] &&
      (misses[c] === 0 || to - before.from < stepMs * 1e-3) &&
      to - before.from <= stepMs * FINEST;
    if (misses[c]! > fewest + MORE) continue;
    if (joins) before.to = to;
    else cells.push({ from, to, misses: misses[c]! });
  }
  return cells.map(({ from, to, misses: count }) => ({
    widthMs: to - from,
    misses: count,
    ticksMs: () =>
      beginsMs.map((beginMs) =>
        ticksWithin(beginMs, lastingMs, middleMs + (from + to) / 2, stepMs, count === 0 ? (to - from) / 2 : 0),
      ),
  }));
}

/** How many windows each cell contradicts, by going round the circle once. */
function missesPerCell(
  edges: Float64Array,
  starts: readonly number[],
  lastingMs: number,
  stepMs: number,
  always: boolean,
): number[] {
  if (always) return Array.from(edges, () => 0);
  const sortedStarts = Float64Array.from(starts).sort();
  const sortedEnds = Float64Array.from(starts, (start) => {
    const end = start + lastingMs;
    return end >= stepMs ? end - stepMs : end;
  }).sort();
  const wrapping = starts.filter((start) => start + lastingMs >= stepMs).length;
  let [begun, ended] = [0, 0];
  return Array.from(edges, (edge) => {
    while (begun < sortedStarts.length && sortedStarts[begun]! <= edge) begun += 1;
    while (ended < sortedEnds.length && sortedEnds[ended]! <= edge) ended += 1;
    return starts.length - (wrapping + begun - ended);
  });
}

/** A tick that is outside by less than `slackMs` counts where there is no other: joined cells that nothing contradicts have such ones. */
function ticksWithin(beginMs: number, lastingMs: number, phaseMs: number, stepMs: number, slackMs: number): number[] {
  const ticks: number[] = [];
  const first = Math.ceil((beginMs - phaseMs) / stepMs);
  for (let k = first; phaseMs + k * stepMs < beginMs + lastingMs; k += 1) ticks.push(phaseMs + k * stepMs);
  if (ticks.length > 0) return ticks;
  const after = phaseMs + first * stepMs;
  const before = after - stepMs;
  const [late, early] = [after - (beginMs + lastingMs), beginMs - before];
  if (Math.min(late, early) > slackMs * (1 + 1e-9)) return [];
  return [late < early ? after : before];
}
