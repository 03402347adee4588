/** Two displays fed by one picture, event by event: it shares no code with src/analysis. */
import { latest, longest } from './world.ts';

export interface DisplayWorld {
  /** Absent: it follows its input. */
  readonly freeHz?: number;
  /** From its input to its first light at the digits, its own wait left out. */
  readonly delayMs: number;
}

export interface PairWorld {
  readonly pictureHz: number;
  readonly resolutionMs: number;
  readonly source: DisplayWorld;
  readonly shown: DisplayWorld;
  readonly observer?: { readonly hz: number; readonly exposureMs: number };
  /** Every clock is off by up to this, drawn for each device and session. */
  readonly clockPpm?: number;
  /** Frames of the shown display are off by up to this many frames, drawn for each reading. */
  readonly jitterFrames?: number;
  /** Probability that the shown display starts a clip one frame deeper. */
  readonly deeperRuns?: number;
  readonly repeated?: number;
  /** Half-width of the scatter of the time between readings; 0.5 where absent. */
  readonly spacingScatter?: number;
  /** One stamp of the session is read so much too late or too early. */
  readonly misreadMs?: number;
  /** The shown digits are seen so much later than the source's by an observer that reads row by row. */
  readonly rowsApartMs?: number;
  /**
   * The picture leaves for the shown display later by this share of a frame at most, either way, drawn for a session.
   */
  readonly offsetFrames?: number;
}

export interface PairSession {
  readonly runs: readonly { readonly sourceMs: number[]; readonly latenciesMs: number[] }[];
  /** Mean age of the shown picture less that of the source's, in these clips. */
  readonly differenceMs: number;
}

export function simulatePair(
  world: PairWorld,
  runs: number,
  readings: number,
  spacingMs: number,
  draw: () => number,
): PairSession {
  const speed = (): number => 1 + (2 * draw() - 1) * (world.clockPpm ?? 0) * 1e-6;
  const timerSpeed = speed();
  const frameMs = 1000 / world.pictureHz / timerSpeed;
  const [sourceStep, shownStep] = [world.source, world.shown].map(({ freeHz }) =>
    freeHz ? 1000 / freeHz / speed() : 0,
  ) as [number, number];
  const observerStep = world.observer ? 1000 / world.observer.hz / speed() : 0;
  const offsetMs = (world.offsetFrames ?? 0) * (2 * draw() - 1) * frameMs;
  const { spacingScatter = 0.5, rowsApartMs = 0 } = world;
  let deeper = 0;
  const taken = Array.from({ length: runs }, () => {
    const [pictureStart, sourceStart, shownStart, observerStart] = [
      draw() * frameMs,
      draw() * sourceStep,
      draw() * shownStep,
      draw() * observerStep,
    ];
    const deeperMs = Number(draw() < (world.deeperRuns ?? 0)) * frameMs;
    deeper += deeperMs / runs;
    const leaves = (n: number): number => pictureStart + n * frameMs;
    const digits = (n: number): number =>
      Math.floor((leaves(n) * timerSpeed) / world.resolutionMs + 1e-7) * world.resolutionMs;
    const onDisplay = (arrives: (n: number) => number, stepMs: number, start: number) =>
      stepMs > 0 ? (n: number): number => start + Math.ceil((arrives(n) - start) / stepMs) * stepMs : arrives;
    let now = 3000 + 1000 * draw();
    const sourceMs: number[] = [];
    const latenciesMs: number[] = [];
    for (let i = 0; i < readings; i += 1) {
      let to = now;
      if (observerStep > 0) to = observerStart + Math.ceil((now - observerStart) / observerStep) * observerStep;
      const from = to - (world.observer?.exposureMs ?? 0);
      const slip = (world.jitterFrames ?? 0) * (2 * draw() - 1) * frameMs;
      const own = onDisplay((n) => leaves(n) + world.source.delayMs, sourceStep, sourceStart);
      const other = onDisplay(
        (n) => leaves(n) + world.shown.delayMs + offsetMs + deeperMs + slip,
        shownStep,
        shownStart,
      );
      const source = digits(longest(own, latest(own, frameMs, to), from, to));
      const [later, earlier] = [to + rowsApartMs, from + rowsApartMs];
      const frame =
        longest(other, latest(other, frameMs, later), earlier, later) - Number(draw() < (world.repeated ?? 0));
      sourceMs.push(source);
      latenciesMs.push(source - digits(frame));
      now += spacingMs * (1 + spacingScatter * (2 * draw() - 1));
    }
    return { sourceMs, latenciesMs };
  });
  if (world.misreadMs) {
    const { latenciesMs } = taken[Math.floor(draw() * runs)]!;
    latenciesMs[Math.floor(draw() * readings)]! += world.misreadMs * (draw() < 0.5 ? 1 : -1);
  }
  return {
    runs: taken,
    differenceMs:
      world.shown.delayMs -
      world.source.delayMs +
      deeper +
      (shownStep - sourceStep) / 2 +
      (world.repeated ?? 0) * frameMs,
  };
}
