/**
 * How delays vary on a bench beyond what phases explain: a statement, at three levels.
 *
 *     reading within clip    frames jitter, are repeated, and stamps are misread
 *     clip within day        the delay of a clip is off the day's, by any amount or by a whole frame
 *     day within condition   the delay of a day is off the condition's, likewise
 *
 * Sizes are fractions of the body's frame interval T_d, so that one statement serves all rates. An unknown size is
 * expressed by several with weights. What a publication has learnt from its sessions takes the place of the default.
 */

/** Levels of which a figure may speak, from the narrowest on. */
export const LEVELS = ['clips', 'day', 'condition'] as const;
export type Level = (typeof LEVELS)[number];

/** What each level's variation is called in a budget. */
export const LEVEL_COMPONENTS: Readonly<Record<Level, string>> = {
  clips: 'between runs',
  day: 'from clip to clip',
  condition: 'from day to day',
};

/** A few sizes with weights that sum to 1. */
export type Sizes = readonly { readonly size: number; readonly weight: number }[];

export interface LevelVariation {
  /** Standard deviation of a continuous (normal) change, as a fraction of T_d; 0 for none. */
  readonly change: Sizes;
  /** Probability that the delay is one whole T_d longer (a buffer that starts one frame deeper). */
  readonly step: Sizes;
}

export interface Variation {
  /** The highest level whose variation this statement knows from evidence: of it intervals speak. */
  readonly knows: Level;
  readonly reading: {
    /** Standard deviation of the delay of single frames, as a fraction of T_d. */
    readonly jitter: Sizes;
    /** Probability that a frame is shown a second time instead of the next. */
    readonly repeat: Sizes;
    /** Probability that a stamp is a misread: it says nothing then. */
    readonly misread: Sizes;
  };
  readonly clip: LevelVariation;
  readonly day: LevelVariation;
}

/**
 * What is assumed where a publication states nothing: a judgement, no measurement.
 *
 * Reading: half of all benches follow their rates, the others jitter by anything up to two frame intervals, small
 * jitter being the more usual; one chain in ten repeats frames now and then; one stamp in a hundred is misread
 * (common practice, no source).
 *
 * Clip and day: a buffer that starts zero or one frame deep is common, and a single session can rarely tell. Wide
 * enough for that, these sizes would make every figure about a day as wide as a frame: so they give the errors at
 * those levels, and `knows` says that an interval speaks of the clips that were read and of nothing more.
 */
export const DEFAULT_VARIATION: Variation = {
  knows: 'clips',
  reading: {
    jitter: [
      { size: 0, weight: 0.6 },
      { size: 0.06, weight: 0.08 },
      { size: 0.12, weight: 0.08 },
      { size: 0.22, weight: 0.08 },
      { size: 0.4, weight: 0.06 },
      { size: 0.7, weight: 0.05 },
      { size: 1.2, weight: 0.03 },
      { size: 2, weight: 0.02 },
    ],
    repeat: [
      { size: 0, weight: 0.9 },
      { size: 0.05, weight: 0.05 },
      { size: 0.2, weight: 0.05 },
    ],
    misread: [{ size: 0.01, weight: 1 }],
  },
  clip: {
    change: [
      { size: 0, weight: 0.75 },
      { size: 0.06, weight: 0.05 },
      { size: 0.12, weight: 0.05 },
      { size: 0.25, weight: 0.05 },
      { size: 0.5, weight: 0.05 },
      { size: 1, weight: 0.03 },
      { size: 2, weight: 0.02 },
    ],
    step: [
      { size: 0, weight: 0.85 },
      { size: 0.2, weight: 0.05 },
      { size: 0.5, weight: 0.05 },
      { size: 0.8, weight: 0.05 },
    ],
  },
  day: {
    change: [
      { size: 0, weight: 0.5 },
      { size: 0.06, weight: 0.15 },
      { size: 0.12, weight: 0.15 },
      { size: 0.25, weight: 0.12 },
      { size: 0.5, weight: 0.08 },
    ],
    step: [
      { size: 0, weight: 0.9 },
      { size: 0.2, weight: 0.05 },
      { size: 0.5, weight: 0.05 },
    ],
  },
};

/** Throws a RangeError that names the list where sizes or weights make no sense. */
export function checkVariation({ reading, clip, day }: Variation): void {
  const lists: readonly (readonly [string, Sizes, number])[] = [
    ['reading.jitter', reading.jitter, Infinity],
    ['reading.repeat', reading.repeat, 1],
    ['reading.misread', reading.misread, 1],
    ['clip.change', clip.change, Infinity],
    ['clip.step', clip.step, 1],
    ['day.change', day.change, Infinity],
    ['day.step', day.step, 1],
  ];
  for (const [name, sizes, most] of lists) {
    const sum = sizes.reduce((total, { weight }) => total + weight, 0);
    if (sizes.some(({ size, weight }) => !(size >= 0 && size <= most && Number.isFinite(size) && weight >= 0)))
      throw new RangeError(`${name} of a statement of variation needs sizes from 0 to ${most} and weights from 0 on`);
    if (!(Math.abs(sum - 1) < 1e-6))
      throw new RangeError(`the weights of ${name} in a statement of variation sum to 1, not to ${sum}`);
  }
}
