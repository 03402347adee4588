/**
 * A world to measure in, for judging the analysis from outside: it shares no code with src/analysis.
 *
 * Where the analysis reckons with phases and intervals, this world keeps a list of events: every refresh,
 * capture, arrival and observer frame has a moment on one true time line, and a reading is found by looking
 * through them. Exposures are real: the digits read are those that stood longest while the observer exposed.
 */
export interface World {
  readonly sourceHz: number;
  readonly resolutionMs: number;
  readonly bodyHz: number;
  /** Absent: the display follows its input. */
  readonly freeDisplayHz?: number;
  /** Absent: readings fall at any moment, with an infinitely short exposure. */
  readonly observer?: { readonly hz: number; readonly exposureMs: number };
  /** Every clock is off by up to this, drawn for each device and session. */
  readonly clockPpm?: number;
  /** The delay of each reading's frame is off by up to this many frames, drawn for each reading. */
  readonly jitterFrames?: number;
  /** Standard deviation of a delay that each run keeps, in frames. */
  readonly betweenRunsFrames?: number;
  /** Probability that a run's buffer starts one frame deeper. */
  readonly deeperRuns?: number;
  /** Share of frames that are shown a second time in place of the next. */
  readonly repeated?: number;
  /** Half-width of the scatter of the time from one reading to the next, as a share of it; 0.5 where absent. */
  readonly spacingScatter?: number;
  /** One stamp of the session, drawn among all, is read so much too late or too early. */
  readonly misreadMs?: number;
  /** Only frames that were taken so long after a refresh of the source, or longer, are read. */
  readonly cleanAfterMs?: number;
  /** The body exposes so long, and where a refresh falls into that, either of the two values is read. */
  readonly blendedMs?: number;
  /** What stands lower in the picture is read so much later; rows as fractions of that. */
  readonly rowsApartMs?: number;
}

export interface Clip {
  readonly sourceMs: number[];
  readonly shownMs: number[];
  /** By how much this run's delay is off the pipeline's. */
  readonly offMs: number;
}

type Draw = () => number;

/** xoshiro128** 1.1 (Blackman and Vigna, ACM TOMS 47(4), 2021), seeded through SplitMix-style mixing. */
export function worldRandom(seed: number): Draw {
  let mix = seed >>> 0;
  const fill = (): number => {
    mix = (mix + 0x9e37_79b9) >>> 0;
    let z = mix;
    z = Math.imul(z ^ (z >>> 16), 0x85eb_ca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2_ae35);
    return (z ^ (z >>> 16)) >>> 0;
  };
  return xoshiro([fill(), fill(), fill(), fill()]);
}

/** The generator itself, from a full state; uniform on [0, 1). */
export function xoshiro(state: readonly [number, number, number, number]): Draw {
  let [a, b, c, d] = state;
  return () => {
    const scrambled = Math.imul(b, 5);
    const word = Math.imul((scrambled << 7) | (scrambled >>> 25), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
    return word / 2 ** 32;
  };
}

/** The devices of one session: their true speeds stay, their phases are fresh in every run. */
export interface Bench {
  readonly world: World;
  readonly pipelineMs: number;
  /** What a perfect analysis would find. */
  readonly totalMs: number;
  readonly sourceStepMs: number;
  readonly sourceSpeed: number;
  readonly bodyStepMs: number;
  readonly displayStepMs: number;
  readonly observerStepMs: number;
}

export function setUp(world: World, pipelineMs: number, draw: Draw): Bench {
  const speed = (): number => 1 + (2 * draw() - 1) * (world.clockPpm ?? 0) * 1e-6;
  const sourceSpeed = speed();
  const bodyStepMs = 1000 / world.bodyHz / speed();
  const displayStepMs = world.freeDisplayHz ? 1000 / world.freeDisplayHz / speed() : 0;
  return {
    world,
    pipelineMs,
    totalMs: pipelineMs + (bodyStepMs + displayStepMs) / 2,
    sourceStepMs: 1000 / world.sourceHz / sourceSpeed,
    sourceSpeed,
    bodyStepMs,
    displayStepMs,
    observerStepMs: world.observer ? 1000 / world.observer.hz / speed() : 0,
  };
}

/** When the readings of one run are wanted. */
function wanted({ spacingScatter = 0.5 }: World, readings: number, spacingMs: number, draw: Draw): number[] {
  const moments: number[] = [];
  let now = 5_000 + 1_000 * draw();
  for (let i = 0; i < readings; i += 1) {
    moments.push(now);
    now += spacingMs * (1 + spacingScatter * (2 * draw() - 1));
  }
  return moments;
}

/**
 * What stood longest between `from` and `to`, among events that each last until the next begins; the newest among
 * equals.
 */
export function longest(begins: (n: number) => number, newest: number, from: number, to: number): number {
  let best = newest;
  let bestLasting = -1;
  for (let n = newest; ; n -= 1) {
    const lasting = Math.min(to, begins(n + 1)) - Math.max(from, begins(n));
    if (lasting > bestLasting + 1e-9) [best, bestLasting] = [n, lasting];
    if (begins(n) <= from) return best;
  }
}

/** The number of the last event that has begun at `moment`. */
export function latest(begins: (n: number) => number, stepMs: number, moment: number): number {
  let n = Math.ceil((moment - begins(0)) / stepMs) + 2;
  while (begins(n) > moment) n -= 1;
  return n;
}

/** One clip of source and display side by side. */
export function film(bench: Bench, readings: number, spacingMs: number, draw: Draw): Clip {
  const { world, pipelineMs, sourceStepMs, sourceSpeed, bodyStepMs, displayStepMs, observerStepMs } = bench;
  const [sourceStart, bodyStart, displayStart, observerStart] = [
    draw() * sourceStepMs,
    draw() * bodyStepMs,
    draw() * displayStepMs,
    draw() * observerStepMs,
  ];
  const runDelay = runOff(bench, draw);
  const refreshAt = (n: number): number => sourceStart + n * sourceStepMs;
  const digitsOf = (n: number): number => {
    const shown = refreshAt(n) * sourceSpeed;
    return Math.floor(shown / world.resolutionMs + 1e-7) * world.resolutionMs;
  };
  const clip: Clip = { sourceMs: [], shownMs: [], offMs: runDelay };
  for (const moment of wanted(world, readings, spacingMs, draw)) {
    let to = moment;
    if (observerStepMs > 0) to = observerStart + Math.ceil((moment - observerStart) / observerStepMs) * observerStepMs;
    const clean = world.cleanAfterMs ?? 0;
    const since = (to - sourceStart) % sourceStepMs;
    if (since < clean) to += clean - since + draw() * (sourceStepMs - clean);
    const from = to - (world.observer?.exposureMs ?? 0);
    const slip = (world.jitterFrames ?? 0) * (2 * draw() - 1) * bodyStepMs;
    const arrives = (n: number): number => bodyStart + n * bodyStepMs + pipelineMs + runDelay + slip;
    // on a display with its own clock a frame appears with the first refresh after its arrival
    const appears =
      displayStepMs > 0
        ? (n: number): number => displayStart + Math.ceil((arrives(n) - displayStart) / displayStepMs) * displayStepMs
        : arrives;
    const rowsMs = world.rowsApartMs ?? 0;
    const newest = longest(appears, latest(appears, bodyStepMs, to + rowsMs), from + rowsMs, to + rowsMs);
    const frame = newest - Number(draw() < (world.repeated ?? 0));
    const captured = bodyStart + frame * bodyStepMs - (world.blendedMs ?? 0) * Number(draw() < 0.5);
    clip.sourceMs.push(digitsOf(longest(refreshAt, latest(refreshAt, sourceStepMs, to), from, to)));
    clip.shownMs.push(digitsOf(latest(refreshAt, sourceStepMs, captured)));
  }
  return clip;
}

/** One clip of flashes, each counted in observer frames from the flash to its light on the display. */
export function countFrames(
  bench: Bench,
  readings: number,
  spacingMs: number,
  draw: Draw,
): { frames: number[]; offMs: number } {
  const { world, pipelineMs, bodyStepMs, displayStepMs, observerStepMs } = bench;
  const [bodyStart, displayStart, observerStart] = [
    draw() * bodyStepMs,
    draw() * displayStepMs,
    draw() * observerStepMs,
  ];
  const runDelay = runOff(bench, draw);
  // light that begins after a frame's exposure has ended is first seen in the next frame
  const firstSeenIn = (moment: number): number => Math.floor((moment - observerStart) / observerStepMs) + 1;
  const frames = wanted(world, readings, spacingMs, draw).map((flash) => {
    const slip = (world.jitterFrames ?? 0) * (2 * draw() - 1) * bodyStepMs;
    const captured = bodyStart + Math.ceil((flash - bodyStart) / bodyStepMs) * bodyStepMs;
    let light = captured + pipelineMs + runDelay + slip;
    if (displayStepMs > 0) light = displayStart + Math.ceil((light - displayStart) / displayStepMs) * displayStepMs;
    return firstSeenIn(light) - firstSeenIn(flash);
  });
  return { frames, offMs: runDelay };
}

/** By how much one run's delay is off the pipeline's. */
function runOff({ world, bodyStepMs }: Bench, draw: Draw): number {
  const steps = Number(draw() < (world.deeperRuns ?? 0));
  return ((world.betweenRunsFrames ?? 0) * normal(draw) + steps) * bodyStepMs;
}

/** Box and Muller, Annals of Mathematical Statistics 29(2), 1958. */
function normal(draw: Draw): number {
  return Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
}
